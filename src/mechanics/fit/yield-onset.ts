import { greatestPrincipal, hubStress, type Stress, shaftStress, vonMises } from './joint-stress.ts'
import { interferenceFor, type PressJoint } from './press-joint.ts'

/** Strengths of a material, MPa; undefined where none is published. A brittle one has an ultimate strength only. */
export interface Strength {
  readonly yieldStrength?: number | undefined
  readonly ultimateStrength?: number | undefined
}

/**
 * What a material fails by. Ductile: it yields, by von Mises. Brittle (grey iron): it breaks, by the greatest principal
 * stress against the ultimate strength in tension, on either side: that is safe in compression, where grey iron takes
 * about three times as much (from memory). Unknown: no strength is published, so nothing can be said.
 */
export type Criterion =
  | { readonly kind: 'yields' | 'breaks'; readonly limit: number }
  | { readonly kind: 'unknown'; readonly limit?: undefined }

/** The criterion that a material's published strengths allow. RangeError for a strength that is not above 0. */
export function criterionOf({ yieldStrength, ultimateStrength }: Strength): Criterion {
  const limit = yieldStrength ?? ultimateStrength
  if (limit === undefined) return { kind: 'unknown' }
  if (!(limit > 0 && Number.isFinite(limit))) throw new RangeError(`strength: ${limit}`)
  return { kind: yieldStrength === undefined ? 'breaks' : 'yields', limit }
}

/** The stress that counts for a criterion, MPa, 0 or more. */
export function countingStress(criterion: Criterion, stress: Stress): number {
  return criterion.kind === 'breaks' ? greatestPrincipal(stress) : vonMises(stress)
}

/** Where a joint first yields or breaks. */
export interface Onset {
  readonly part: 'hub' | 'shaft'
  readonly kind: 'yields' | 'breaks'
  /** Pressure in the joint, MPa, and interference left in it after smoothing, mm on the diameter. */
  readonly pressure: number
  readonly interference: number
}

/**
 * Onset of yield or break in hub and shaft, the first one first; empty where no strength is known. In the hub it begins
 * at the bore; in a hollow shaft at its own bore; in a solid shaft everywhere at once. The interference is elastic.
 */
export function onsetsOf(joint: PressJoint, hub: Strength, shaft: Strength): Onset[] {
  const onsets: Onset[] = []
  for (const [part, strength, stress] of [
    ['hub', hub, hubStress(joint, 1)],
    ['shaft', shaft, worstShaftStress(joint, 1)],
  ] as const) {
    const criterion = criterionOf(strength)
    if (criterion.kind === 'unknown') continue
    const pressure = criterion.limit / countingStress(criterion, stress)
    onsets.push({ part, kind: criterion.kind, pressure, interference: interferenceFor(joint, pressure) })
  }
  return onsets.toSorted((a, b) => a.pressure - b.pressure)
}

/** Stress where the shaft is worst off: at its bore, or anywhere in a solid one. MPa, from the pressure in the joint. */
export function worstShaftStress(joint: PressJoint, pressure: number): Stress {
  return shaftStress(joint, pressure, joint.shaftBore > 0 ? joint.shaftBore : joint.diameter)
}
