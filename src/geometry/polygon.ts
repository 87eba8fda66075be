/** A point of a plane, mm. */
export type Point = readonly [number, number]

/** Corners of a convex polygon, anticlockwise where x runs right and y up; the last is joined to the first. */
export type Polygon = readonly Point[]

export type Segment = readonly [Point, Point]

/** All points with normal·p ≤ offset; any length of normal but 0. */
export interface HalfPlane {
  readonly normal: Point
  readonly offset: number
}

/** What of a convex polygon lies in the half plane: a convex polygon, without corners where nothing does. */
export function clipped(polygon: Polygon, { normal, offset }: HalfPlane): Polygon {
  const beyond = polygon.map(([x, y]) => normal[0] * x + normal[1] * y - offset)
  return polygon.flatMap((p, i): Point[] => {
    const j = (i + 1) % polygon.length
    const [here, there] = [beyond[i]!, beyond[j]!]
    const kept = here <= 0 ? [p] : []
    if (here <= 0 === there <= 0) return kept
    const q = polygon[j]!
    const t = here / (here - there)
    return [...kept, [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]]
  })
}

/** What two convex polygons share; without corners where they share nothing. */
export function overlap(one: Polygon, other: Polygon): Polygon {
  return other.reduce<Polygon>((rest, p, i) => {
    const q = other[(i + 1) % other.length]!
    const normal: Point = [q[1] - p[1], p[0] - q[0]]
    return clipped(rest, { normal, offset: normal[0] * p[0] + normal[1] * p[1] })
  }, one)
}

/** A rectangle by two opposite corners. */
export const rectangle = ([x0, y0]: Point, [x1, y1]: Point): Polygon => {
  const [left, right] = [Math.min(x0, x1), Math.max(x0, x1)]
  const [low, high] = [Math.min(y0, y1), Math.max(y0, y1)]
  return [
    [left, low],
    [right, low],
    [right, high],
    [left, high],
  ]
}

/** The smallest convex polygon round some points; collinear points are left out. */
export function hull(points: readonly Point[]): Polygon {
  const sorted = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (from: readonly Point[]): Point[] => {
    const chain: Point[] = []
    for (const p of from) {
      while (chain.length > 1 && turn(chain.at(-2)!, chain.at(-1)!, p) <= 1e-12) chain.pop()
      chain.push(p)
    }
    return chain.slice(0, -1)
  }
  return [...half(sorted), ...half(sorted.toReversed())]
}

/** Twice the area of the triangle, positive where it goes round anticlockwise. */
const turn = (a: Point, b: Point, c: Point): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

/** Depth of a point below the nearest side of a convex polygon, positive inside; −∞ for one without area. */
export function depthIn(polygon: Polygon, [x, y]: Point): number {
  if (polygon.length < 3) return -Infinity
  let depth = Infinity
  polygon.forEach((p, i) => {
    const q = polygon[(i + 1) % polygon.length]!
    const run = Math.hypot(q[0] - p[0], q[1] - p[1])
    if (run < 1e-12) return
    depth = Math.min(depth, ((q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0])) / run)
  })
  return depth
}
