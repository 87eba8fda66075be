import { formatLength } from '../quantity/format-length.ts'
import type { Units } from '../quantity/kind.ts'
import type { RowFault } from './row-fault.ts'

/** A step of nominal sizes, mm: over < size <= upTo, so that 30 mm belongs to 18 to 30 and not to 30 to 50. */
export interface SizeStep {
  readonly over: number
  readonly upTo: number
}

/** The row whose step holds the size, mm; undefined outside all steps. */
export function rowForSize<Row extends SizeStep>(rows: readonly Row[], size: number): Row | undefined {
  return rows.find((row) => row.over < size && size <= row.upTo)
}

/** Steps that do not begin where the one before ended, or end before they begin: a size would have two rows or none. */
export function stepFaults(
  steps: readonly { readonly step: SizeStep; readonly path: RowFault['path'] }[],
  units: Units,
): readonly RowFault[] {
  const faults: RowFault[] = []
  for (const [at, { step, path }] of steps.entries()) {
    if (step.upTo <= step.over) {
      const allowed = `above ${formatLength(step.over, units)}`
      faults.push({ code: 'contradiction', path: [...path, 'upTo'], allowed })
    }
    const before = steps[at - 1]?.step
    if (before === undefined || before.upTo === step.over) continue
    const allowed = `${formatLength(before.upTo, units)}, where the step before ends`
    faults.push({ code: 'contradiction', path: [...path, 'over'], allowed })
  }
  return faults
}
