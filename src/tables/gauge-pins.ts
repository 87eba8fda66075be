import { z } from 'zod'
import { fields } from '../input/fields.ts'
import type { Units } from '../quantity/kind.ts'
import { type Range, rangeSchema, swappedRange } from './range.ts'
import { repeatedNames } from './repeated-names.ts'
import type { RowFault, RowsRead } from './row-fault.ts'
import { piecesFault, sizeRunSchema, sizesOfRuns } from './size-runs.ts'
import { rowRemarks, tableSchema, words } from './table-schema.ts'

/** A set of pins that a shop measures over, or the dowel pins that it keeps; mm. */
export interface GaugePinSetRow {
  /** `gauge-metric-tenths`, `dowel-inch`. */
  readonly name: string
  /** Nominal diameters, smallest first. */
  readonly diameters: readonly number[]
  /** What a pin may be above (positive) or below its nominal diameter. */
  readonly deviation: Range
  readonly source: string
}

export function gaugePinsSchema(units: Units) {
  const field = fields(units)
  return tableSchema(
    z.strictObject({
      name: words('Name, such as gauge-metric-tenths.'),
      pieces: field.count({ says: 'Diameters in the set.', min: 1 }),
      runs: z.array(sizeRunSchema(field)).min(1),
      deviation: rangeSchema(field.length({ says: 'Limit of the diameter, from the nominal one.' })),
      ...rowRemarks,
    }),
  )
}

type GaugePinsFile = z.output<ReturnType<typeof gaugePinsSchema>>

/** Faults: a run that is none, pieces that the runs do not give, limits exchanged or as large as the smallest pin. */
export function readGaugePins(file: GaugePinsFile): RowsRead<GaugePinSetRow> {
  const faults: RowFault[] = [
    ...repeatedNames(file.rows.map((row, at) => ({ name: row.name, path: ['rows', at, 'name'] }))),
  ]
  const rows = file.rows.map((row, at) => {
    const { sizes, faults: wrong } = sizesOfRuns(row.runs, ['rows', at, 'runs'], file.units)
    faults.push(...wrong, ...swappedRange(row.deviation, ['rows', at, 'deviation']))
    if (wrong.length === 0) {
      faults.push(...piecesFault(row.pieces, sizes.length, ['rows', at, 'pieces']))
      for (const end of ['low', 'high'] as const) {
        if (Math.abs(row.deviation[end]) < sizes[0]!) continue
        faults.push({
          code: 'contradiction',
          path: ['rows', at, 'deviation', end],
          allowed: 'a limit smaller than the smallest pin',
        })
      }
    }
    return { name: row.name, diameters: sizes, deviation: row.deviation, source: row.source ?? file.source }
  })
  return { rows, faults }
}
