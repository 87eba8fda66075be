import type { Cone, Cylinder, Surface } from '../geometry/surface.ts'
import { outwardAt } from '../geometry/surface.ts'
import { along, cross, length, scale, subtract, unit, type Vec3 } from '../geometry/vector.ts'
import { alongLine, type Quadric, roundEllipse, valueAt } from './quadric.ts'
import { rootsBetween, rootsOf } from './roots.ts'
import { rootsRound } from './round-roots.ts'

/** A curve in space with its parameter: where two surfaces meet, or the outline of a round face. */
export type Curve = Line | Ellipse | Meeting

/** point + t·direction, t in mm. */
export interface Line {
  readonly kind: 'line'
  readonly point: Vec3
  /** Unit vector. */
  readonly direction: Vec3
}

/** centre + u·cos t + v·sin t, t in rad; u ⟂ v, |u| ≥ |v|; a circle where they are as long as each other. */
export interface Ellipse {
  readonly kind: 'ellipse'
  readonly centre: Vec3
  readonly u: Vec3
  readonly v: Vec3
}

/**
 * Where a generator line of one round surface meets another surface. The generator stands at the angle θ about the
 * axis, from x towards y, in rad. `round`: θ = t, always the same one of the two meetings, closed. `stretch`: the
 * same, not closed. `loop`: θ = middle − half·cos t, out on one meeting and back on the other, closed; smooth where
 * they run into each other.
 */
export interface Meeting {
  readonly kind: 'meeting'
  readonly on: Cylinder | Cone
  readonly x: Vec3
  readonly y: Vec3
  readonly other: Surface
  readonly quadric: Quadric
  readonly path: 'round' | 'stretch' | 'loop'
  /** Which of the two meetings, the farther one along the axis (1) or the nearer one (−1); not for a loop. */
  readonly branch: 1 | -1
  readonly middle: number
  readonly half: number
}

export const fullTurn = 2 * Math.PI

/** Whether the curve runs back into itself, with a period of 2π. */
export const isClosed = (c: Curve): boolean => c.kind === 'ellipse' || (c.kind === 'meeting' && c.path !== 'stretch')

export function pointAt(c: Curve, t: number): Vec3 {
  if (c.kind === 'line') return along(c.point, c.direction, t)
  if (c.kind === 'ellipse') {
    const [k, s] = [Math.cos(t), Math.sin(t)]
    return [
      c.centre[0] + k * c.u[0] + s * c.v[0],
      c.centre[1] + k * c.u[1] + s * c.v[1],
      c.centre[2] + k * c.u[2] + s * c.v[2],
    ]
  }
  const theta = c.path === 'loop' ? c.middle - c.half * Math.cos(t) : t
  const branch = c.path === 'loop' ? (Math.sin(t) >= 0 ? 1 : -1) : c.branch
  const { origin, direction } = generator(c.on, c.x, c.y, theta)
  return along(origin, direction, rootAlong(c.quadric, origin, direction, branch))
}

/** Unit tangent, of either sense. */
export function tangentAt(c: Curve, t: number): Vec3 {
  if (c.kind === 'line') return c.direction
  if (c.kind === 'ellipse') {
    const [k, s] = [Math.cos(t), Math.sin(t)]
    return unit([k * c.v[0] - s * c.u[0], k * c.v[1] - s * c.u[1], k * c.v[2] - s * c.u[2]])
  }
  const p = pointAt(c, t)
  const n = cross(outwardAt(c.on, p), outwardAt(c.other, p))
  if (length(n) > 1e-6) return unit(n)
  const chord = subtract(pointAt(c, t + 1e-5), pointAt(c, t - 1e-5))
  return length(chord) > 0 ? unit(chord) : c.on.axis
}

/** A generator line of a round surface; of a cone it starts at the apex. */
export function generator(on: Cylinder | Cone, x: Vec3, y: Vec3, theta: number): { origin: Vec3; direction: Vec3 } {
  const [k, s] = [Math.cos(theta), Math.sin(theta)]
  const out: Vec3 = [k * x[0] + s * y[0], k * x[1] + s * y[1], k * x[2] + s * y[2]]
  return on.kind === 'cylinder'
    ? { origin: along(on.point, out, on.radius), direction: on.axis }
    : { origin: on.apex, direction: scale(along(on.axis, out, on.slope), 1 / Math.sqrt(1 + on.slope * on.slope)) }
}

