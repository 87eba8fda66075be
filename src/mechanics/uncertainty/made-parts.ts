import { variate } from './distribution.ts'
import { uniformNumbers } from './random.ts'
import type { Toleranced } from './spread.ts'

/**
 * Sizes of so many simulated parts, in the order of `sizes`: each about the middle of its limits by its own distribution. The same
 * seed draws the same places within the limits, however wide they are, so that two sets of tolerances are compared part by part.
 */
export function madeParts(sizes: readonly Toleranced[], count: number, seed: number): number[][] {
  const next = uniformNumbers(seed)
  return Array.from({ length: count }, () =>
    sizes.map(
      ({ low, high, distribution = 'normal' }) => (low + high) / 2 + ((high - low) / 2) * variate(distribution, next),
    ),
  )
}
