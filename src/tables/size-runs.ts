import { z } from 'zod'
import type { Fields } from '../input/fields.ts'
import { formatLength } from '../quantity/format-length.ts'
import type { Units } from '../quantity/kind.ts'
import type { RowFault } from './row-fault.ts'

/** Most sizes of one run: a slip of the step would otherwise fill the memory. */
const longestRun = 2000
/** Longest block that is sold, mm: more is a slip of the unit. */
const longest = 1000
/** A run that does not end on a step is a slip; rounding of the inch is not, as a share of the step. */
const offStep = 1e-6

/** Sizes that follow each other by a step, or one size by itself: `{ from, to, step }`, or `{ from }`. */
export function sizeRunSchema(field: Fields) {
  return z.strictObject({
    from: field.length({ says: 'First size of the run, or the only one.', above: 0, max: longest }),
    to: field.length({ says: 'Last size of the run.', above: 0, max: longest }).optional(),
    step: field.length({ says: 'From each size to the next.', above: 0, max: longest }).optional(),
  })
}

export type SizeRun = z.output<ReturnType<typeof sizeRunSchema>>

/**
 * All sizes of some runs in mm, smallest first, and what is wrong with the runs: an end or a step that stands alone, an end below the beginning
 * or between two steps, more sizes than any set has.
 */
export function sizesOfRuns(
  runs: readonly SizeRun[],
  path: RowFault['path'],
  units: Units,
): { readonly sizes: readonly number[]; readonly faults: readonly RowFault[] } {
  const faults: RowFault[] = []
  const sizes: number[] = []
  for (const [at, { from, to, step }] of runs.entries()) {
    const here = [...path, at]
    if (to === undefined && step === undefined) {
      sizes.push(from)
      continue
    }
    if (to === undefined || step === undefined) {
      const key = to === undefined ? 'to' : 'step'
      faults.push({
        code: 'missing-key',
        path: here,
        found: `no ${key}`,
        allowed: 'from alone, or from, to and step',
        remedy: `give ${key} too`,
      })
      continue
    }
    const steps = (to - from) / step
    const whole = Math.round(steps)
    if (to <= from) {
      faults.push({ code: 'contradiction', path: [...here, 'to'], allowed: `above ${formatLength(from, units)}` })
    } else if (whole >= longestRun) {
      faults.push({ code: 'out-of-range', path: [...here, 'step'], allowed: `at most ${longestRun} sizes in a run` })
    } else if (Math.abs(steps - whole) > offStep) {
      const near = from + whole * step
      faults.push({
        code: 'contradiction',
        path: [...here, 'to'],
        allowed: 'a whole number of steps above the first size',
        remedy: `${formatLength(near, units, { decimals: units === 'mm' ? 4 : 5 })} is one`,
      })
    } else {
      for (let i = 0; i <= whole; i++) sizes.push(from + i * step)
    }
  }
  return { sizes: sizes.map(clean).sort((a, b) => a - b), faults }
}

/** How many a set has, counted on the box and in its runs: a size forgotten shows here. Nothing where the runs have faults. */
export function piecesFault(pieces: number, counted: number, path: RowFault['path']): readonly RowFault[] {
  if (pieces === counted) return []
  return [{ code: 'contradiction', path, allowed: `${counted}, as many as the row lists` }]
}

/** To a picometre: sums of steps lose their last digits. */
const clean = (size: number): number => Math.round(size * 1e9) / 1e9
