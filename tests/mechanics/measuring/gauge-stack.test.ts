import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { gaugeStack, sineBarAngle, sineBarHeight } from '../../../src/mechanics/measuring/gauge-stack.ts'

const run = (from: number, step: number, count: number) =>
  Array.from({ length: count }, (_, i) => Math.round((from + i * step) * 1e4) / 1e4)
/** Usual metric set of 87 blocks: 1.001 to 1.009, 1.01 to 1.49, 0.5 to 9.5 and 10 to 100 mm (sizes of sets: from memory). */
const metric87 = [...run(1.001, 0.001, 9), ...run(1.01, 0.01, 49), ...run(0.5, 0.5, 19), ...run(10, 10, 10)]
/** Usual inch set of 81: .1001 to .1009, .101 to .149, .050 to .950, 1 to 4 in (from memory). */
const inch81 = [...run(0.1001, 0.0001, 9), ...run(0.101, 0.001, 49), ...run(0.05, 0.05, 19), 1, 2, 3, 4].map(
  (b) => b * 25.4,
)

describe('gauge blocks', () => {
  it('come to the worked example of the trade: 41.125 mm is 1.005 + 1.12 + 9 + 30, smallest digit first', () => {
    // Common practice: take away the last digit of what is left until nothing is.
    const stack = gaugeStack(metric87, 41.125)!
    expect(stack.off).toBeCloseTo(0, 9)
    expect(stack.blocks.length).toBeLessThanOrEqual(4)
    expect(stack.blocks.reduce((a, b) => a + b, 0)).toBeCloseTo(41.125, 9)
    expect([1.005, 1.12, 9, 30].reduce((a, b) => a + b, 0)).toBeCloseTo(41.125, 9)
  })

  it('come to 7° on a sine bar of 100 mm within half a micrometre, which is a second of arc', () => {
    const height = sineBarHeight(100, (7 * Math.PI) / 180)
    expect(height).toBeCloseTo(12.18693, 5)
    const stack = gaugeStack(metric87, height)!
    expect(Math.abs(stack.off)).toBeLessThan(0.0005)
    const seconds = Math.abs(sineBarAngle(100, stack.height) * (180 / Math.PI) - 7) * 3600
    expect(seconds).toBeLessThan(1.2)
  })

  it('of an inch set come to 0.7813 in within its finest step', () => {
    // 0.1003 + 0.131 + 0.55, the last digit first: three blocks, and their sum is exact though each is rounded in mm.
    const stack = gaugeStack(inch81, 0.7813 * 25.4)!
    expect(stack.off).toBeCloseTo(0, 9)
    expect(stack.blocks).toHaveLength(3)
  })

  it('are as few as can be: what one block does needs no two', () => {
    expect(gaugeStack(metric87, 9)!.blocks).toEqual([9])
    expect(gaugeStack(metric87, 10.5)!.blocks).toHaveLength(2)
  })

  it('are not made more to come closer than is asked for', () => {
    // 12.18693 for 7° on 100 mm: three blocks come within 0.07 µm, and nobody measures what a fourth would bring.
    expect(gaugeStack(metric87, 12.18693, { within: 0.0005 })!.blocks).toEqual([10, 1.18, 1.007])
    expect(gaugeStack(metric87, 12.18693, { within: 0.00007 })!.blocks).toHaveLength(3)
    expect(gaugeStack([10, 2, 0.19], 12.187, { within: 0.2 })!.blocks).toHaveLength(2)
    expect(gaugeStack([10, 2, 0.19], 12.187, { within: 0.1 })!.blocks).toHaveLength(3)
  })

  it('of a set of 47 need five where hundredths and tenths both need a block, and may be held to fewer', () => {
    const metric47 = [1.005, ...run(1.01, 0.01, 19), ...run(1.2, 0.1, 8), ...run(1, 1, 9), ...run(10, 10, 10)]
    const five = gaugeStack(metric47, 41.875, { most: 5 })!
    expect(five.off).toBe(0)
    expect(five.blocks).toHaveLength(5)
    expect(five.blocks.reduce((a, b) => a + b, 0)).toBeCloseTo(41.875, 12)
    const four = gaugeStack(metric47, 41.875)!
    expect(four.blocks.length).toBeLessThanOrEqual(4)
    expect(Math.abs(four.off)).toBeGreaterThan(0)
  })

  it('are never used twice unless the set has two', () => {
    expect(gaugeStack([5], 10)!.blocks).toEqual([5])
    expect(gaugeStack([5, 5], 10)!.blocks).toEqual([5, 5])
  })

  it('are the nearest of all stacks, by trying every one', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 2000 }), { minLength: 1, maxLength: 7 }),
        fc.integer({ min: 1, max: 6000 }),
        (set, height) => {
          const blocks = set.map((b) => b / 100)
          let best = Infinity
          for (let mask = 1; mask < 1 << blocks.length; mask++) {
            const picked = blocks.filter((_, i) => mask & (1 << i))
            if (picked.length > 4) continue
            best = Math.min(best, Math.abs(picked.reduce((a, b) => a + b, 0) - height / 100))
          }
          const stack = gaugeStack(blocks, height / 100)!
          expect(Math.abs(stack.off)).toBeCloseTo(best, 9)
          expect(stack.blocks.reduce((a, b) => a + b, 0)).toBeCloseTo(stack.height, 9)
        },
      ),
      { seed: 3, numRuns: 400 },
    )
  })

  it('that are not there make no stack', () => {
    expect(gaugeStack([], 10)).toBeUndefined()
    expect(() => gaugeStack([1], 0)).toThrow(RangeError)
    expect(() => gaugeStack([1], 1, { most: 6 })).toThrow(RangeError)
    expect(() => gaugeStack([1], 1, { most: 0 })).toThrow(RangeError)
    expect(() => gaugeStack([1], 1, { within: -1 })).toThrow(RangeError)
    expect(() => sineBarAngle(100, 120)).toThrow(RangeError)
  })
})
