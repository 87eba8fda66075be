import type { Frame } from '../geometry/frame.ts'
import { dot, type Vec3 } from '../geometry/vector.ts'
import { fullTurn } from './curve.ts'

/** A point or a direction of the drawing plane, mm. */
export type Vec2 = readonly [number, number]

/** What a drawing is made of; angles and parameters in rad, anticlockwise, 0 ≤ start < 2π, start < end ≤ start + 2π. */
export type Entity = LineEntity | CircleEntity | ArcEntity | EllipseEntity

export interface LineEntity {
  readonly kind: 'line'
  readonly from: Vec2
  readonly to: Vec2
}

export interface CircleEntity {
  readonly kind: 'circle'
  readonly centre: Vec2
  readonly radius: number
}

export interface ArcEntity {
  readonly kind: 'arc'
  readonly centre: Vec2
  readonly radius: number
  readonly start: number
  readonly end: number
}

/** centre + major·cos t + (major turned by +90°)·ratio·sin t; the parameter t is not the angle. */
export interface EllipseEntity {
  readonly kind: 'ellipse'
  readonly centre: Vec2
  /** Semi-major axis. */
  readonly major: Vec2
  /** Semi-minor over semi-major, above 0 and below 1. */
  readonly ratio: number
  readonly start: number
  readonly end: number
}

/**
 * How a view looks at the model: x to the right, y up, z towards the eye. The origin is where the drawing plane's is.
 */
export type ViewFrame = Frame

export const flattened = (view: ViewFrame, p: Vec3): Vec2 => {
  const v: Vec3 = [p[0] - view.origin[0], p[1] - view.origin[1], p[2] - view.origin[2]]
  return [dot(v, view.x), dot(v, view.y)]
}

export const turned = (v: Vec2): Vec2 => [-v[1], v[0]]
export const dot2 = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1]
export const cross2 = (a: Vec2, b: Vec2): number => a[0] * b[1] - a[1] * b[0]
export const apart2 = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1])

/** The parameter range of an entity: a line runs from 0 to its length, the rest by angle. */
export function rangeOf(e: Entity): [number, number] {
  if (e.kind === 'line') return [0, apart2(e.from, e.to)]
  return e.kind === 'circle' ? [0, fullTurn] : [e.start, e.end]
}

/** The point at a parameter of that range. */
export function pointOf(e: Entity, t: number): Vec2 {
  if (e.kind === 'line') {
    const k = t / apart2(e.from, e.to)
    return [e.from[0] + k * (e.to[0] - e.from[0]), e.from[1] + k * (e.to[1] - e.from[1])]
  }
  const [k, s] = [Math.cos(t), Math.sin(t)]
  if (e.kind !== 'ellipse') return [e.centre[0] + e.radius * k, e.centre[1] + e.radius * s]
  const minor = e.ratio * s
  return [e.centre[0] + e.major[0] * k - e.major[1] * minor, e.centre[1] + e.major[1] * k + e.major[0] * minor]
}

export function endsOf(e: Entity): [Vec2, Vec2] {
  if (e.kind === 'line') return [e.from, e.to]
  const [from, to] = rangeOf(e)
  return [pointOf(e, from), pointOf(e, to)]
}

/** Length of an entity, mm; an ellipse's within 1e-9 of it or so. */
export function lengthOf(e: Entity): number {
  if (e.kind === 'line') return apart2(e.from, e.to)
  const [from, to] = rangeOf(e)
  if (e.kind !== 'ellipse') return e.radius * (to - from)
  const size = Math.hypot(...e.major)
  const speed = (t: number) => size * Math.hypot(Math.sin(t), e.ratio * Math.cos(t))
  // Simpson's rule.
  const n = 128
  const h = (to - from) / n
  let sum = speed(from) + speed(to)
  for (let i = 1; i < n; i++) sum += (i % 2 === 1 ? 4 : 2) * speed(from + i * h)
  return (sum * h) / 3
}

/** An arc or, when it goes all the way round, a circle. */
export function arcOf(centre: Vec2, radius: number, start: number, end: number): ArcEntity | CircleEntity {
  if (end - start > fullTurn - 1e-9) return { kind: 'circle', centre, radius }
  const back = Math.floor(start / fullTurn) * fullTurn
  return { kind: 'arc', centre, radius, start: start - back, end: end - back }
}

export function ellipseOf(centre: Vec2, major: Vec2, ratio: number, start: number, end: number): EllipseEntity {
  if (end - start > fullTurn - 1e-9) return { kind: 'ellipse', centre, major, ratio, start: 0, end: fullTurn }
  const back = Math.floor(start / fullTurn) * fullTurn
  return { kind: 'ellipse', centre, major, ratio, start: start - back, end: end - back }
}
