import { z } from 'zod'
import { fields } from '../input/fields.ts'
import type { Units } from '../quantity/kind.ts'
import { repeatedNames } from './repeated-names.ts'
import type { RowFault, RowsRead } from './row-fault.ts'
import { piecesFault, sizeRunSchema, sizesOfRuns } from './size-runs.ts'
import { rowRemarks, tableSchema, words } from './table-schema.ts'

/** A boxed set of gauge blocks. */
export interface GaugeBlockSetRow {
  /** `metric-87`, `inch-81`. */
  readonly name: string
  /** Lengths of the blocks, mm, shortest first; one that the set has twice stands twice. */
  readonly blocks: readonly number[]
  readonly source: string
}

export function gaugeBlocksSchema(units: Units) {
  const field = fields(units)
  return tableSchema(
    z.strictObject({
      name: words('Name, such as metric-87.'),
      pieces: field.count({ says: 'Blocks in the box.', min: 1 }),
      runs: z.array(sizeRunSchema(field)).min(1),
      ...rowRemarks,
    }),
  )
}

type GaugeBlocksFile = z.output<ReturnType<typeof gaugeBlocksSchema>>

/** Faults: a run that is none, and a number of pieces that the runs do not give. */
export function readGaugeBlocks(file: GaugeBlocksFile): RowsRead<GaugeBlockSetRow> {
  const faults: RowFault[] = [
    ...repeatedNames(file.rows.map((row, at) => ({ name: row.name, path: ['rows', at, 'name'] }))),
  ]
  const rows = file.rows.map((row, at) => {
    const { sizes, faults: wrong } = sizesOfRuns(row.runs, ['rows', at, 'runs'], file.units)
    faults.push(...wrong)
    if (wrong.length === 0) faults.push(...piecesFault(row.pieces, sizes.length, ['rows', at, 'pieces']))
    return { name: row.name, blocks: sizes, source: row.source ?? file.source }
  })
  return { rows, faults }
}
