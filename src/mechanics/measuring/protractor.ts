import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'

/** What a protractor can show of an angle, rad. */
export interface ProtractorReading {
  /** The nearest that it shows. */
  readonly reading: number
  /** What is asked for less what it shows, at most half of the least count. */
  readonly rest: number
  /** How far the angle may be off when that reading is set: half of the least count, and the rest. */
  readonly error: number
}

/**
 * Least count of a vernier, rad: its divisions are so many to one division of the scale, for the vernier's lines stand as far apart as
 * whole divisions of the scale less one part. A bevel protractor with whole degrees and twelve divisions reads to 5′ (common
 * practice). `scaleDivision` rad, above 0; `divisions` a whole number, 1 (no vernier) or more. Throws RangeError outside these.
 */
export function vernierLeastCount(scaleDivision: number, divisions: number): number {
  if (!(scaleDivision > 0) || !(Number.isInteger(divisions) && divisions >= 1)) {
    throw new RangeError(`a vernier of ${divisions} divisions on a scale of ${scaleDivision} rad`)
  }
  return scaleDivision / divisions
}

/** What a protractor of a least count shows of an angle. rad. Problems: a least count that is not above 0, an angle outside 0 to π. */
export function protractorReading(angle: number, leastCount: number): Result<ProtractorReading> {
  const faults = new InputFaults()
  faults.keeps('angle', angle, 'angle', { min: 0, max: Math.PI })
  faults.keeps('leastCount', leastCount, 'angle', { above: 0 })
  return faults.result(() => {
    const reading = Math.round(angle / leastCount) * leastCount
    const rest = angle - reading
    return { reading, rest, error: leastCount / 2 + Math.abs(rest) }
  })
}