/** The farther (branch 1) or nearer root of the quadric along a line, without cancellation; finite whatever happens. */
function rootAlong(q: Quadric, p: Vec3, d: Vec3, branch: 1 | -1): number {
  const [a, b, c] = alongLine(q, p, d)
  if (Math.abs(a) < 1e-13) return clamp(-c / (2 * b))
  const root = Math.sqrt(Math.max(0, b * b - a * c))
  // (−b ± root)/a; the sign with which ± is farther along depends on that of a.
  const plus = branch > 0 === a > 0
  const sum = b > 0 ? -(b + root) : root - b
  const direct = b > 0 ? !plus : plus
  return clamp(direct ? sum / a : sum === 0 ? 0 : c / sum)
}

const clamp = (t: number): number => (Number.isNaN(t) ? 1e6 : Math.max(-1e6, Math.min(1e6, t)))

/** Samples of a curve, taken once for many questions. */
export interface Samples {
  readonly ts: readonly number[]
  readonly points: readonly Vec3[]
}

export function samplesOf(c: Curve, from: number, to: number, steps = 48): Samples {
  const ts = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps)
  return { ts, points: ts.map((t) => pointAt(c, t)) }
}

/**
 * Parameters between `from` and `to` at which a curve crosses or touches (within 1e-7 mm) a quadric. A curve that lies
 * in it has none. `samples`: of that stretch, for a curve of no other kind.
 */
export function crossings(c: Curve, q: Quadric, from: number, to: number, samples?: Samples): number[] {
  if (c.kind === 'line') return onLine(q, c).filter((t) => t >= from && t <= to)
  if (c.kind === 'ellipse') {
    return onEllipse(q, c)
      .map((t) => from + turnFrom(from, t))
      .filter((t) => t <= to)
  }
  const { ts, points } = samples ?? samplesOf(c, from, to)
  const values = points.map((p) => valueAt(q, p))
  if (values.every((v) => Math.abs(v) < touches)) return []
  return rootsBetween((t) => valueAt(q, pointAt(c, t)), ts, values, touches)
}

const touches = 1e-7

/** How far `to` lies beyond `from` going forwards, from 0 up to a full turn. */
export function turnFrom(from: number, to: number): number {
  const turn = (to - from) % fullTurn
  return turn < 0 ? turn + fullTurn : turn
}

function onLine(q: Quadric, { point, direction }: Line): number[] {
  const [a, b, c] = alongLine(q, point, direction)
  if (Math.abs(a) < 1e-13) return Math.abs(b) < 1e-12 ? [] : [-c / (2 * b)]
  const lowest = c - (b * b) / a
  if (Math.abs(lowest) < touches) return [-b / a]
  const disc = b * b - a * c
  if (disc <= 0) return []
  const sum = -(b + Math.sign(b || 1) * Math.sqrt(disc))
  return [sum / a, c / sum]
}

function onEllipse(q: Quadric, { centre, u, v }: Ellipse): number[] {
  const [c0, c1, s1, c2, s2] = roundEllipse(q, centre, u, v)
  const size = Math.hypot(c1, s1)
  const second = Math.hypot(c2, s2)
  if (second < 1e-12 * (1 + size)) {
    if (size < 1e-10) return []
    const k = -c0 / size
    const middle = Math.atan2(s1, c1)
    if (Math.abs(k) >= 1) return Math.abs(c0) - size < touches ? [k > 0 ? middle : middle + Math.PI] : []
    const half = Math.acos(k)
    return [middle - half, middle + half]
  }
  if (Math.abs(c0) > size + second + touches) return []
  if (Math.abs(c0) + size + second < touches) return []
  return rootsRound([c0, c1, s1, c2, s2], touches)
}

/** Length of a stretch of a curve, mm; within 1e-9 of it for lines and circles, 1e-6 for the rest. */
export function arcLength(c: Curve, from: number, to: number): number {
  if (c.kind === 'line') return to - from
  const size = c.kind === 'ellipse' ? length(c.u) : 0
  if (c.kind === 'ellipse' && Math.abs(size - length(c.v)) < 1e-12 * size) return size * (to - from)
  // Chords of n and 2n steps, extrapolated: their error falls with the square of the step.
  const chords = (n: number) => {
    const { points } = samplesOf(c, from, to, n)
    return points.slice(1).reduce((sum, p, i) => sum + length(subtract(p, points[i]!)), 0)
  }
  return (4 * chords(512) - chords(256)) / 3
}

/** Where the discriminant of the meetings along a generator is 0, by θ. */
export function branchEnds(
  on: Cylinder | Cone,
  x: Vec3,
  y: Vec3,
  q: Quadric,
): { roots: number[]; value: (theta: number) => number } {
  const value = (theta: number) => {
    const { origin, direction } = generator(on, x, y, theta)
    const [a, b, c] = alongLine(q, origin, direction)
    return b * b - a * c
  }
  return { roots: rootsOf(value, -0.05, fullTurn - 0.05, 96, 1e-13), value }
}
