import type { ProblemCode } from '../input/problem.ts'

/** Something wrong in a table that can only be seen by comparing values; the position is found from `path` later. */
export interface RowFault {
  readonly code: ProblemCode
  /** Keys and row numbers from the top of the file: `['rows', 3, 'tapDrill']`. */
  readonly path: readonly (string | number)[]
  /** What is wrong, where it is not the value at `path` itself: that is quoted from the file. */
  readonly found?: string
  readonly allowed: string
  readonly remedy?: string
}

/** The rows of one table, and what is wrong between their values. */
export interface RowsRead<Row> {
  readonly rows: readonly Row[]
  readonly faults: readonly RowFault[]
}
