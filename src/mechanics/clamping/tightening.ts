import type { Result } from '../../input/problem.ts'
import type { SetScrewRow } from '../../tables/set-screws.ts'
import { outOfRange } from '../cutting/out-of-range.ts'

export interface Tightening {
  /** Torque to tighten to, N·mm. */
  readonly torque: number
  /** Largest torque the table gives for this screw, N·mm; undefined where it gives none. */
  readonly largest: number | undefined
  /** The torque is never to stand above the table's: the socket and the key give way first. */
  readonly standing: 'within-table' | 'above-table' | 'no-table-figure'
}

/**
 * Torque to tighten a set screw to: the shop's own choice (N·mm) or else the seating torque of its table row.
 * Problems: a choice that is not above zero; no choice where the table has no figure either.
 */
export function tightening(screw: Pick<SetScrewRow, 'name' | 'seatingTorque'>, chosen?: number): Result<Tightening> {
  const largest = screw.seatingTorque
  const torque = chosen ?? largest
  if (torque === undefined) {
    return {
      ok: false,
      problems: [
        {
          code: 'not-in-table',
          where: { file: '', path: 'torque' },
          found: `no seating torque for ${screw.name}`,
          allowed: 'a screw with a published seating torque, or a torque of your own',
          remedy: 'give the tightening torque',
        },
      ],
    }
  }
  const problems = outOfRange([['torque', 'torque', torque, { above: 0 }]])
  if (problems.length > 0) return { ok: false, problems }
  const standing = largest === undefined ? 'no-table-figure' : torque > largest ? 'above-table' : 'within-table'
  return { ok: true, value: { torque, largest, standing } }
}
