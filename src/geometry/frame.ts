import { add, cross, dot, scale, subtract, type Vec3 } from './vector.ts'

/** A right-handed frame, or a mirrored one where said so: origin in mm, unit axes, all in the parent frame. */
export interface Frame {
  readonly origin: Vec3
  readonly x: Vec3
  readonly y: Vec3
  readonly z: Vec3
}

export const worldFrame: Frame = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] }

/** Direction with components `v` in `frame`, in the parent frame. */
export const directionFrom = (frame: Frame, v: Vec3): Vec3 =>
  add(add(scale(frame.x, v[0]), scale(frame.y, v[1])), scale(frame.z, v[2]))

/** Point with coordinates `p` in `frame`, in the parent frame. */
export const pointFrom = (frame: Frame, p: Vec3): Vec3 => add(frame.origin, directionFrom(frame, p))

/** Coordinates in `frame` of a point of the parent frame. */
export function pointIn(frame: Frame, p: Vec3): Vec3 {
  const v = subtract(p, frame.origin)
  return [dot(v, frame.x), dot(v, frame.y), dot(v, frame.z)]
}

/** Right-handed frame at `origin` with the given z and x axes (unit, square to each other). */
export const frameOf = (origin: Vec3, z: Vec3, x: Vec3): Frame => ({ origin, x, y: cross(z, x), z })
