import type { Problem } from '../../input/problem.ts'
import type { QuantityKind } from '../../quantity/kind.ts'
import { type Bounds, InputFaults } from '../fit/input-faults.ts'

/** A figure to be looked at: name of the input field, what it measures, its value, its bounds. */
export type Figure = readonly [path: string, kind: QuantityKind, value: number, bounds: Bounds]

/** Problems of all figures of a list that break their bounds; empty where none does. RangeError on NaN and infinity. */
export function outOfRange(figures: readonly Figure[]): Problem[] {
  const faults = new InputFaults()
  for (const [path, kind, value, bounds] of figures) faults.keeps(path, value, kind, bounds)
  return faults.problems
}
