import { z } from 'zod'
import { fields } from '../input/fields.ts'
import type { Units } from '../quantity/kind.ts'
import type { BarSection } from './bar-section.ts'
import { repeatedNames } from './repeated-names.ts'
import type { RowsRead } from './row-fault.ts'
import { rowRemarks, tableSchema, words } from './table-schema.ts'

/** A size of bar that dealers keep; size in mm (across flats, diameter or side). */
export interface BarStockRow extends BarSection {
  /** `hexagon-1-1/4`, `round-25`. */
  readonly name: string
  readonly source: string
}

export function barStockSchema(units: Units) {
  const field = fields(units)
  return tableSchema(
    z.strictObject({
      name: words('Name, such as round-25.'),
      shape: field.choice(['hexagon', 'round', 'square'], { says: 'Shape of the section.' }),
      size: field.length({ says: 'Across flats, diameter or side.', above: 0, max: 1000 }),
      ...rowRemarks,
    }),
  )
}

type BarStockFile = z.output<ReturnType<typeof barStockSchema>>

export function readBarStock(file: BarStockFile): RowsRead<BarStockRow> {
  const rows = file.rows.map(({ name, shape, size, source }) => ({ name, shape, size, source: source ?? file.source }))
  return { rows, faults: repeatedNames(file.rows.map((row, at) => ({ name: row.name, path: ['rows', at, 'name'] }))) }
}
