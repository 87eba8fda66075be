import type { Problem, ProblemCode } from '../../input/problem.ts'
import { formatAngle } from '../../quantity/format-angle.ts'

/**
 * A problem found by the angle functions. `path` is the dotted name of the input field as these functions call it
 * (`facets.endRelief`); whoever hands the input in knows the file, the line and the user's own name for it.
 */
export function angleProblem(
  path: string,
  code: ProblemCode,
  found: string,
  allowed: string,
  remedy?: string,
): Problem {
  return { code, where: { file: '', path }, found, allowed, ...(remedy !== undefined && { remedy }) }
}

/** An angle in rad for the text of a problem, in degrees. */
export const inWords = (angle: number): string => formatAngle(angle, { decimals: 2 })

/** Throws RangeError unless every angle (rad) lies between −90° and 90°, both excluded: only a caller can get that wrong. */
export function requireBelowRightAngle(angles: Readonly<Record<string, number>>): void {
  for (const [name, angle] of Object.entries(angles)) {
    if (!(Math.abs(angle) < Math.PI / 2)) throw new RangeError(`${name}: ${angle} rad must lie between −π/2 and π/2`)
  }
}
