import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boreOffCentre } from '../../../src/mechanics/measuring/bore-off-centre.ts'
import { fullDepthFromRod, fullDepthFromTip, pointLength } from '../../../src/mechanics/measuring/drill-point.ts'
import { flatAnvilError, flatToAxis, flatToWall, slotOffCentre } from '../../../src/mechanics/measuring/from-flat.ts'
import {
  overRollers,
  taperByBalls,
  taperByRings,
  taperOverRollers,
  taperRatio,
} from '../../../src/mechanics/measuring/taper-gauging.ts'
import { expectSlopes, faults, good } from './slope-check.ts'

const deg = Math.PI / 180
const inch = 25.4

describe('an outside taper over rollers', () => {
  it('of Morse No. 2 is found again: 0.572 in at the small end, 0.59941 in a foot', () => {
    // Dimensions of the taper: trade table (small end 0.572, taper 0.5994 in a foot).
    const halfAngle = Math.atan(0.59941 / 24)
    const taper = { halfAngle, diameter: 0.572 * inch, roller: 6 }
    const found = good(
      taperOverRollers({
        roller: 6,
        blocks: 50,
        low: overRollers({ ...taper, height: 0 }),
        high: overRollers({ ...taper, height: 50 }),
      }),
    )
    expect(taperRatio(found.halfAngle.size) * 12).toBeCloseTo(0.59941, 9)
    expect(found.diameter.size).toBeCloseTo(0.572 * inch, 9)
  })

  it('by coordinates: the roller is its radius away from the plate and from the cone', () => {
    // 7/24, small end 20, rollers of 10: half angle atan(7/48). Middle of a roller at (X, 5); cone x = 10 + z·tan β.
    const tan = 7 / 48
    const beta = Math.atan(tan)
    const x = overRollers({ halfAngle: beta, diameter: 20, roller: 10, height: 0 }) / 2 - 5
    expect((x - 10 - 5 * tan) * Math.cos(beta)).toBeCloseTo(5, 12)
    // A cylinder: rollers beside it.
    expect(overRollers({ halfAngle: 0, diameter: 20, roller: 10, height: 30 })).toBeCloseTo(40, 12)
  })

  it('shows each error as it is', () => {
    const at = { roller: 6, blocks: 50, low: 27, high: 29.5 }
    expectSlopes(at, (r) => good(taperOverRollers(r)).halfAngle)
    expectSlopes(at, (r) => good(taperOverRollers(r)).diameter)
  })

  it('is refused with the wide end down, without blocks, or without a small end', () => {
    const at = { roller: 6, blocks: 50, low: 27, high: 29.5 }
    expect(faults(taperOverRollers({ ...at, high: 26.9 }))).toEqual(['out-of-range high'])
    expect(good(taperOverRollers({ ...at, high: 27 })).halfAngle.size).toBe(0)
    expect(faults(taperOverRollers({ ...at, blocks: 0 }))).toEqual(['out-of-range blocks'])
    expect(faults(taperOverRollers({ ...at, low: 12, high: 12 }))).toEqual(['out-of-range low'])
    expect(good(taperOverRollers({ ...at, low: 12.01, high: 12.01 })).diameter.size).toBeCloseTo(0.01, 9)
    expect(() => overRollers({ halfAngle: 0, diameter: 0, roller: 6, height: 0 })).toThrow(RangeError)
  })
})

describe('a taper by rings and by balls', () => {
  it('of 7/24 stops in rings of 40 and 33 mm with their mouths 24 mm apart', () => {
    const found = good(taperByRings({ large: 40, small: 33, apart: 24 }))
    expect(taperRatio(found.halfAngle.size)).toBeCloseTo(7 / 24, 12)
    // ANSI B5.50, by a taper page: 8° 17′ 50″.
    expect(found.halfAngle.size / deg).toBeCloseTo(8 + 17 / 60 + 50 / 3600, 3)
    expectSlopes({ large: 40, small: 33, apart: 24 }, (r) => good(taperByRings(r)).halfAngle)
    expectSlopes({ large: 40, small: 33, apart: 24 }, (r) => good(taperByRings(r)).diameter)
    expect(faults(taperByRings({ large: 33, small: 33, apart: 24 }))).toEqual(['out-of-range large'])
    expect(faults(taperByRings({ large: 40, small: 33, apart: 0 }))).toEqual(['out-of-range apart'])
  })

  it('in a hole is found from two balls, mouth and angle', () => {
    fc.assert(
      fc.property(fc.double({ min: 1 * deg, max: 30 * deg, noNaN: true }), (beta) => {
        // Mouth of 40. A ball of radius r touches where its middle is (20 − r/cos β)/tan β below the mouth.
        const depth = (r: number) => (20 - r / Math.cos(beta)) / Math.tan(beta)
        const found = good(taperByBalls({ large: 30, small: 20, largeTop: depth(15) - 15, smallTop: depth(10) - 10 }))
        expect(found.halfAngle.size).toBeCloseTo(beta, 9)
        expect(found.diameter.size).toBeCloseTo(40, 7)
      }),
      { seed: 5, numRuns: 100 },
    )
    const at = { large: 30, small: 20, largeTop: 3, smallTop: 40 }
    expectSlopes(at, (r) => good(taperByBalls(r)).halfAngle)
    expectSlopes(at, (r) => good(taperByBalls(r)).diameter)
  })

  it('in a hole is none where the balls lie closer than any cone lets them', () => {
    // Middles as far apart as the radii differ, 5 mm: a flat. The small ball's top then lies 10 below the large one's.
    expect(faults(taperByBalls({ large: 30, small: 20, largeTop: 0, smallTop: 10 }))).toEqual(['out-of-range smallTop'])
    expect(
      good(taperByBalls({ large: 30, small: 20, largeTop: 0, smallTop: 10.01 })).halfAngle.size / deg,
    ).toBeGreaterThan(85)
  })
})

