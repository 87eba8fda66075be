import type { InputFaults } from './input-faults.ts'
import type { Strength } from './yield-onset.ts'

/** Shear strength over tensile yield by von Mises. */
export const shearOverYield = 1 / Math.sqrt(3)

/**
 * Strength of a part that is pressed on or pulled, MPa: yield, or for a brittle material the ultimate strength in tension.
 * A problem where neither is published; NaN then, for a calculation that is not carried on.
 */
export function strengthOf(faults: InputFaults, path: string, { yieldStrength, ultimateStrength }: Strength): number {
  const strength = yieldStrength ?? ultimateStrength
  if (strength === undefined) {
    const allowed = 'a material with a yield or ultimate strength'
    faults.add(path, 'not-in-table', 'no published strength', allowed, 'name another material')
    return Number.NaN
  }
  faults.keeps(path, strength, 'pressure', { above: 0 })
  return strength
}

/** The smallest of some named figures. */
export function weakestOf(figures: Readonly<Record<string, number>>): {
  readonly name: string
  readonly value: number
} {
  const [first, ...rest] = Object.entries(figures)
  if (first === undefined) throw new RangeError('nothing to compare')
  const [name, value] = rest.reduce((least, next) => (next[1] < least[1] ? next : least), first)
  return { name, value }
}
