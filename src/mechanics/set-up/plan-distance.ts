/** A place seen from above, mm. */
export type PlanPoint = readonly [x: number, y: number]

/** Seen from above, sides along x and y, mm; `from` no greater than `to`. */
export interface PlanRectangle {
  readonly x: readonly [from: number, to: number]
  readonly y: readonly [from: number, to: number]
}

/** Distance between a straight way (its ends may be one point) and a rectangle, mm; 0 where they meet. Exact. */
export function wayToRectangle(start: PlanPoint, stop: PlanPoint, rectangle: PlanRectangle): number {
  if (crosses(start, stop, rectangle)) return 0
  const [[x0, x1], [y0, y1]] = [rectangle.x, rectangle.y]
  const corners: PlanPoint[] = [
    [x0, y0],
    [x0, y1],
    [x1, y0],
    [x1, y1],
  ]
  // Of two convex things that do not meet, the nearest points are a corner of one of them and any point of the other.
  return Math.min(
    toRectangle(start, rectangle),
    toRectangle(stop, rectangle),
    ...corners.map((corner) => toWay(corner, start, stop)),
  )
}

function toRectangle([x, y]: PlanPoint, { x: [x0, x1], y: [y0, y1] }: PlanRectangle): number {
  return Math.hypot(Math.max(x0 - x, 0, x - x1), Math.max(y0 - y, 0, y - y1))
}

function toWay([x, y]: PlanPoint, [sx, sy]: PlanPoint, [ex, ey]: PlanPoint): number {
  const [dx, dy] = [ex - sx, ey - sy]
  const length2 = dx * dx + dy * dy
  const t = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - sx) * dx + (y - sy) * dy) / length2))
  return Math.hypot(x - sx - t * dx, y - sy - t * dy)
}

/** Clips the way to the strips of both sides (Liang and Barsky). */
function crosses(start: PlanPoint, stop: PlanPoint, rectangle: PlanRectangle): boolean {
  let [from, to] = [0, 1]
  for (const [axis, [low, high]] of [
    [0, rectangle.x],
    [1, rectangle.y],
  ] as const) {
    const at = start[axis]
    const way = stop[axis] - at
    if (way === 0) {
      if (at < low || at > high) return false
      continue
    }
    const [a, b] = [(low - at) / way, (high - at) / way]
    from = Math.max(from, Math.min(a, b))
    to = Math.min(to, Math.max(a, b))
  }
  return from <= to
}
