import { describe, expect, it } from 'vitest'
import { distance, unit, type Vec3 } from '../../../src/geometry/vector.ts'
import { contentOf, polyhedronInside, type Side } from '../../../src/mechanics/angles/convex-polyhedron.ts'

const side = (name: string, normal: Vec3, offset: number): Side<string> => ({
  kind: 'plane',
  name,
  normal: unit(normal),
  offset,
})
const cube = [
  side('left', [-1, 0, 0], 0),
  side('right', [1, 0, 0], 10),
  side('front', [0, -1, 0], 0),
  side('rear', [0, 1, 0], 10),
  side('bottom', [0, 0, -1], 0),
  side('top', [0, 0, 1], 10),
]

describe('corners and edges from flat sides', () => {
  it('a cube has 8 corners of three faces and 12 edges of its own length', () => {
    const { corners, edges } = polyhedronInside(cube)
    expect(corners.length).toBe(8)
    expect(corners.every(({ between }) => between.length === 3)).toBe(true)
    expect(edges.length).toBe(12)
    for (const [a, b] of edges) expect(distance(a.at, b.at)).toBeCloseTo(10, 12)
  })

  it('a cube with one corner cut off has 10 corners and 15 edges (Euler: 10 − 15 + 7 = 2)', () => {
    const { corners, edges } = polyhedronInside([...cube, side('cut', [1, 1, 1], 25 / Math.sqrt(3))])
    expect([corners.length, edges.length]).toEqual([10, 15])
    const cut = corners.filter(({ between }) => between.includes('cut'))
    expect(cut.map(({ at }) => at.map((c) => Math.round(c * 1e9) / 1e9)).toSorted()).toEqual([
      [10, 10, 5],
      [10, 5, 10],
      [5, 10, 10],
    ])
  })

  it('of two sides in one plane the first keeps its name; a side that touches nothing changes nothing', () => {
    const { corners, edges } = polyhedronInside([side('ground', [0, 0, 1], 10), ...cube, side('far', [1, 1, 0], 99)])
    expect([corners.length, edges.length]).toEqual([8, 12])
    const names = new Set(corners.flatMap(({ between }) => between))
    expect([names.has('ground'), names.has('top'), names.has('far')]).toEqual([true, false, false])
  })
})

describe('volume and first moment of a flat-sided body', () => {
  it('of a tetrahedron: a sixth of the box round it, its centroid a quarter of the way along each edge', () => {
    const body = polyhedronInside([
      side('x', [-1, 0, 0], 0),
      side('y', [0, -1, 0], 0),
      side('z', [0, 0, -1], 0),
      side('slope', [1 / 6, 1 / 9, 1 / 12], 1 / Math.hypot(1 / 6, 1 / 9, 1 / 12)),
    ])
    const { volume, moment } = contentOf(body)
    expect(volume).toBeCloseTo((6 * 9 * 12) / 6, 9)
    for (const [k, middle] of [1.5, 2.25, 3].entries()) expect(moment[k]! / volume).toBeCloseTo(middle, 9)
  })

  it('of a cube with a corner cut off: the cube less the corner', () => {
    const { volume, moment } = contentOf(polyhedronInside([...cube, side('cut', [1, 1, 1], 25 / Math.sqrt(3))]))
    const corner = 5 ** 3 / 6
    expect(volume).toBeCloseTo(1000 - corner, 9)
    for (const k of [0, 1, 2]) expect(moment[k]).toBeCloseTo(1000 * 5 - corner * 8.75, 8)
  })

  it('is not changed by a side that only touches along an edge, which stays one edge', () => {
    const touched = polyhedronInside([...cube, side('touching', [1, 0, 1], 20 / Math.SQRT2)])
    expect(touched.edges.length).toBe(12)
    expect(contentOf(touched).volume).toBeCloseTo(1000, 9)
  })
})
