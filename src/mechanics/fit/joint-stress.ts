import type { PressJoint } from './press-joint.ts'

/** Stresses at one place of a cylinder, MPa, tension positive. The third, along the axis, is 0: the ends are free. */
export interface Stress {
  readonly radial: number
  readonly hoop: number
}

/**
 * Stress in a thick cylinder at a diameter (mm) between `inner` (0 for a solid bar) and `outer`, from pressures (MPa, 0
 * or more) on its inside and outside; Lamé. RangeError for a place outside the metal or a pressure inside a solid bar.
 */
export function cylinderStress(
  { inner, outer }: { readonly inner: number; readonly outer: number },
  { inside, outside }: { readonly inside: number; readonly outside: number },
  at: number,
): Stress {
  if (!(inner >= 0 && outer > inner && at >= inner && at <= outer)) {
    throw new RangeError(`no metal at ${at} between ${inner} and ${outer}`)
  }
  if (inner === 0) {
    if (inside !== 0) throw new RangeError('a solid bar has no inside to press on')
    return { radial: 0 - outside, hoop: 0 - outside }
  }
  const [a, b, r] = [inner ** 2, outer ** 2, at ** 2]
  const mean = (inside * a - outside * b) / (b - a)
  const varying = ((inside - outside) * a * b) / (b - a) / r
  return { radial: mean - varying, hoop: mean + varying }
}

/** Stress in the hub, MPa, at a diameter in mm, from the pressure in the joint, MPa; the bore where none is given. */
export function hubStress(joint: PressJoint, pressure: number, at = joint.diameter): Stress {
  const walls = { inner: joint.diameter, outer: joint.hubOutside }
  return cylinderStress(walls, { inside: pressure, outside: 0 }, at)
}

/** Stress in the shaft, MPa, at a diameter in mm, from the pressure in the joint, MPa; its outside where none is given. */
export function shaftStress(joint: PressJoint, pressure: number, at = joint.diameter): Stress {
  const walls = { inner: joint.shaftBore, outer: joint.diameter }
  return cylinderStress(walls, { inside: 0, outside: pressure }, at)
}

/** Von Mises stress, MPa, 0 or more: what a ductile material yields by. */
export function vonMises({ radial, hoop }: Stress): number {
  return Math.sqrt(radial ** 2 - radial * hoop + hoop ** 2)
}

/** The largest of the principal stresses by size, MPa, 0 or more: what a brittle material breaks by (Rankine). */
export function greatestPrincipal({ radial, hoop }: Stress): number {
  return Math.max(Math.abs(radial), Math.abs(hoop))
}
