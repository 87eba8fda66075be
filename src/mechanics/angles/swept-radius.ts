import { pointFrom } from '../../geometry/frame.ts'
import type { Vec3 } from '../../geometry/vector.ts'
import type { BitFace, GroundBit } from './ground-bit.ts'

/** A place on the bit, in the body frame, mm, and the faces that meet there. */
export interface BitPlace {
  readonly at: Vec3
  readonly between: readonly BitFace[]
}

/**
 * Largest radius of any point of the ground bit about the spindle axis, mm, and where: what machine and guard must
 * clear. It is not the tip's radius: the upper corner of the end, the heel or the tail may run further out. Exact: the
 * distance from a line is convex, so the largest over a body with corners is at one of them.
 */
export function sweptRadius({ tip, head, tail }: GroundBit): BitPlace & { readonly radius: number } {
  let best: (BitPlace & { readonly radius: number }) | undefined
  for (const corner of [...head.corners, ...(tail?.corners ?? [])]) {
    const at = pointFrom(tip.bit, corner.at)
    const radius = Math.hypot(at[0], at[1])
    if (best === undefined || radius > best.radius) best = { radius, at, between: corner.between }
  }
  if (best === undefined) throw new RangeError('swept radius: a bit without corners')
  return best
}
