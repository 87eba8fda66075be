import type { Result } from '../../input/problem.ts'
import { formatLength } from '../../quantity/format-length.ts'
import type { Units } from '../../quantity/kind.ts'
import { rowForSize, type SizeStep } from '../../tables/size-step.ts'
import { InputFaults } from './input-faults.ts'

/** A size in inches becomes mm by a multiplication whose last bit may differ from the table's: 1e-9 mm is no size. */
const dust = 1e-9

/**
 * The row whose step holds a nominal size, mm: over < size <= up to. A problem where none does; no table is carried on
 * past its end. `units` is how the table's own ends are written. RangeError for a table without rows, NaN or infinity.
 */
export function sizeStep<Row extends SizeStep>(
  rows: readonly Row[],
  size: number,
  path: string,
  units: Units = 'mm',
): Result<Row> {
  if (rows.length === 0) throw new RangeError('a table of sizes without rows')
  if (!Number.isFinite(size)) throw new RangeError(`${path} is ${size}`)
  const row = rowForSize(rows, size - dust)
  if (row !== undefined) return { ok: true, value: row }
  const faults = new InputFaults()
  const first = Math.min(...rows.map((step) => step.over))
  const last = Math.max(...rows.map((step) => step.upTo))
  const allowed = `over ${formatLength(first, units)} up to ${formatLength(last, units)}, which the table holds`
  faults.add(path, 'out-of-range', formatLength(size, units), allowed, 'give the limits of bore and spigot outright')
  return { ok: false, problems: faults.problems }
}
