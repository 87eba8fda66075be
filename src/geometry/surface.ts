import { directionFrom, type Frame, pointFrom } from './frame.ts'
import { along, dot, length, squareTo, subtract, unit, type Vec3 } from './vector.ts'

/**
 * An oriented surface: the inside is where `depthOf` is positive. Every inside is convex, so a list of surfaces is a
 * convex cell. `name` says what a machinist calls it ("bore wall"); drawings and walls print it.
 */
export type Surface = Plane | Cylinder | Cone

export interface Plane {
  readonly kind: 'plane'
  readonly name: string
  /** Unit normal, pointing out of the inside. */
  readonly normal: Vec3
  /** Signed distance of the plane from the origin along the normal, mm. */
  readonly offset: number
}

export interface Cylinder {
  readonly kind: 'cylinder'
  readonly name: string
  /** Any point of the axis. */
  readonly point: Vec3
  /** Unit direction of the axis. */
  readonly axis: Vec3
  /** Radius, mm, > 0. */
  readonly radius: number
}

/** One nappe: the inside opens from the apex along the axis. */
export interface Cone {
  readonly kind: 'cone'
  readonly name: string
  readonly apex: Vec3
  /** Unit direction from the apex into the inside. */
  readonly axis: Vec3
  /** Tangent of the half angle between axis and generator, > 0. */
  readonly slope: number
}

/** Plane through `point` whose outside lies along `outward` (any length). */
export function plane(name: string, point: Vec3, outward: Vec3): Plane {
  const normal = unit(outward)
  return { kind: 'plane', name, normal, offset: dot(normal, point) }
}

/** Cylinder about the line through `point` along `axis`. Throws RangeError for a radius that is not above 0. */
export function cylinder(name: string, point: Vec3, axis: Vec3, radius: number): Cylinder {
  if (!(radius > 0)) throw new RangeError(`cylinder ${name}: radius ${radius} must be above 0`)
  return { kind: 'cylinder', name, point, axis: unit(axis), radius }
}

/** Cone opening from `apex` along `axis`; `halfAngle` in rad, between 0 and π/2 exclusive. */
export function cone(name: string, apex: Vec3, axis: Vec3, halfAngle: number): Cone {
  if (!(halfAngle > 0 && halfAngle < Math.PI / 2)) throw new RangeError(`cone ${name}: half angle ${halfAngle}`)
  return { kind: 'cone', name, apex, axis: unit(axis), slope: Math.tan(halfAngle) }
}

/** Cone through two coaxial circles: radius `r0` at `p0`, `r1` at `p1` (mm, one may be 0, not equal). */
export function coneThrough(name: string, p0: Vec3, r0: number, p1: Vec3, r1: number): Cone {
  const [small, rs, large, rl] = r0 < r1 ? [p0, r0, p1, r1] : [p1, r1, p0, r0]
  const run = subtract(large, small)
  const run1 = length(run)
  if (!(rl > rs && rs >= 0 && run1 > 0)) throw new RangeError(`cone ${name}: radii ${r0}, ${r1}`)
  const axis = unit(run)
  const slope = (rl - rs) / run1
  return { kind: 'cone', name, apex: along(small, axis, -rs / slope), axis, slope }
}

/** Signed distance (cone: to its nearest generator line) of `p` below the surface, mm; positive inside. */
export function depthOf(surface: Surface, p: Vec3): number {
  if (surface.kind === 'plane') return surface.offset - dot(surface.normal, p)
  // Asked many thousand times for one design: no vectors are made on the way.
  const [ax, ay, az] = surface.axis
  const place = surface.kind === 'cylinder' ? surface.point : surface.apex
  const x = p[0] - place[0]
  const y = p[1] - place[1]
  const z = p[2] - place[2]
  const beside = Math.hypot(ay * z - az * y, az * x - ax * z, ax * y - ay * x)
  if (surface.kind === 'cylinder') return surface.radius - beside
  const { slope } = surface
  return ((ax * x + ay * y + az * z) * slope - beside) / Math.sqrt(1 + slope * slope)
}

/** Unit normal at the place of the surface nearest to `p`, pointing outwards. On the axis of a round face: any one. */
export function outwardAt(surface: Surface, p: Vec3): Vec3 {
  if (surface.kind === 'plane') return surface.normal
  const v = subtract(p, surface.kind === 'cylinder' ? surface.point : surface.apex)
  const square = along(v, surface.axis, -dot(v, surface.axis))
  const out = length(square) > 1e-12 ? unit(square) : squareTo(surface.axis)
  return surface.kind === 'cylinder' ? out : unit(along(out, surface.axis, -surface.slope))
}

/** The same surface, given in `frame`, expressed in the parent frame. */
export function surfaceFrom(frame: Frame, s: Surface): Surface {
  if (s.kind === 'plane') {
    const normal = directionFrom(frame, s.normal)
    return { ...s, normal, offset: s.offset + dot(normal, frame.origin) }
  }
  const axis = directionFrom(frame, s.axis)
  if (s.kind === 'cylinder') return { ...s, axis, point: pointFrom(frame, s.point) }
  return { ...s, axis, apex: pointFrom(frame, s.apex) }
}
