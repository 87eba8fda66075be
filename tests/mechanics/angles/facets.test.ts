import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dot, length, type Vec3 } from '../../../src/geometry/vector.ts'
import {
  cornerProblems,
  edgeDirection,
  facetNormals,
  normalsInBody,
  unground,
} from '../../../src/mechanics/angles/facets.ts'
import { tipOf } from '../../../src/mechanics/angles/tip-setting.ts'
import { anyFacets, anySetting, deg } from './any-bit.ts'

const all = { ...unground, rakeAlong: 10 * deg, rakeAcross: 5 * deg, endEdgeAngle: 8 * deg, endRelief: 12 * deg }

describe('facets in the bit’s own frame', () => {
  it('each facet holds the points that its own equation gives', () => {
    fc.assert(
      fc.property(
        anyFacets,
        fc.double({ min: -5, max: 5, noNaN: true }),
        fc.double({ min: -5, max: 5, noNaN: true }),
        (f, u, v) => {
          const { rake, end, workSide } = facetNormals(f)
          expect(dot(rake, [u, u * Math.tan(f.rakeAlong) + v * Math.tan(f.rakeAcross), v])).toBeCloseTo(0, 12)
          expect(dot(end, [u * Math.tan(f.endEdgeAngle) + v * Math.tan(f.endRelief), v, u])).toBeCloseTo(0, 12)
          expect(dot(workSide, [u, v, u * Math.tan(f.workSideEdgeAngle) + v * Math.tan(f.workSideRelief)])).toBeCloseTo(
            0,
            12,
          )
          for (const n of [rake, end, workSide]) expect(length(n)).toBeCloseTo(1, 14)
        },
      ),
    )
  })

  it('normals look out of the metal: rake face ahead, end flank outwards, work-side flank to the work', () => {
    fc.assert(
      fc.property(anyFacets, (f) => {
        const { rake, end, workSide } = facetNormals(f)
        expect(rake[1]).toBeGreaterThan(0)
        expect(end[0]).toBeGreaterThan(0)
        expect(workSide[2]).toBeGreaterThan(0)
      }),
    )
  })

  it('an angle of 90° is the caller’s mistake', () => {
    expect(() => facetNormals({ ...unground, endRelief: Math.PI / 2 })).toThrow(RangeError)
    expect(() => facetNormals({ ...unground, rakeAlong: Number.NaN })).toThrow(RangeError)
  })
})

describe('facets in the body frame', () => {
  it('components are mapped, (x, s·y, −z) in the face frame, and not turned', () => {
    fc.assert(
      fc.property(anyFacets, anySetting, (f, setting) => {
        const own = facetNormals(f)
        const inBody = normalsInBody(own, tipOf(setting))
        const [sin, cos] = [Math.sin(setting.faceAngle), Math.cos(setting.faceAngle)]
        for (const key of ['rake', 'end', 'workSide'] as const) {
          const [x, y, z] = own[key]
          const expected: Vec3 = [x * cos - z * sin, setting.hand * y, -x * sin - z * cos]
          for (const k of [0, 1, 2] as const) expect(inBody[key][k]).toBeCloseTo(expected[k], 13)
        }
      }),
    )
  })
})

describe('the corner of metal behind the tip', () => {
  it('each edge between two facets lies in both and runs into the metal of the third', () => {
    fc.assert(
      fc.property(anyFacets, (f) => {
        expect(cornerProblems(f)).toEqual([])
        const { rake, end, workSide } = facetNormals(f)
        // A sound corner: the end edge goes up along the end, the work-side edge inwards, the third one back.
        expect(edgeDirection(rake, end, workSide)[2]).toBeLessThan(0)
        expect(edgeDirection(rake, workSide, end)[0]).toBeLessThan(0)
        const back = edgeDirection(end, workSide, rake)
        expect(back[1]).toBeLessThan(0)
        expect(dot(back, end)).toBeCloseTo(0, 12)
        expect(dot(back, workSide)).toBeCloseTo(0, 12)
        expect(dot(back, rake)).toBeLessThan(0)
      }),
    )
  })

  it.each([
    ['45° of rake and 45° of relief at the end', { rakeAlong: 45, endRelief: 45 }, 'endRelief'],
    ['40° across and 50° under the bit', { rakeAcross: 40, workSideRelief: 50 }, 'workSideRelief'],
    ['edges that lean 60° and 30°', { endEdgeAngle: 60, workSideEdgeAngle: 30 }, 'workSideEdgeAngle'],
    ['45° of negative rake and of negative relief', { rakeAlong: -45, endRelief: -45 }, 'endRelief'],
  ] as const)('%s leave no wedge; a tenth of a degree less of the second does', (_, inDegrees, last) => {
    const ground = Object.fromEntries(Object.entries(inDegrees).map(([name, angle]) => [name, angle * deg]))
    const facets = { ...unground, ...ground }
    expect(cornerProblems(facets).map(({ code, where }) => [code, where.path])).toEqual([
      ['contradiction', `facets.${last}`],
    ])
    const towardsZero = -Math.sign(facets[last]) * 0.1 * deg
    expect(cornerProblems({ ...facets, [last]: facets[last] + towardsZero })).toEqual([])
  })

  it('three wedges that are each sound can still meet in front of the tip', () => {
    const facets = {
      ...all,
      rakeAlong: 44 * deg,
      rakeAcross: 44 * deg,
      endEdgeAngle: 44 * deg,
      endRelief: 44 * deg,
      workSideEdgeAngle: 44 * deg,
      workSideRelief: 44 * deg,
    }
    expect(cornerProblems(facets).map(({ code, where }) => [code, where.path])).toEqual([['contradiction', 'facets']])
    const { rake, end, workSide } = facetNormals(facets)
    expect(edgeDirection(end, workSide, rake)[1]).toBeGreaterThan(0)
  })
})
