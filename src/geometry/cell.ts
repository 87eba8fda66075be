import type { Frame } from './frame.ts'
import { type Interval, intersectIntervals, intervalsOf, type Ray } from './interval.ts'
import { cylinder, depthOf, plane, type Surface, surfaceFrom } from './surface.ts'
import { along, negate, type Vec3 } from './vector.ts'

/** A convex body: all points inside every one of its surfaces. */
export interface Cell {
  readonly surfaces: readonly Surface[]
}

export const cellOf = (...surfaces: Surface[]): Cell => ({ surfaces })

/** Depth of `p` below the nearest surface, mm; positive inside. */
export function cellDepth(cell: Cell, p: Vec3): number {
  let depth = Infinity
  for (const s of cell.surfaces) depth = Math.min(depth, depthOf(s, p))
  return depth
}

/** Where a ray is inside the cell. */
export function cellIntervals(cell: Cell, ray: Ray): Interval[] {
  let inside: Interval[] = [{ start: -Infinity, end: Infinity, startsAt: undefined, endsAt: undefined }]
  for (const s of cell.surfaces) {
    if (inside.length === 0) return inside
    inside = intersectIntervals(inside, intervalsOf(s, ray))
  }
  return inside
}

/** The same cell, given in `frame`, expressed in the parent frame. */
export const cellFrom = (frame: Frame, cell: Cell): Cell => ({
  surfaces: cell.surfaces.map((s) => surfaceFrom(frame, s)),
})

/** Sides of a box, in the order −x, +x, −y, +y, −z, +z; `names` name them for drawings and reports. */
export function box(names: readonly [string, string, string, string, string, string], min: Vec3, max: Vec3): Cell {
  return cellOf(
    plane(names[0], min, [-1, 0, 0]),
    plane(names[1], max, [1, 0, 0]),
    plane(names[2], min, [0, -1, 0]),
    plane(names[3], max, [0, 1, 0]),
    plane(names[4], min, [0, 0, -1]),
    plane(names[5], max, [0, 0, 1]),
  )
}

/** Straight round body from `start`, `length` mm along the unit vector `axis`. */
export function rod(
  names: { wall: string; start: string; end: string },
  start: Vec3,
  axis: Vec3,
  length: number,
  radius: number,
): Cell {
  return cellOf(
    cylinder(names.wall, start, axis, radius),
    plane(names.start, start, negate(axis)),
    plane(names.end, along(start, axis, length), axis),
  )
}
