import { nearest } from '../input/nearest.ts'
import type { RowFault } from './row-fault.ts'
import type { TableName } from './table-name.ts'

/** A name in one table that must stand in another and does not. */
export function absentName(
  name: string,
  path: RowFault['path'],
  table: TableName,
  rows: readonly { readonly name: string }[],
): RowFault {
  const near = nearest(
    name,
    rows.map((row) => row.name),
  )
  return {
    code: 'not-in-table',
    path,
    allowed: `the name of a row of ${table}.json`,
    remedy: near === undefined ? `add the row to ${table}.json` : `write ${near}, or add the row to ${table}.json`,
  }
}
