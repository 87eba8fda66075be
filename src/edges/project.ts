import { cross, dot, length, type Vec3 } from '../geometry/vector.ts'
import { type Curve, fullTurn, pointAt } from './curve.ts'
import {
  apart2,
  arcOf,
  cross2,
  dot2,
  type Entity,
  ellipseOf,
  flattened,
  turned,
  type Vec2,
  type ViewFrame,
} from './entity.ts'
import { lowestBetween } from './roots.ts'
import type { Face } from './skin.ts'
import { fitted, parallel } from './tolerance.ts'

/** Shorter than this, mm, is not drawn. */
const nothing = 1e-6

/**
 * A stretch of a curve as it is seen along the view's z: LINE, CIRCLE, ARC or ELLIPSE exactly; any other curve as arcs
 * (and lines where it is straight) within 0.005 mm. `faces`: a round one seen along its axis makes an exact arc.
 */
export function projected(view: ViewFrame, curve: Curve, from: number, to: number, faces: readonly Face[]): Entity[] {
  if (curve.kind === 'line') return segment(flattened(view, pointAt(curve, from)), flattened(view, pointAt(curve, to)))
  if (curve.kind === 'ellipse') {
    const flat = (v: Vec3): Vec2 => [dot(v, view.x), dot(v, view.y)]
    return flatEllipse(flattened(view, curve.centre), flat(curve.u), flat(curve.v), from, to)
  }
  const at = (t: number) => flattened(view, pointAt(curve, t))
  for (const s of [curve.on, curve.other, ...faces.map((f) => f.surface)]) {
    if (s.kind === 'cylinder' && length(cross(s.axis, view.z)) < parallel) {
      return alongCircle(at, from, to, flattened(view, s.point), s.radius)
    }
  }
  return alongLine(at, from, to) ?? arcsAlong(at, from, to)
}

const segment = (from: Vec2, to: Vec2): Entity[] => (apart2(from, to) > nothing ? [{ kind: 'line', from, to }] : [])

/** centre + u cos t + v sin t from any two conjugate half diameters. */
function flatEllipse(centre: Vec2, u: Vec2, v: Vec2, from: number, to: number): Entity[] {
  const [uu, vv, uv] = [dot2(u, u), dot2(v, v), dot2(u, v)]
  const size = Math.sqrt(Math.max(uu, vv))
  if (size < nothing) return []
  // A circle seen square: u and v as long as each other and square to each other.
  const round = Math.abs(uu - vv) < 1e-10 * (uu + vv) && Math.abs(uv) < 1e-10 * (uu + vv)
  const turn = round ? 0 : 0.5 * Math.atan2(2 * uv, uu - vv)
  const at = (t: number): Vec2 => [
    centre[0] + u[0] * Math.cos(t) + v[0] * Math.sin(t),
    centre[1] + u[1] * Math.cos(t) + v[1] * Math.sin(t),
  ]
  const axis = (t: number): Vec2 => [at(t)[0] - centre[0], at(t)[1] - centre[1]]
  const major = axis(turn)
  const minor = axis(turn + Math.PI / 2)
  const long = Math.hypot(...major)
  const short = Math.abs(cross2(major, minor)) / long
  // Seen edge-on, up to rounding.
  if (short < 1e-9 * long) return straight(at, centre, major, turn, from, to)
  const left = cross2(major, minor) > 0
  const [start, end] = left ? [from - turn, to - turn] : [turn - to, turn - from]
  if (round) {
    const zero = Math.atan2(major[1], major[0])
    return [arcOf(centre, Math.sqrt((uu + vv) / 2), zero + start, zero + end)]
  }
  return [ellipseOf(centre, major, short / long, start, end)]
}

/** An ellipse seen edge-on: back and forth on a line. */
function straight(
  at: (t: number) => Vec2,
  centre: Vec2,
  major: Vec2,
  turn: number,
  from: number,
  to: number,
): Entity[] {
  let [low, high] = [from, to].map((t) => Math.cos(t - turn)).sort((a, b) => a - b) as [number, number]
  for (let k = Math.ceil((from - turn) / Math.PI); turn + k * Math.PI < to; k++) {
    if (k % 2 === 0) high = 1
    else low = -1
  }
  const on = (k: number): Vec2 => [centre[0] + k * major[0], centre[1] + k * major[1]]
  // Ends that are ends of the stretch stay where they are, to the last digit.
  return segment(
    low === -1 ? on(-1) : nearestOf(on(low), at(from), at(to)),
    high === 1 ? on(1) : nearestOf(on(high), at(from), at(to)),
  )
}

const nearestOf = (p: Vec2, a: Vec2, b: Vec2): Vec2 => (apart2(p, a) < apart2(p, b) ? a : b)

type Path = (t: number) => Vec2

/** Least and greatest value of a function over a stretch, from samples and a search beside the outermost ones. */
function extremes(f: (t: number) => number, from: number, to: number): [number, number] {
  const n = 32
  const ts = Array.from({ length: n + 1 }, (_, i) => from + ((to - from) * i) / n)
  const values = ts.map(f)
  const least = (sign: 1 | -1) => {
    const signed = values.map((v) => sign * v)
    const i = signed.indexOf(Math.min(...signed))
    if (i === 0 || i === n) return sign * signed[i]!
    return sign * Math.min(signed[i]!, lowestBetween((t) => sign * f(t), ts[i - 1]!, ts[i + 1]!)[1])
  }
  return [least(1), least(-1)]
}

