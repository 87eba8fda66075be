import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { anglesInUse } from '../../../src/mechanics/angles/angles-in-use.ts'
import { unground } from '../../../src/mechanics/angles/facets.ts'
import { groundBit } from '../../../src/mechanics/angles/ground-bit.ts'
import { heelOf } from '../../../src/mechanics/angles/heel.ts'
import { leastEndRelief, leastEndReliefAtTip } from '../../../src/mechanics/angles/least-end-relief.ts'
import { tipOf } from '../../../src/mechanics/angles/tip-setting.ts'
import { anySetting, blank12, deg, degrees, faults, good, level, usualFacets } from './any-bit.ts'

describe('least end relief at the height of the tip', () => {
  it('on the axis it is half the angle whose sine is w/R', () => {
    const { inUse, asGround } = good(leastEndReliefAtTip(level, 12, 0))
    expect(inUse).toBeCloseTo(Math.asin(12 / 60) / 2, 14)
    expect(asGround).toBeCloseTo(inUse, 14)
  })

  it('on a level slot its tangent as ground is (P_x − √(R² − (w − e)²))/(w − g)', () => {
    fc.assert(
      fc.property(anySetting, (any) => {
        const setting = { ...any, faceAngle: 0 }
        const { point, radius } = tipOf(setting)
        const [w, g, e] = [12, setting.groundOffLeading, setting.ahead]
        const expected = (point[0] - Math.sqrt(radius ** 2 - (w - e) ** 2)) / (w - g)
        expect(Math.tan(good(leastEndReliefAtTip(setting, w, 0)).asGround)).toBeCloseTo(expected, 10)
      }),
    )
  })

  it('what is to be ground comes out as what is needed in use, at any face and edge angle', () => {
    fc.assert(
      fc.property(anySetting, degrees(-10, 30), (setting, endEdgeAngle) => {
        const { inUse, asGround } = good(leastEndReliefAtTip(setting, 12, endEdgeAngle))
        const angles = good(anglesInUse({ ...unground, endEdgeAngle, endRelief: asGround }, setting))
        expect(angles.radialRelief).toBeCloseTo(inUse, 12)
      }),
    )
  })

  it('puts the heel of a bit with a flat underside on the tip’s circle', () => {
    for (const ahead of [-3, 0, 1.5]) {
      const setting = { ...level, ahead }
      const { asGround } = good(leastEndReliefAtTip(setting, 12, 0))
      const heel = good(heelOf(good(groundBit(blank12, { ...unground, endRelief: asGround }, setting)), 1))
      expect(heel.end.clearance).toBeCloseTo(0, 12)
    }
  })

  it('a bit wider than its circle allows is a problem', () => {
    expect(faults(leastEndReliefAtTip({ ...level, along: 10 }, 12, 0))).toEqual(['out-of-range width'])
  })

  it('a bit that is all ground off, or an edge upside down, is the caller’s mistake', () => {
    expect(() => leastEndReliefAtTip({ ...level, groundOffLeading: 12 }, 12, 0)).toThrow(RangeError)
    expect(() => leastEndReliefAtTip({ ...level, faceAngle: 45 * deg }, 12, -50 * deg)).toThrow(RangeError)
  })
})

describe('least end relief of the exact bit', () => {
  it('is the tip’s where underside, rake face and end edge are flat, level and upright', () => {
    const exact = good(leastEndRelief(blank12, unground, level, 2))
    expect(exact).toBeCloseTo(good(leastEndReliefAtTip(level, 12, 0)).asGround, 9)
  })

  it('clears by the margin asked for, and a hundredth of a degree less does not', () => {
    fc.assert(
      fc.property(anySetting, usualFacets, fc.constantFrom(0, 0.05, 0.3), (any, usual, margin) => {
        const setting = { ...any, groundOffLeading: 1 }
        const facets = { ...usual, rakeAlong: usual.rakeAlong / 2, endRelief: 0 }
        const least = leastEndRelief(blank12, facets, setting, 0.8, margin)
        if (!least.ok) return
        const clearance = (endRelief: number) =>
          good(heelOf(good(groundBit(blank12, { ...facets, endRelief }, setting)), 0.8)).end.clearance
        expect(clearance(least.value)).toBeGreaterThanOrEqual(margin)
        if (least.value > 0.01 * deg) expect(clearance(least.value - 0.01 * deg)).toBeLessThan(margin)
      }),
      { numRuns: 40 },
    )
  })

  it('far ahead of centre none is needed', () => {
    expect(good(leastEndRelief(blank12, unground, { ...level, ahead: 8 }, 1))).toBe(0)
  })

  it('a margin that no relief can give is a problem; so is a depth beyond the edge', () => {
    expect(faults(leastEndRelief(blank12, unground, level, 1, 30))).toEqual(['contradiction facets.endRelief'])
    expect(faults(leastEndRelief(blank12, unground, level, 20))).toEqual(['out-of-range depthOfCut'])
  })
})
