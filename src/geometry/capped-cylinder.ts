import type { Cone, Cylinder, Surface } from './surface.ts'
import { along, dot, subtract, type Vec3 } from './vector.ts'

/** A round body with flat ends square to its axis that holds a whole region. mm */
export interface CappedCylinder {
  readonly from: Vec3
  readonly to: Vec3
  readonly axis: Vec3
  readonly radius: number
}

/**
 * The thinnest capped cylinder that the surfaces of a region make: of a round wall, or round the wide end of a cone. Ends
 * are planes square to it and the apex of a cone about it. Undefined where the surfaces do not close one.
 */
export function cappedCylinder(surfaces: readonly Surface[]): CappedCylinder | undefined {
  let thinnest: CappedCylinder | undefined
  for (const wall of surfaces) {
    if (wall.kind === 'plane') continue
    const body = cappedBy(wall, surfaces)
    if (body && !(thinnest && thinnest.radius <= body.radius)) thinnest = body
  }
  return thinnest
}

function cappedBy(wall: Cylinder | Cone, surfaces: readonly Surface[]): CappedCylinder | undefined {
  const { axis } = wall
  const start = wall.kind === 'cylinder' ? wall.point : wall.apex
  let low = -Infinity
  let high = Infinity
  for (const s of surfaces) {
    if (s.kind === 'cylinder') continue
    const turn = s.kind === 'plane' ? dot(s.normal, axis) : -dot(s.axis, axis)
    if (Math.abs(turn) < 1 - 1e-12) continue
    const at = s.kind === 'plane' ? turn * (s.offset - dot(s.normal, start)) : dot(subtract(s.apex, start), axis)
    if (turn > 0) high = Math.min(high, at)
    else low = Math.max(low, at)
  }
  if (!(low > -Infinity && high < Infinity)) return undefined
  const radius = wall.kind === 'cylinder' ? wall.radius : wall.slope * Math.max(high, 0)
  return { from: along(start, axis, low), to: along(start, axis, high), axis, radius }
}

/** Farthest that the body reaches along a unit direction, mm. */
export function reachOf({ from, to, axis, radius }: CappedCylinder, direction: Vec3): number {
  const turn = dot(direction, axis)
  return Math.max(dot(from, direction), dot(to, direction)) + radius * Math.sqrt(Math.max(0, 1 - turn * turn))
}

/** A distance that two bodies are at least apart, mm; may be negative, then it says nothing. */
export function leastApart(a: CappedCylinder, b: CappedCylinder): number {
  return segmentDistance(a.from, a.to, b.from, b.to) - a.radius - b.radius
}

/** Distance of two straight stretches, mm. */
function segmentDistance(p: Vec3, p1: Vec3, q: Vec3, q1: Vec3): number {
  const u = subtract(p1, p)
  const v = subtract(q1, q)
  const w = subtract(p, q)
  const [a, b, c, d, e] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)]
  const unit = (x: number) => Math.min(1, Math.max(0, x))
  const det = a * c - b * b
  let s = det > 1e-12 * a * c ? unit((b * e - c * d) / det) : 0
  const t = unit((b * s + e) / c)
  s = unit((b * t - d) / a)
  const gap = subtract(along(p, u, s), along(q, v, t))
  return Math.sqrt(dot(gap, gap))
}
