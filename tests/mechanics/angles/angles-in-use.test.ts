import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Vec3 } from '../../../src/geometry/vector.ts'
import { anglesInUse } from '../../../src/mechanics/angles/angles-in-use.ts'
import { type GroundFacets, unground } from '../../../src/mechanics/angles/facets.ts'
import { type TipSetting, tipOf } from '../../../src/mechanics/angles/tip-setting.ts'
import { anyFacets, anySetting, deg, degrees, faults, good, level } from './any-bit.ts'

describe('the bit as bought, in its slot', () => {
  it('its radial rake is −asin(e/R), and its axial rake 0, at any face angle', () => {
    fc.assert(
      fc.property(anySetting, (any) => {
        const setting = { ...any, groundOffLeading: 0 }
        const angles = good(anglesInUse(unground, setting))
        expect(Math.abs(angles.radialRake + Math.asin(setting.ahead / tipOf(setting).radius))).toBeLessThan(1e-12)
        expect(Math.abs(angles.axialRake)).toBeLessThan(1e-12)
      }),
    )
  })

  it('the relief under it is −(e/R)·tan a: a slot ahead of centre on a tilted face makes the underside rub', () => {
    fc.assert(
      fc.property(anySetting, (any) => {
        const setting = { ...any, groundOffLeading: 0 }
        const expected = -(setting.ahead / tipOf(setting).radius) * Math.tan(setting.faceAngle)
        expect(Math.abs(Math.tan(good(anglesInUse(unground, setting)).axialRelief) - expected)).toBeLessThan(1e-12)
      }),
    )
  })

  it('ahead of centre makes the rake more negative, behind more positive', () => {
    const rakeAt = (ahead: number) => good(anglesInUse(unground, { ...level, faceAngle: 8 * deg, ahead })).radialRake
    expect(rakeAt(3)).toBeLessThan(rakeAt(1))
    expect(rakeAt(1)).toBeLessThan(0)
    expect(rakeAt(-1)).toBeGreaterThan(0)
    expect(rakeAt(-3)).toBeGreaterThan(rakeAt(-1))
  })

  it('what is ground off the leading face brings the tip back, and its rake with it', () => {
    const setting = { ...level, ahead: 2.4, groundOffLeading: 2.4 }
    expect(good(anglesInUse(unground, setting)).radialRake).toBeCloseTo(0, 14)
  })
})

describe('the ground bit in its slot', () => {
  it('on the axis with a flat rake face κr = 90° − a + end edge angle and κr′ = a + work-side edge angle', () => {
    fc.assert(
      fc.property(anySetting, degrees(-20, 45), degrees(-15, 30), degrees(0, 20), (any, end, side, relief) => {
        const setting = { ...any, ahead: any.groundOffLeading }
        const facets: GroundFacets = {
          ...unground,
          endEdgeAngle: end,
          workSideEdgeAngle: side,
          endRelief: relief,
          workSideRelief: relief,
        }
        const angles = good(anglesInUse(facets, setting))
        expect(Math.abs(angles.cuttingEdgeAngle - (Math.PI / 2 - setting.faceAngle + end))).toBeLessThan(1e-12)
        expect(Math.abs(angles.minorCuttingEdgeAngle - (setting.faceAngle + side))).toBeLessThan(1e-12)
        expect(angles.cornerAngle).toBeCloseTo(Math.PI / 2 - end - side, 12)
      }),
    )
  })

  it('a square shoulder needs an end edge angle equal to the face angle', () => {
    const facets = { ...unground, endEdgeAngle: 10 * deg, endRelief: 12 * deg }
    const angles = good(anglesInUse(facets, { ...level, faceAngle: 10 * deg }))
    expect(angles.cuttingEdgeAngle).toBeCloseTo(Math.PI / 2, 13)
  })

  it('the mirrored hand has the same angles', () => {
    fc.assert(
      fc.property(anyFacets, anySetting, (facets, setting) => {
        const one = good(anglesInUse(facets, { ...setting, hand: 1 }))
        const other = good(anglesInUse(facets, { ...setting, hand: -1 }))
        for (const key of Object.keys(one) as (keyof typeof one)[]) expect(other[key]).toBeCloseTo(one[key], 12)
      }),
    )
  })

  it('a level slot on the axis with nothing off the leading face gives back the ground angles', () => {
    fc.assert(
      fc.property(anyFacets, fc.constantFrom(-1 as const, 1 as const), (facets, hand) => {
        const angles = good(anglesInUse(facets, { ...level, hand }))
        expect(angles.radialRake).toBeCloseTo(facets.rakeAlong, 12)
        expect(angles.axialRake).toBeCloseTo(facets.rakeAcross, 12)
        expect(angles.radialRelief).toBeCloseTo(facets.endRelief, 12)
        expect(angles.axialRelief).toBeCloseTo(facets.workSideRelief, 12)
      }),
    )
  })

  it('every degree of relief or rake ground at the end is a degree in use when the slot is level', () => {
    fc.assert(
      fc.property(anyFacets, anySetting, (any, anySet) => {
        const setting = { ...anySet, faceAngle: 0 }
        const facets = { ...any, rakeAcross: 0 }
        const { lead } = tipOf(setting)
        const angles = good(anglesInUse(facets, setting))
        expect(angles.radialRake).toBeCloseTo(facets.rakeAlong - lead, 12)
        expect(angles.radialRelief).toBeCloseTo(facets.endRelief + lead, 12)
      }),
    )
  })

  it('agrees with slopes measured on the facets themselves, point by point', () => {
    fc.assert(
      fc.property(anyFacets, anySetting, (facets, setting) => {
        const angles = good(anglesInUse(facets, setting))
        const t = measuredTangents(facets, setting)
        expect(Math.abs(Math.atan(t.radialRake) - angles.radialRake)).toBeLessThan(1e-9)
        expect(Math.abs(Math.atan(t.axialRake) - angles.axialRake)).toBeLessThan(1e-9)
        expect(Math.abs(Math.atan(t.radialRelief) - angles.radialRelief)).toBeLessThan(1e-9)
        expect(Math.abs(Math.atan(t.axialRelief) - angles.axialRelief)).toBeLessThan(1e-9)
      }),
    )
  })
})

