import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { angleBlockStack } from '../../../src/mechanics/measuring/angle-block-stack.ts'
import { sineBarAngle, sineBarHeight } from '../../../src/mechanics/measuring/gauge-stack.ts'
import { indicatorAngle } from '../../../src/mechanics/measuring/indicator-angle.ts'
import { protractorReading, vernierLeastCount } from '../../../src/mechanics/measuring/protractor.ts'
import { expectSlopes, faults, good } from './slope-check.ts'

const deg = Math.PI / 180

describe('a sine bar', () => {
  it('stands on the heights that published examples give', () => {
    // A maker's page on sine bars: 5 in, 27°: 2.270 in. Handbook of Machining and Metalworking Calculations, ch. 4: 5 in,
    // 34° 25′: 2.826 in. A web page on sine bars: 5 in, 18°: 1.545 in.
    for (const [angle, height] of [
      [27, 2.27],
      [34 + 25 / 60, 2.826],
      [18, 1.545],
    ] as const) {
      expect(sineBarHeight(5, angle * deg)).toBeCloseTo(height, 3)
      expect(sineBarAngle(5, height) / deg).toBeCloseTo(angle, 1)
    }
    // By hand: 10° on 5 in, 100 mm and 125 mm.
    expect(sineBarHeight(5, 10 * deg)).toBeCloseTo(0.86824, 5)
    expect(sineBarHeight(100, 10 * deg)).toBeCloseTo(17.3648, 4)
    expect(sineBarHeight(125, 10 * deg)).toBeCloseTo(21.706, 4)
  })

  it('on a stack longer than itself is refused', () => {
    expect(() => sineBarAngle(100, 100.1)).toThrow(RangeError)
    expect(sineBarAngle(100, 100) / deg).toBeCloseTo(90, 9)
    expect(sineBarAngle(100, 50) / deg).toBeCloseTo(30, 12)
  })
})

const shop = [0.25, 0.5, 1, 2, 3, 4, 5, 10, 15, 20, 25, 30].map((a) => a * deg)
const precise = [45, 30, 15, 5, 3, 1, 0.5, 20 / 60, 5 / 60, 3 / 60, 1 / 60].map((a) => a * deg)

describe('angle blocks', () => {
  const inDegrees = (angles: readonly number[]) => angles.map((a) => Math.round((a / deg) * 3600) / 3600)

  it('of a shop set add up: 12° 45′ is 10 + 2 + ½ + ¼', () => {
    const stack = angleBlockStack(shop, 12.75 * deg, { subtracts: false })!
    expect(inDegrees(stack.added)).toEqual([10, 2, 0.5, 0.25])
    expect(stack.takenOff).toEqual([])
    expect(Math.abs(stack.off)).toBeLessThan(1e-12)
  })

  it('that can be turned round need fewer: 42° is 45 − 3, and 7° 4′ five', () => {
    const stack = angleBlockStack(precise, 42 * deg, { subtracts: true })!
    expect([inDegrees(stack.added), inDegrees(stack.takenOff)]).toEqual([[45], [3]])
    // By hand: 5 + 3 − 1 degrees, and 5 − 1 minutes.
    const five = angleBlockStack(precise, (7 + 4 / 60) * deg, { subtracts: true })!
    expect(five.added.length + five.takenOff.length).toBe(5)
    expect(Math.abs(five.off)).toBeLessThan(1e-9)
  })

  it('that do not make the angle tell how far it is off, and no more are used than bring it nearer', () => {
    const stack = angleBlockStack(shop, 7.4 * deg, { subtracts: false })!
    expect(inDegrees(stack.added)).toEqual([5, 2, 0.5])
    expect(stack.off / deg).toBeCloseTo(0.1, 9)
    expect(inDegrees(angleBlockStack(shop, 7.4 * deg, { subtracts: false, within: 0.5 * deg })!.added)).toEqual([5, 2])
  })

  it('are none for a level face, and there is no stack without blocks', () => {
    expect(angleBlockStack(shop, 0, { subtracts: false })).toMatchObject({ added: [], takenOff: [], angle: 0 })
    expect(angleBlockStack([], 5 * deg, { subtracts: false })).toBeUndefined()
    expect(() => angleBlockStack([0], 1, { subtracts: false })).toThrow(RangeError)
    expect(() => angleBlockStack(shop, 2, { subtracts: false })).toThrow(RangeError)
    expect(() => angleBlockStack(shop, 1, { subtracts: false, most: 7 })).toThrow(RangeError)
  })

  it('are the nearest of all, by trying every one added, taken off or left out', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 1, max: 800 }),
        fc.boolean(),
        (set, wanted, subtracts) => {
          // Tenths of a degree.
          const one = 0.1 * deg
          let best = Infinity
          let fewest = 0
          for (let code = 1; code < 3 ** set.length; code++) {
            const signs = set.map((_, i) => (Math.floor(code / 3 ** i) % 3) - 1)
            const terms = signs.filter((s) => s !== 0).length
            if (terms === 0 || (!subtracts && signs.includes(-1))) continue
            const off = Math.abs(set.reduce((sum, b, i) => sum + signs[i]! * b, 0) - wanted)
            if (off < best || (off === best && terms < fewest)) [best, fewest] = [off, terms]
          }
          const options = { subtracts, most: 6 }
          const stack = angleBlockStack(
            set.map((b) => b * one),
            wanted * one,
            options,
          )!
          expect(Math.abs(stack.off) / one).toBeCloseTo(best, 6)
          expect(stack.added.length + stack.takenOff.length).toBe(fewest)
        },
      ),
      { seed: 6, numRuns: 200 },
    )
  })
})

describe('a protractor', () => {
  it('of whole degrees with twelve divisions on its vernier reads to five minutes', () => {
    expect((vernierLeastCount(deg, 12) / deg) * 60).toBeCloseTo(5, 12)
    expect(() => vernierLeastCount(deg, 0)).toThrow(RangeError)
    expect(() => vernierLeastCount(0, 12)).toThrow(RangeError)
  })

  it('shows the nearest that it can, and leaves the rest', () => {
    const shown = good(protractorReading((7 + 12 / 60) * deg, 5 * (deg / 60)))
    expect((shown.reading / deg - 7) * 60).toBeCloseTo(10, 9)
    expect((shown.rest / deg) * 60).toBeCloseTo(2, 9)
    expect((shown.error / deg) * 60).toBeCloseTo(4.5, 9)
    expect(faults(protractorReading(1, 0))).toEqual(['out-of-range leastCount'])
    expect(faults(protractorReading(-1, 0.1))).toEqual(['out-of-range angle'])
  })
})

describe('an indicator over a face', () => {
  it('that rises 0.02 mm over 40 mm shows a slope of 1.72 minutes of arc', () => {
    expect((good(indicatorAngle(0.02, 40)).size / deg) * 60).toBeCloseTo(1.7189, 4)
    expect(good(indicatorAngle(-0.02, 40)).size).toBeLessThan(0)
    expectSlopes({ rise: 3, travel: 40 }, ({ rise, travel }) => good(indicatorAngle(rise, travel)))
    expect(faults(indicatorAngle(1, 0))).toEqual(['out-of-range travel'])
  })
})