describe('from an outside flat', () => {
  it('a wall is the reading less the pin, an axis the wall and half of the bore', () => {
    expect(good(flatToWall({ reading: 29.4, pin: 6 })).size).toBeCloseTo(23.4, 12)
    expect(good(flatToAxis({ wall: 13.02, bore: 19.98 })).size).toBeCloseTo(23.01, 12)
    expect(good(slotOffCentre({ first: 17.4, second: 16.9 })).size).toBeCloseTo(0.25, 12)
    expectSlopes({ reading: 29.4, pin: 6 }, (r) => good(flatToWall(r)))
    expectSlopes({ wall: 13, bore: 20 }, (r) => good(flatToAxis(r)))
    expectSlopes({ first: 13, second: 20 }, (r) => good(slotOffCentre(r)))
    expect(faults(flatToWall({ reading: 6, pin: 6 }))).toEqual(['out-of-range reading'])
    expect(faults(flatToAxis({ wall: 0, bore: 20 }))).toEqual(['out-of-range wall'])
    expect(faults(slotOffCentre({ first: 1, second: 0 }))).toEqual(['out-of-range second'])
  })

  it('a flat anvil of 4 mm in a bore of 20 mm reads 0.2020 mm too thick', () => {
    // 10 − √(100 − 4) = 0.20204.
    expect(good(flatAnvilError(20, 4))).toBeCloseTo(0.20204, 5)
    expect(good(flatAnvilError(20, 0))).toBe(0)
    expect(good(flatAnvilError(20, 20))).toBe(10)
    expect(faults(flatAnvilError(20, 20.1))).toEqual(['out-of-range anvil'])
  })

  it('the walls of a hexagon show where its bore lies, whatever the sizes', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.constantFrom([0, 90], [0, 60, 120], [10, 75]),
        (x, y, directions) => {
          const walls = directions.map((d) => {
            const along = x * Math.cos(d * deg) + y * Math.sin(d * deg)
            return { direction: d * deg, wall: 13 - along, opposite: 13 + along }
          })
          const found = good(boreOffCentre(walls))
          expect(found.x).toBeCloseTo(x, 9)
          expect(found.y).toBeCloseTo(y, 9)
          expect(found.eccentricity).toBeCloseTo(Math.hypot(x, y), 9)
          expect(found.disagreement).toBeLessThan(1e-9)
        },
      ),
      { seed: 7, numRuns: 100 },
    )
    // By hand for three pairs, e = 0.1 in the first only: x = ⅔·0.1, and the pairs disagree by a third of it.
    const one = good(
      boreOffCentre([0, 60, 120].map((d, i) => ({ direction: d * deg, wall: 13, opposite: i === 0 ? 13.2 : 13 }))),
    )
    expect(one.x).toBeCloseTo(0.2 / 3, 12)
    expect(one.y).toBeCloseTo(0, 12)
    expect(one.disagreement).toBeCloseTo(0.1 / 3, 12)
  })

  it('one pair of flats does not show where the bore lies', () => {
    const pair = { direction: 0, wall: 13, opposite: 13 }
    expect(faults(boreOffCentre([pair]))).toEqual(['missing-key pairs'])
    expect(faults(boreOffCentre([pair, { ...pair, direction: Math.PI }]))).toEqual(['missing-key pairs'])
    expect(faults(boreOffCentre([]))).toEqual(['missing-key pairs'])
    expect(faults(boreOffCentre([pair, { ...pair, direction: 1, wall: 0 }]))).toEqual(['out-of-range pairs.1.wall'])
  })
})

describe('a drill point', () => {
  const drill = { diameter: 20, pointAngle: 118 * deg }

  it('of 118° is 0.3004 of the diameter long, a flat one nothing', () => {
    expect(good(pointLength(drill)) / 20).toBeCloseTo(0.30043, 5)
    expect(good(pointLength({ diameter: 20, pointAngle: Math.PI }))).toBe(0)
    expect(good(pointLength({ diameter: 20, pointAngle: 90 * deg }))).toBeCloseTo(10, 12)
  })

  it('leaves the full diameter that much less deep, and a rod stops on the cone between', () => {
    expect(good(fullDepthFromTip({ ...drill, tip: 30 })).size).toBeCloseTo(30 - 6.00861, 4)
    // A rod of 5 mm stops where the cone is 5 mm wide: 7.5·cot 59° = 4.50646 below the full diameter.
    expect(good(fullDepthFromRod({ ...drill, reading: 28.5, rod: 5 })).size).toBeCloseTo(28.5 - 4.50646, 4)
    expect(good(fullDepthFromRod({ ...drill, reading: 24, rod: 20 })).size).toBe(24)
    expectSlopes({ ...drill, tip: 30 }, (r) => good(fullDepthFromTip(r)))
    expectSlopes({ ...drill, reading: 28.5, rod: 5 }, (r) => good(fullDepthFromRod(r)))
  })

  it('of no angle or of more than a flat one is refused, and a rod that does not go in', () => {
    expect(faults(pointLength({ diameter: 20, pointAngle: 0 }))).toEqual(['out-of-range pointAngle'])
    expect(faults(pointLength({ diameter: 0, pointAngle: 3.2 }))).toEqual([
      'out-of-range diameter',
      'out-of-range pointAngle',
    ])
    expect(faults(fullDepthFromRod({ ...drill, reading: 20, rod: 20.01 }))).toEqual(['out-of-range rod'])
    expect(faults(fullDepthFromTip({ ...drill, tip: 0 }))).toEqual(['out-of-range tip'])
  })
})