describe('facets without angles in use', () => {
  it('a wedge that is ground away is named', () => {
    const facets = { ...unground, rakeAlong: 45 * deg, endRelief: 45 * deg }
    expect(faults(anglesInUse(facets, level))).toEqual(['contradiction facets.endRelief'])
  })

  it('an end leant back so far that it looks towards the axis on a steep face is named', () => {
    const facets = { ...unground, endEdgeAngle: -60 * deg }
    const setting = { ...level, faceAngle: 45 * deg }
    expect(faults(anglesInUse(facets, setting))).toContain('contradiction facets.endEdgeAngle')
  })

  it('an underside that looks up on a steep face is named', () => {
    const facets = { ...unground, workSideEdgeAngle: 60 * deg }
    const setting = { ...level, faceAngle: 45 * deg }
    expect(faults(anglesInUse(facets, setting))).toContain('contradiction facets.workSideEdgeAngle')
  })

  it('a rake face that the slot far behind centre turns back against the motion is named', () => {
    const facets = { ...unground, rakeAlong: 45 * deg }
    const setting = { ...level, along: 5, ahead: -8 }
    expect(faults(anglesInUse(facets, setting))).toContain('contradiction facets.rakeAlong')
  })
})

/**
 * The slopes again, without a normal: two points of each facet beside the tip are put into the head by the formulas of
 * the frames written out, and the line in which the facet crosses a level or an upright plane is found from them.
 */
function measuredTangents(f: GroundFacets, s: TipSetting) {
  const [sin, cos] = [Math.sin(s.faceAngle), Math.cos(s.faceAngle)]
  const lead = s.hand * (s.ahead - s.groundOffLeading)
  const out = s.along * cos + s.height * sin
  const R = Math.hypot(out, lead)
  // (along the radius, along the motion, up) of a step in the bit's own frame.
  const local = ([x, y, z]: Vec3): Vec3 => {
    const X = x * cos - z * sin
    const Y = s.hand * y
    return [(X * out + Y * lead) / R, (s.hand * (Y * out - X * lead)) / R, -x * sin - z * cos]
  }
  const along = Math.tan(f.rakeAlong)
  const across = Math.tan(f.rakeAcross)
  const [p, q] = [local([1, along, 0]), local([0, across, 1])]
  const [u, v] = [local([Math.tan(f.endRelief), 1, 0]), local([Math.tan(f.endEdgeAngle), 0, 1])]
  const [m, n] = [local([0, 1, Math.tan(f.workSideRelief)]), local([1, 0, Math.tan(f.workSideEdgeAngle)])]
  // The combination of two steps of a facet without component k.
  const without = (k: 0 | 1 | 2, a: Vec3, b: Vec3): Vec3 => [
    a[0] * b[k] - b[0] * a[k],
    a[1] * b[k] - b[1] * a[k],
    a[2] * b[k] - b[2] * a[k],
  ]
  const rakeLevel = without(2, p, q)
  const rakeUpright = without(0, p, q)
  const endLevel = without(2, u, v)
  const sideUpright = without(0, m, n)
  return {
    radialRake: rakeLevel[1] / rakeLevel[0],
    axialRake: -rakeUpright[1] / rakeUpright[2],
    radialRelief: endLevel[0] / endLevel[1],
    axialRelief: -sideUpright[2] / sideUpright[1],
  }
}
