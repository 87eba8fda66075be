import { nearest } from '../input/nearest.ts'

export type RowFound<Row> =
  | { readonly ok: true; readonly row: Row }
  | { readonly ok: false; readonly nearest: string | undefined; readonly names: readonly string[] }

/**
 * The row of that name. Where there is none: the name that was most likely meant (undefined where none is close) and
 * all names of the table, for the message.
 */
export function findRow<Row extends { readonly name: string }>(rows: readonly Row[], name: string): RowFound<Row> {
  const row = rows.find((candidate) => candidate.name === name)
  if (row !== undefined) return { ok: true, row }
  const names = rows.map((candidate) => candidate.name)
  return { ok: false, nearest: nearest(name, names), names }
}
