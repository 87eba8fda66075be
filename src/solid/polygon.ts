import type { Plane } from '../geometry/surface.ts'
import { coincident } from '../geometry/tolerance.ts'
import { add, cross, dot, length, scale, subtract, type Vec3 } from '../geometry/vector.ts'
import type { Facet } from './facets.ts'

/** A convex flat polygon, corners anticlockwise seen from outside, with the facet it lies in. */
export interface Polygon {
  readonly corners: readonly Vec3[]
  readonly facet: Facet
}

export const heightAbove = (plane: Plane, p: Vec3): number => dot(plane.normal, p) - plane.offset

/** Parts of the polygon behind the plane (its inside) and in front; corners within 1e-6 mm count as on it. */
export function splitPolygon(polygon: Polygon, plane: Plane): { behind?: Polygon; front?: Polygon } {
  const heights = polygon.corners.map((p) => heightAbove(plane, p))
  if (heights.every((h) => h <= coincident)) return { behind: polygon }
  if (heights.every((h) => h >= -coincident)) return { front: polygon }
  const behind: Vec3[] = []
  const front: Vec3[] = []
  polygon.corners.forEach((p, i) => {
    const h = heights[i]!
    const j = (i + 1) % polygon.corners.length
    const q = polygon.corners[j]!
    const hq = heights[j]!
    if (h <= coincident) behind.push(p)
    if (h >= -coincident) front.push(p)
    if ((h > coincident && hq < -coincident) || (h < -coincident && hq > coincident)) {
      // Always from the corner behind, so that the neighbour across this edge finds the same point to the last bit.
      const cut = h < 0 ? between(p, q, h, hq) : between(q, p, hq, h)
      behind.push(cut)
      front.push(cut)
    }
  })
  return {
    ...(behind.length > 2 && { behind: { corners: behind, facet: polygon.facet } }),
    ...(front.length > 2 && { front: { corners: front, facet: polygon.facet } }),
  }
}

const between = (p: Vec3, q: Vec3, hp: number, hq: number): Vec3 => add(p, scale(subtract(q, p), hp / (hp - hq)))

/** Area vector: along the normal by the right-hand rule, as long as the area (mm²). */
export function areaVector(corners: readonly Vec3[]): Vec3 {
  let sum: Vec3 = [0, 0, 0]
  const origin = corners[0]!
  for (let i = 1; i + 1 < corners.length; i++) {
    sum = add(sum, cross(subtract(corners[i]!, origin), subtract(corners[i + 1]!, origin)))
  }
  return scale(sum, 0.5)
}

export const areaOf = (corners: readonly Vec3[]): number => length(areaVector(corners))
