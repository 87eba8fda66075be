import { plane } from '../geometry/surface.ts'
import { add, cross, distance, dot, length, scale, squareTo, subtract, type Vec3 } from '../geometry/vector.ts'
import type { Facet } from './facets.ts'
import { heightAbove, type Polygon, sideOf, splitPolygon } from './polygon.ts'

export interface Box {
  readonly min: Vec3
  readonly max: Vec3
}

/** A cell with its round faces made of flats: a convex polyhedron, possibly empty. */
export interface Polyhedron {
  readonly faces: readonly Polygon[]
  readonly facets: readonly Facet[]
  readonly box: Box
}

/**
 * The polyhedron inside all facets and inside `bounds`, within which everything of interest must lie; corners within
 * `touch` mm of a facet are on it.
 */
export function polyhedronOf(facets: readonly Facet[], bounds: Box, touch: number): Polyhedron {
  let faces: readonly Polygon[] = boxFaces(bounds)
  for (const facet of facets) {
    faces = clip(faces, facet, touch)
    if (faces.length === 0) break
  }
  return { faces, facets, box: boxOf(faces.flatMap((f) => f.corners)) }
}

function clip(faces: readonly Polygon[], facet: Facet, touch: number): readonly Polygon[] {
  const kept: Polygon[] = []
  const rim: Vec3[] = []
  let cutsAnything = false
  for (const face of faces) {
    const side = sideOf(face.corners, facet.plane, touch)
    if (side === 'behind' || side === 'on') kept.push(face)
    else {
      cutsAnything = true
      if (side === 'across') kept.push(splitPolygon(face, facet.plane, touch).behind)
    }
  }
  if (!cutsAnything) return faces
  for (const face of kept) {
    for (const p of face.corners) {
      if (Math.abs(heightAbove(facet.plane, p)) > touch) continue
      if (!rim.some((q) => q === p || distance(p, q) < touch / 2)) rim.push(p)
    }
  }
  if (rim.length < 3) return kept
  kept.push({ corners: roundTheMiddle(rim, facet.plane.normal), facet })
  return kept
}

/** Corners of a convex flat polygon in order, anticlockwise about `normal`. */
function roundTheMiddle(points: readonly Vec3[], normal: Vec3): Vec3[] {
  const middle = scale(
    points.reduce((a, b) => add(a, b)),
    1 / points.length,
  )
  const x = squareTo(normal)
  const y = cross(normal, x)
  return points
    .map((p) => ({ p, angle: Math.atan2(dot(subtract(p, middle), y), dot(subtract(p, middle), x)) }))
    .sort((a, b) => a.angle - b.angle)
    .map(({ p }) => p)
}

function boxFaces({ min, max }: Box): Polygon[] {
  const corner = (i: number): Vec3 => [i & 1 ? max[0] : min[0], i & 2 ? max[1] : min[1], i & 4 ? max[2] : min[2]]
  const sides: [Vec3, number[]][] = [
    [
      [-1, 0, 0],
      [0, 4, 6, 2],
    ],
    [
      [1, 0, 0],
      [1, 3, 7, 5],
    ],
    [
      [0, -1, 0],
      [0, 1, 5, 4],
    ],
    [
      [0, 1, 0],
      [2, 6, 7, 3],
    ],
    [
      [0, 0, -1],
      [0, 2, 3, 1],
    ],
    [
      [0, 0, 1],
      [4, 5, 7, 6],
    ],
  ]
  return sides.map(([out, corners]) => {
    const side = plane('bounds', corner(corners[0]!), out)
    return { corners: corners.map(corner), facet: { plane: side, surface: side } }
  })
}

export function boxOf(points: readonly Vec3[]): Box {
  let [x0, y0, z0, x1, y1, z1] = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity]
  for (const [x, y, z] of points) {
    if (x < x0) x0 = x
    if (x > x1) x1 = x
    if (y < y0) y0 = y
    if (y > y1) y1 = y
    if (z < z0) z0 = z
    if (z > z1) z1 = z
  }
  return { min: [x0, y0, z0], max: [x1, y1, z1] }
}

export const boxesMeet = (a: Box, b: Box, touch: number): boolean =>
  a.min[0] <= b.max[0] + touch &&
  b.min[0] <= a.max[0] + touch &&
  a.min[1] <= b.max[1] + touch &&
  b.min[1] <= a.max[1] + touch &&
  a.min[2] <= b.max[2] + touch &&
  b.min[2] <= a.max[2] + touch

export const meanEdge = ({ min, max }: Box): number =>
  (length([max[0] - min[0], 0, 0]) + length([0, max[1] - min[1], 0]) + length([0, 0, max[2] - min[2]])) / 3
