import type { Amount } from '../checks/finding.ts'

/** One column of a table; `unit`: for plain numbers of a kind of their own, already in that unit. */
export interface Column {
  readonly label: string
  readonly kind: Amount['kind'] | 'text'
  readonly unit?: string
}

/** Internal unit of the column's kind, words, or nothing. */
export type TableCell = number | string | undefined

/** Numbers that belong together, row by row: report and page list them as they are. */
export interface Table {
  /** Unique and stable: `reach`. */
  readonly id: string
  readonly title: string
  readonly columns: readonly Column[]
  readonly rows: readonly (readonly TableCell[])[]
}

/** A table that a design yields; undefined where the design has no such thing. */
export type TableOf<D> = (design: D) => Table | undefined

/** All tables that the design has. Throws Error on a number that is none and on a row of the wrong length: defects. */
export function tablesOf<D>(tables: readonly TableOf<D>[], design: D): Table[] {
  return tables.flatMap((tableOf) => {
    const table = tableOf(design)
    if (table === undefined) return []
    for (const row of table.rows) {
      if (row.length !== table.columns.length) throw new Error(`table ${table.id}: a row of ${row.length} cells`)
      for (const cell of row) {
        if (typeof cell === 'number' && !Number.isFinite(cell)) throw new Error(`table ${table.id}: ${cell}`)
      }
    }
    return [table]
  })
}
