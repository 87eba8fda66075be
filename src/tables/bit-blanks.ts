import { z } from 'zod'
import { fields } from '../input/fields.ts'
import { formatLength } from '../quantity/format-length.ts'
import type { Units } from '../quantity/kind.ts'
import { absentName } from './absent-name.ts'
import type { MaterialRow } from './materials.ts'
import { repeatedNames } from './repeated-names.ts'
import type { RowFault, RowsRead } from './row-fault.ts'
import { rowRemarks, tableSchema, words } from './table-schema.ts'

/** A tool-bit blank; lengths in mm. */
export interface BitBlankRow {
  /** `square-12`, `square-1/2`, `rectangular-10x16`. */
  readonly name: string
  /** The smaller side of a rectangular blank. */
  readonly width: number
  /** The larger side; equal to the width for a square blank. */
  readonly height: number
  /** Standard lengths, shortest first. */
  readonly lengths: readonly number[]
  /** Name of a row of the materials table. */
  readonly material: string
  readonly source: string
}

export function bitBlanksSchema(units: Units) {
  const field = fields(units)
  return tableSchema(
    z.strictObject({
      name: words('Name, such as square-12.'),
      width: field.length({ says: 'Width of the blank.', above: 0, max: 100 }),
      height: field.length({ says: 'Height of the blank.', above: 0, max: 100 }),
      lengths: z.array(field.length({ says: 'Standard length.', above: 0, max: 500 })).min(1),
      material: words('Name of a row of materials.json.'),
      ...rowRemarks,
    }),
  )
}

type BitBlanksFile = z.output<ReturnType<typeof bitBlanksSchema>>

/** Faults: a width above the height; a material that is not in its table, where that table could be read. */
export function readBitBlanks(
  file: BitBlanksFile,
  materials: readonly MaterialRow[] | undefined,
): RowsRead<BitBlankRow> {
  const rows = file.rows.map((row) => ({
    name: row.name,
    width: row.width,
    height: row.height,
    lengths: row.lengths.toSorted((a, b) => a - b),
    material: row.material,
    source: row.source ?? file.source,
  }))
  const faults: RowFault[] = [
    ...repeatedNames(file.rows.map((row, at) => ({ name: row.name, path: ['rows', at, 'name'] }))),
  ]
  for (const [at, { material, width, height }] of rows.entries()) {
    if (width > height) {
      const allowed = `no more than the height, ${formatLength(height, file.units)}`
      faults.push({ code: 'contradiction', path: ['rows', at, 'width'], allowed, remedy: 'exchange the two' })
    }
    if (materials?.some((candidate) => candidate.name === material) !== false) continue
    faults.push(absentName(material, ['rows', at, 'material'], 'materials', materials))
  }
  return { rows, faults }
}
