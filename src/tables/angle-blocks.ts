import { z } from 'zod'
import { fields } from '../input/fields.ts'
import type { Units } from '../quantity/kind.ts'
import { repeatedNames } from './repeated-names.ts'
import type { RowFault, RowsRead } from './row-fault.ts'
import { piecesFault } from './size-runs.ts'
import { rowRemarks, tableSchema, words } from './table-schema.ts'

/** A boxed set of angle blocks. */
export interface AngleBlockSetRow {
  /** `shop-12`, `precision-16`. */
  readonly name: string
  /** Angles of the blocks, rad, smallest first. */
  readonly angles: readonly number[]
  /** Whether a block may be wrung on the other way round, so that its angle is taken off. */
  readonly subtracts: boolean
  readonly source: string
}

export function angleBlocksSchema(units: Units) {
  const field = fields(units)
  return tableSchema(
    z.strictObject({
      name: words('Name, such as shop-12.'),
      pieces: field.count({ says: 'Blocks in the box.', min: 1 }),
      angles: z.array(field.angle({ says: 'Angle of one block.', above: 0, max: Math.PI / 2 })).min(1),
      subtracts: field.flag({ says: 'Whether blocks may be turned round, so that an angle is taken off.' }),
      ...rowRemarks,
    }),
  )
}

type AngleBlocksFile = z.output<ReturnType<typeof angleBlocksSchema>>

/** Faults: pieces that are not as many as the angles. */
export function readAngleBlocks(file: AngleBlocksFile): RowsRead<AngleBlockSetRow> {
  const faults: RowFault[] = [
    ...repeatedNames(file.rows.map((row, at) => ({ name: row.name, path: ['rows', at, 'name'] }))),
  ]
  const rows = file.rows.map((row, at) => {
    faults.push(...piecesFault(row.pieces, row.angles.length, ['rows', at, 'pieces']))
    const { name, subtracts } = row
    return { name, angles: row.angles.toSorted((a, b) => a - b), subtracts, source: row.source ?? file.source }
  })
  return { rows, faults }
}
