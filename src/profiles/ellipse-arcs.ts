import { type ArcEntity, arcOf, type EllipseEntity, pointOf, type Vec2 } from '../edges/entity.ts'
import { fitted } from '../edges/tolerance.ts'

/**
 * An ellipse, or a piece of one, as arcs that run smoothly into one another and lie within 0.005 mm of it; anticlockwise
 * as the ellipse runs. For CAM, which takes an ELLIPSE for no closed outline or for hundreds of short lines.
 */
export function ellipseArcs(ellipse: EllipseEntity): ArcEntity[] {
  const quarter = Math.PI / 2
  const stops = [ellipse.start]
  for (let k = Math.ceil(ellipse.start / quarter + 1e-9); k * quarter < ellipse.end - 1e-9; k++) stops.push(k * quarter)
  stops.push(ellipse.end)
  return stops.slice(1).flatMap((end, i) => {
    for (let pieces = 1; ; pieces++) {
      const arcs = pairsAlong(ellipse, stops[i]!, end, pieces)
      if (arcs.every((arc) => farthestOff(ellipse, arc) < fitted)) return arcs
    }
  })
}

/** Pairs of arcs over equal steps of the parameter. */
function pairsAlong(ellipse: EllipseEntity, from: number, to: number, pieces: number): ArcEntity[] {
  const at = (i: number) => from + ((to - from) * i) / pieces
  return Array.from({ length: pieces }, (_, i) => pairBetween(ellipse, at(i), at(i + 1))).flat()
}

/** Two arcs tangent to each other and, at their outer ends, to the ellipse; their tangent lengths are equal. */
function pairBetween(ellipse: EllipseEntity, from: number, to: number): ArcEntity[] {
  const [a, b] = [pointOf(ellipse, from), pointOf(ellipse, to)]
  const [s, t] = [tangentAt(ellipse, from), tangentAt(ellipse, to)]
  const v: Vec2 = [b[0] - a[0], b[1] - a[1]]
  const along = v[0] * (s[0] + t[0]) + v[1] * (s[1] + t[1])
  const turn = 2 * (1 - (s[0] * t[0] + s[1] * t[1]))
  const size = (Math.sqrt(along * along + turn * (v[0] * v[0] + v[1] * v[1])) - along) / turn
  const middle: Vec2 = [(a[0] + b[0] + size * (s[0] - t[0])) / 2, (a[1] + b[1] + size * (s[1] - t[1])) / 2]
  return [arcFrom(a, s, a, middle), arcFrom(b, t, middle, b)]
}

/** The arc from one point to another on the circle that is tangent to `direction` at `touch`, one of the two. */
function arcFrom(touch: Vec2, direction: Vec2, from: Vec2, to: Vec2): ArcEntity {
  const other = touch === from ? to : from
  const w: Vec2 = [other[0] - touch[0], other[1] - touch[1]]
  const radius = (w[0] * w[0] + w[1] * w[1]) / (2 * (w[1] * direction[0] - w[0] * direction[1]))
  const centre: Vec2 = [touch[0] - direction[1] * radius, touch[1] + direction[0] * radius]
  const angle = (p: Vec2) => Math.atan2(p[1] - centre[1], p[0] - centre[0])
  const [start, end] = [angle(from), angle(to)]
  return arcOf(centre, radius, start, end > start ? end : end + 2 * Math.PI) as ArcEntity
}

function tangentAt({ major, ratio }: EllipseEntity, t: number): Vec2 {
  const [k, s] = [ratio * Math.cos(t), Math.sin(t)]
  const v: Vec2 = [-major[0] * s - major[1] * k, -major[1] * s + major[0] * k]
  const size = Math.hypot(...v)
  return [v[0] / size, v[1] / size]
}

/** How far an arc near the ellipse strays from it, mm, to first order. */
function farthestOff({ centre, major, ratio }: EllipseEntity, arc: ArcEntity): number {
  const long = Math.hypot(...major)
  const [c, s] = [major[0] / long, major[1] / long]
  let most = 0
  for (let i = 0; i <= 16; i++) {
    const p = pointOf(arc, arc.start + ((arc.end - arc.start) * i) / 16)
    const [x, y] = [p[0] - centre[0], p[1] - centre[1]]
    const [u, v] = [(x * c + y * s) / long, (y * c - x * s) / (long * ratio)]
    const steep = 2 * Math.hypot(u / long, v / (long * ratio))
    most = Math.max(most, Math.abs(u * u + v * v - 1) / steep)
  }
  return most
}
