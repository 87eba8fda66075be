import type { Point } from '../../geometry/polygon.ts'
import type { Drawing } from './drawing.ts'

/** A part of the page. */
export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** How an angle is drawn: arc, and how far its two lines reach, none of them out of the box. */
export interface MarkSize {
  readonly radius: number
  readonly reach: number
  readonly within?: Box
}

/**
 * An angle at a point of the page: the line it is measured from, the line it is measured to, and the arc between them.
 * `from` and `to` are directions on the page (y down). Gives the middle of the arc, for a leader.
 */
export function angleMark(drawing: Drawing, corner: Point, from: Point, to: Point, size: MarkSize): Point {
  const [a, b] = [from, to].map(([x, y]) => Math.atan2(-y, x)) as [number, number]
  const run = Math.atan2(Math.sin(b - a), Math.cos(b - a))
  const at = (angle: number, r: number): Point => [corner[0] + r * Math.cos(angle), corner[1] - r * Math.sin(angle)]
  const room = (angle: number) => Math.min(size.reach, roomFrom(corner, angle, size.within))
  const [reachA, reachB] = [room(a), room(b)]
  const radius = Math.min(size.radius, 0.95 * reachA, 0.95 * reachB)
  drawing.line('axis', corner, at(a, reachA))
  drawing.line('thin', corner, at(b, reachB))
  // Arrow heads take 3 units each: on a short arc they would only blot it.
  if (Math.abs(run) * radius > 0.05) {
    drawing.arc('dimension', corner, radius, a, a + run, Math.abs(run) * radius > 9 ? 'arrows' : undefined)
  }
  return at(a + run / 2, radius)
}

/** How far a line from `corner` runs before it leaves the box. */
function roomFrom(corner: Point, angle: number, box: Box | undefined): number {
  if (box === undefined) return Infinity
  const [x, y] = [Math.cos(angle), -Math.sin(angle)]
  const along = (way: number, low: number, high: number) =>
    Math.abs(way) < 1e-9 ? Infinity : (way > 0 ? high : low) / way
  return Math.min(
    along(x, box.left - corner[0], box.right - corner[0]),
    along(y, box.top - corner[1], box.bottom - corner[1]),
  )
}
