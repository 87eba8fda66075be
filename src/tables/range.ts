import { z } from 'zod'
import type { RowFault } from './row-fault.ts'

/** From `low` to `high`, both included, in the internal unit of what it measures. */
export interface Range {
  readonly low: number
  readonly high: number
}

/** A range written as `{ "low": …, "high": … }`, both ends of the same field. */
export function rangeSchema<End extends z.ZodType<number>>(end: End) {
  return z.strictObject({ low: end, high: end })
}

/** A range whose ends are swapped; ends that are equal are one published figure and fine. */
export function swappedRange(range: Range | undefined, path: RowFault['path']): readonly RowFault[] {
  if (range === undefined || range.low <= range.high) return []
  return [
    {
      code: 'contradiction',
      path,
      found: 'low above high',
      allowed: 'low no greater than high',
      remedy: 'exchange the two',
    },
  ]
}
