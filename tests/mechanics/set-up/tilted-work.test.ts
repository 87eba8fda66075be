import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { heldOn, jawGrip } from '../../../src/mechanics/set-up/jaw-grip.ts'
import { stickUpNeeded } from '../../../src/mechanics/set-up/stick-up.ts'
import { tiltedHeights } from '../../../src/mechanics/set-up/tilted-work.ts'
import { faults, good } from '../measuring/slope-check.ts'

const deg = Math.PI / 180
/** A hexagon of 46 mm slotted point to point, 44 mm long on its axis, tilted 10°: jaws hold flats of 46/√3. */
const work = { depthOnAxis: 44, across: 53.1162, flat: 26.5581, tilt: 10 * deg }

describe('a tilted head', () => {
  it('by hand: h·cos a ± what the tilt adds', () => {
    // cos 10° = 0.9848078, sin 10° = 0.1736482, tan 10° = 0.1763270.
    const heights = good(tiltedHeights(work))
    expect(heights.lowest).toBeCloseTo(43.33154 + 26.5581 * 0.1736482, 4)
    expect(heights.flatEnd).toBeCloseTo(43.33154 - 13.27905 * 0.1736482, 4)
    expect(heights.wedge).toBeCloseTo(53.1162 * 0.1736482, 4)
  })

  it('by coordinates: turning the corners of the mounting face by the tilt gives the same heights', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 80, noNaN: true }),
        fc.double({ min: 10, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 35 * deg, noNaN: true }),
        (depthOnAxis, across, tilt) => {
          const { lowest, flatEnd } = good(tiltedHeights({ depthOnAxis, across, flat: across, tilt }))
          // Origin where the axis meets the finished face; turned so that the face is level, depth counts down.
          const depth = (x: number) => depthOnAxis * Math.cos(tilt) + x * Math.sin(tilt)
          expect(lowest).toBeCloseTo(depth(across / 2), 9)
          expect(flatEnd).toBeCloseTo(depth(-across / 2), 9)
          expect((lowest + flatEnd) / 2).toBeCloseTo(depthOnAxis * Math.cos(tilt), 9)
        },
      ),
      { seed: 1, numRuns: 100 },
    )
  })

  it('that is level is as low all over, and has no wedge', () => {
    expect(good(tiltedHeights({ ...work, tilt: 0 }))).toEqual({ lowest: 44, flatEnd: 44, wedge: 0 })
  })

  it('has a height and a flat no longer than the bar, and does not lie on its side', () => {
    expect(faults(tiltedHeights({ ...work, depthOnAxis: 0 }))).toEqual(['out-of-range depthOnAxis'])
    expect(faults(tiltedHeights({ ...work, tilt: 90 * deg }))).toEqual(['out-of-range tilt'])
    expect(faults(tiltedHeights({ ...work, flat: 54 }))).toEqual(['out-of-range flat'])
  })
})

describe('the face above the jaws', () => {
  it('is asked for by each cut, and by the deepest for all: slot and step want about the height of the bit more than the face', () => {
    // Common practice of method.md §11: a bit of 12.7 mm.
    const stick = good(
      stickUpNeeded([
        { id: 'face', depth: 0, clearance: 2 },
        { id: 'slot', depth: 12.7, clearance: 1 },
        { id: 'step', depth: 13, clearance: 1 },
      ]),
    )
    expect(stick).toEqual({
      each: [
        { id: 'face', needed: 2 },
        { id: 'slot', needed: 13.7 },
        { id: 'step', needed: 14 },
      ],
      all: 14,
      by: 'step',
    })
    expect(stick.all - stick.each[0]!.needed).toBeCloseTo(12, 12)
    expect(faults(stickUpNeeded([{ id: 'slot', depth: -1, clearance: 1 }]))).toEqual(['out-of-range slot.depth'])
    expect(() => stickUpNeeded([])).toThrow(RangeError)
  })
})

describe('the jaws', () => {
  const input = { work, stickUp: 14, jawHeight: 45, leastGrip: 12, gripShare: 1 / 3, shareOf: 'height' } as const

  it('hold what is left of the flat below their tops', () => {
    // 43.33154 − 2.30588 − 14 = 27.02566; a third of 43.33154 is 14.44385; lowest 47.94332.
    const grip = good(jawGrip(input))
    expect(grip.left).toBeCloseTo(27.0257, 3)
    expect(grip.wanted).toBeCloseTo(14.4438, 3)
    expect(grip.underNeeded).toBeCloseTo(45 + 14 - 47.9433, 3)
    expect(grip.underMost - grip.underNeeded).toBeCloseTo(grip.left - grip.wanted, 9)
  })

  it('say what is wanted as the larger of the two rules', () => {
    expect(good(jawGrip({ ...input, leastGrip: 14.4 })).wanted).toBeCloseTo(14.4438, 3)
    expect(good(jawGrip({ ...input, leastGrip: 14.5 })).wanted).toBe(14.5)
  })

  it('leave room for packing up to where the wanted grip is just left, and a hundredth more leaves less', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 30 * deg, noNaN: true }),
        fc.double({ min: 5, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.constantFrom('height' as const, 'stick-up' as const),
        (tilt, stickUp, leastGrip, gripShare, shareOf) => {
          const held = { ...input, jawHeight: 60, work: { ...work, tilt }, leastGrip, gripShare, shareOf }
          const { underMost } = good(jawGrip({ ...held, stickUp }))
          const on = (under: number) => good(heldOn({ ...held, under }))
          if (underMost < 0.01) return
          expect(on(underMost).grip).toBeCloseTo(on(underMost).wanted, 9)
          expect(on(underMost + 0.01).grip).toBeLessThan(on(underMost + 0.01).wanted)
        },
      ),
      { seed: 2, numRuns: 200 },
    )
  })

  it('want a share of what stands out where that is the rule: 30 out, a third of it is 10', () => {
    const wanted = (stickUp: number) => good(jawGrip({ ...input, stickUp, leastGrip: 8, shareOf: 'stick-up' })).wanted
    expect(wanted(30)).toBeCloseTo(10, 12)
    expect(wanted(21)).toBe(8)
  })

  it('hold a head on parallels by what the parallels leave: up 16 mm, 5 mm more stick-up, 5 mm less grip', () => {
    const on = (under: number) => good(heldOn({ ...input, under }))
    expect(on(16).stickUp).toBeCloseTo(16 + 47.9433 - 45, 3)
    expect(on(16).stickUp - on(11).stickUp).toBeCloseTo(5, 12)
    expect(on(11).grip - on(16).grip).toBeCloseTo(5, 12)
    const { underNeeded, underMost, wanted } = good(jawGrip(input))
    expect(on(underNeeded).stickUp).toBeCloseTo(14, 9)
    expect(on(underMost).grip).toBeCloseTo(wanted, 9)
  })

  it('of no height, and shares of more than one, are refused', () => {
    expect(faults(jawGrip({ ...input, jawHeight: 0, gripShare: 1.01 }))).toEqual([
      'out-of-range jawHeight',
      'out-of-range gripShare',
    ])
    expect(faults(jawGrip({ ...input, work: { ...work, tilt: -0.1 }, stickUp: -1 }))).toEqual([
      'out-of-range tilt',
      'out-of-range stickUp',
    ])
    expect(faults(heldOn({ ...input, under: -1 }))).toEqual(['out-of-range under'])
  })
})
