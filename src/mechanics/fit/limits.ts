import type { Deviations } from '../../tables/ansi-b4-1.ts'

/** Smallest and largest size that a diameter may have, mm at 20 °C. */
export interface Limits {
  readonly smallest: number
  readonly largest: number
}

/** Interference at both ends of a tolerance, mm on the diameter; negative is clearance. */
export interface InterferenceSpan {
  readonly least: number
  readonly most: number
}

/** Limits of a size, mm, from its deviations, mm. Sizes come out to the nanometre, so that sums carry no binary dust. */
export function limitsFrom(nominal: number, deviations: Deviations): Limits {
  return { smallest: toNanometre(nominal + deviations.lower), largest: toNanometre(nominal + deviations.upper) }
}

/** Least: smallest spigot in the largest bore. Most: largest spigot in the smallest bore. mm, clearance negative. */
export function interferenceOf(bore: Limits, spigot: Limits): InterferenceSpan {
  return {
    least: toNanometre(spigot.smallest - bore.largest),
    most: toNanometre(spigot.largest - bore.smallest),
  }
}

/**
 * Limits as a drawing prints them: whole multiples of `step` (mm, above 0) that lie inside the given ones. A tolerance
 * with no such multiple in it gives the one nearest to its middle, twice. RangeError for a step that is not positive.
 */
export function inwardTo(limits: Limits, step: number): Limits {
  if (!(step > 0 && Number.isFinite(step))) throw new RangeError(`step of printed sizes: ${step}`)
  // A size that is a multiple but for binary dust must not lose a whole step.
  const dust = 1e-6
  const low = Math.ceil(limits.smallest / step - dust)
  const high = Math.floor(limits.largest / step + dust)
  if (low <= high) return { smallest: toNanometre(low * step), largest: toNanometre(high * step) }
  const middle = toNanometre(Math.round((limits.smallest + limits.largest) / 2 / step) * step)
  return { smallest: middle, largest: middle }
}

/** A length in mm rounded to 1e-6 mm. */
export function toNanometre(length: number): number {
  return Math.round(length * 1e6) / 1e6
}
