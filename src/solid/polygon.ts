import type { Plane } from '../geometry/surface.ts'
import { coincident } from '../geometry/tolerance.ts'
import { dot, type Vec3 } from '../geometry/vector.ts'
import type { Facet } from './facets.ts'

/** A convex flat polygon, corners anticlockwise seen from outside, with the facet it lies in. */
export interface Polygon {
  readonly corners: readonly Vec3[]
  readonly facet: Facet
}

export const heightAbove = (plane: Plane, p: Vec3): number => dot(plane.normal, p) - plane.offset

/** Parts of the polygon behind the plane (its inside) and in front; corners within 1e-6 mm count as on it. */
export function splitPolygon(polygon: Polygon, plane: Plane): { behind?: Polygon; front?: Polygon } {
  const { corners, facet } = polygon
  const [nx, ny, nz] = plane.normal
  const n = corners.length
  const heights: number[] = []
  let above = false
  let below = false
  for (const p of corners) {
    const h = nx * p[0] + ny * p[1] + nz * p[2] - plane.offset
    heights.push(h)
    if (h > coincident) above = true
    else if (h < -coincident) below = true
  }
  if (!above) return { behind: polygon }
  if (!below) return { front: polygon }
  const behind: Vec3[] = []
  const front: Vec3[] = []
  for (let i = 0; i < n; i++) {
    const j = i + 1 < n ? i + 1 : 0
    const p = corners[i]!
    const h = heights[i]!
    const hq = heights[j]!
    if (h <= coincident) behind.push(p)
    if (h >= -coincident) front.push(p)
    if ((h > coincident && hq < -coincident) || (h < -coincident && hq > coincident)) {
      // Always from the corner behind, so that the neighbour across this edge finds the same point to the last bit.
      const cut = h < 0 ? between(p, corners[j]!, h, hq) : between(corners[j]!, p, hq, h)
      behind.push(cut)
      front.push(cut)
    }
  }
  return {
    ...(behind.length > 2 && { behind: { corners: behind, facet } }),
    ...(front.length > 2 && { front: { corners: front, facet } }),
  }
}

function between(p: Vec3, q: Vec3, hp: number, hq: number): Vec3 {
  const t = hp / (hp - hq)
  return [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t, p[2] + (q[2] - p[2]) * t]
}
