import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dot, unit, type Vec3 } from '../../../src/geometry/vector.ts'
import { normalRakeFrom, orthogonalFrom, sideAndBackFrom } from '../../../src/mechanics/angles/rake-conversion.ts'
import { degrees } from './any-bit.ts'

const sides = fc.record({ radialRake: degrees(-60, 60), axialRake: degrees(-60, 60) })

describe('one rake face in three systems of planes', () => {
  it('there and back again gives the same rakes for any cutting edge angle (TG-4)', () => {
    fc.assert(
      fc.property(sides, degrees(0, 180), (rake, kappa) => {
        const back = sideAndBackFrom(orthogonalFrom(rake, kappa), kappa)
        expect(Math.abs(back.radialRake - rake.radialRake)).toBeLessThan(1e-9)
        expect(Math.abs(back.axialRake - rake.axialRake)).toBeLessThan(1e-9)
      }),
    )
  })

  it('an edge along the axis has the radial rake square to it and the axial rake as its inclination', () => {
    fc.assert(
      fc.property(sides, (rake) => {
        const { orthogonalRake, inclination } = orthogonalFrom(rake, Math.PI / 2)
        expect(orthogonalRake).toBeCloseTo(rake.radialRake, 12)
        expect(inclination).toBeCloseTo(rake.axialRake, 12)
      }),
    )
  })

  it('the normal rake is the rake measured square to the edge itself', () => {
    fc.assert(
      fc.property(sides, degrees(5, 175), (rake, kappa) => {
        // Outward, motion, up: the face falls away inwards by γf and upwards by γp.
        const n = unit([-Math.tan(rake.radialRake), 1, Math.tan(rake.axialRake)])
        const slope = Math.tan(rake.radialRake) * Math.cos(kappa) - Math.tan(rake.axialRake) * Math.sin(kappa)
        const edge = unit([Math.cos(kappa), slope, Math.sin(kappa)])
        expect(dot(n, edge)).toBeCloseTo(0, 12)
        // In the plane square to the edge: the trace of the reference plane against the face.
        const trace = unit([Math.sin(kappa), 0, -Math.cos(kappa)] satisfies Vec3)
        const measured = Math.asin(-dot(n, trace))
        expect(normalRakeFrom(orthogonalFrom(rake, kappa))).toBeCloseTo(measured, 12)
      }),
    )
  })
})
