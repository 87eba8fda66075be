import type { Plane } from '../geometry/surface.ts'
import { dot, type Vec3 } from '../geometry/vector.ts'
import type { Facet } from './facets.ts'

/** A convex flat polygon, corners anticlockwise seen from outside, with the facet it lies in. */
export interface Polygon {
  readonly corners: readonly Vec3[]
  readonly facet: Facet
}

export const heightAbove = (plane: Plane, p: Vec3): number => dot(plane.normal, p) - plane.offset

export type Side = 'on' | 'behind' | 'front' | 'across'

/** On which side of the plane the corners lie; those within `touch` mm of it count as on it. */
export function sideOf(corners: readonly Vec3[], plane: Plane, touch: number): Side {
  const [nx, ny, nz] = plane.normal
  const { offset } = plane
  let above = false
  let below = false
  for (const p of corners) {
    const h = nx * p[0] + ny * p[1] + nz * p[2] - offset
    if (h > touch) above = true
    else if (h < -touch) below = true
  }
  return above ? (below ? 'across' : 'front') : below ? 'behind' : 'on'
}

/** Parts of a polygon that lies across the plane: behind it (its inside) and in front. */
export function splitPolygon(
  { corners, facet }: Polygon,
  plane: Plane,
  touch: number,
): { behind: Polygon; front: Polygon } {
  const [nx, ny, nz] = plane.normal
  const behind: Vec3[] = []
  const front: Vec3[] = []
  let p = corners[corners.length - 1]!
  let h = nx * p[0] + ny * p[1] + nz * p[2] - plane.offset
  for (const q of corners) {
    const hq = nx * q[0] + ny * q[1] + nz * q[2] - plane.offset
    if ((h > touch && hq < -touch) || (h < -touch && hq > touch)) {
      // Always from the corner behind, so that the neighbour across this edge finds the same point to the last bit.
      const cut = h < 0 ? between(p, q, h, hq) : between(q, p, hq, h)
      behind.push(cut)
      front.push(cut)
    }
    if (hq <= touch) behind.push(q)
    if (hq >= -touch) front.push(q)
    p = q
    h = hq
  }
  return { behind: { corners: behind, facet }, front: { corners: front, facet } }
}

function between(p: Vec3, q: Vec3, hp: number, hq: number): Vec3 {
  const t = hp / (hp - hq)
  return [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t, p[2] + (q[2] - p[2]) * t]
}