function alongCircle(at: Path, from: number, to: number, centre: Vec2, radius: number): Entity[] {
  const angle = (t: number) => {
    const p = at(t)
    return Math.atan2(p[1] - centre[1], p[0] - centre[0])
  }
  // Counted on from sample to sample, so that the angle does not jump.
  const n = 64
  let last = angle(from)
  const counted = [last]
  for (let i = 1; i <= n; i++) {
    last += shortest(angle(from + ((to - from) * i) / n) - last)
    counted.push(last)
  }
  const near = (t: number) => {
    const base = counted[Math.max(0, Math.min(n, Math.round(((t - from) / (to - from)) * n)))]!
    return base + shortest(angle(t) - base)
  }
  const [start, end] = extremes(near, from, to)
  return radius * (end - start) > nothing ? [arcOf(centre, radius, start, end)] : []
}

function alongLine(at: Path, from: number, to: number): Entity[] | undefined {
  const points = Array.from({ length: 17 }, (_, i) => at(from + ((to - from) * i) / 16))
  const start = points[0]!
  const farthest = points.reduce((a, b) => (apart2(b, start) > apart2(a, start) ? b : a))
  const size = apart2(start, farthest)
  if (size < nothing) return points.every((p) => apart2(p, start) < nothing) ? [] : undefined
  const d: Vec2 = [(farthest[0] - start[0]) / size, (farthest[1] - start[1]) / size]
  const off = (p: Vec2) => Math.abs(cross2(d, [p[0] - start[0], p[1] - start[1]]))
  if (points.some((p) => off(p) > 1e-7)) return undefined
  const [low, high] = extremes((t) => dot2(d, [at(t)[0] - start[0], at(t)[1] - start[1]]), from, to)
  const on = (k: number): Vec2 => [start[0] + k * d[0], start[1] + k * d[1]]
  return segment(on(low), on(high))
}

/** Arcs through three points each, halved until every one lies on the curve within the tolerance. */
function arcsAlong(at: Path, from: number, to: number, depth = 0): Entity[] {
  const middle = (from + to) / 2
  const [a, m, b] = [at(from), at(middle), at(to)]
  const samples = Array.from({ length: 14 }, (_, i) => at(from + ((to - from) * (i + 1)) / 15))
  if (depth > 0) {
    const fit = arcThrough(a, m, b)
    if (fit && samples.every((p) => offEntity(fit, p) < fitted)) return [fit]
    if (depth > 12) return segment(a, b)
  }
  return [...arcsAlong(at, from, middle, depth + 1), ...arcsAlong(at, middle, to, depth + 1)]
}

function arcThrough(a: Vec2, m: Vec2, b: Vec2): Entity | undefined {
  const [p, q]: [Vec2, Vec2] = [
    [m[0] - a[0], m[1] - a[1]],
    [b[0] - a[0], b[1] - a[1]],
  ]
  const chord = Math.hypot(...q)
  if (chord < nothing) return undefined
  const area = 2 * cross2(p, q)
  if (Math.abs(area) < 1e-4 * chord * chord * Math.min(1, 1 / chord)) return { kind: 'line', from: a, to: b }
  const [pp, qq] = [dot2(p, p), dot2(q, q)]
  const c: Vec2 = [(q[1] * pp - p[1] * qq) / area, (p[0] * qq - q[0] * pp) / area]
  const centre: Vec2 = [a[0] + c[0], a[1] + c[1]]
  const radius = Math.hypot(...c)
  const angle = (x: Vec2) => Math.atan2(x[1] - centre[1], x[0] - centre[0])
  const [start, end] = area > 0 ? [angle(a), angle(b)] : [angle(b), angle(a)]
  return arcOf(centre, radius, start, end > start ? end : end + fullTurn)
}

/** Distance of a point from a line, circle or arc, infinite beyond its ends. */
export function offEntity(e: Entity, p: Vec2): number {
  if (e.kind === 'line') {
    const d: Vec2 = [e.to[0] - e.from[0], e.to[1] - e.from[1]]
    const v: Vec2 = [p[0] - e.from[0], p[1] - e.from[1]]
    const size = Math.hypot(...d)
    const t = dot2(v, d) / size
    return t < -nothing || t > size + nothing ? Infinity : Math.abs(dot2(v, turned(d))) / size
  }
  if (e.kind === 'ellipse') return Infinity
  const off = Math.abs(apart2(p, e.centre) - e.radius)
  if (e.kind === 'circle') return off
  const angle = Math.atan2(p[1] - e.centre[1], p[0] - e.centre[0])
  const turn = (((angle - e.start) % fullTurn) + fullTurn) % fullTurn
  const slack = 1e-5 / e.radius
  return turn <= e.end - e.start + slack || turn > fullTurn - slack ? off : Infinity
}

/** The same angle between −π and π. */
const shortest = (angle: number): number => angle - fullTurn * Math.round(angle / fullTurn)
