import { z } from 'zod'
import { fields } from '../input/fields.ts'
import { formatQuantity } from '../quantity/format-quantity.ts'
import type { Units } from '../quantity/kind.ts'
import { absentName } from './absent-name.ts'
import { repeatedNames } from './repeated-names.ts'
import type { RowFault, RowsRead } from './row-fault.ts'
import { rowRemarks, tableSchema, words } from './table-schema.ts'
import type { WorkMaterialRow } from './work-materials.ts'

/** A material that parts are made of; the lowest published strength. Undefined: no published figure was found. */
export interface MaterialRow {
  readonly name: string
  readonly title: string
  /** kg/m³ */
  readonly density: number
  /** MPa */
  readonly youngsModulus: number
  readonly poissonRatio: number
  /** Linear thermal expansion, 1/K. */
  readonly expansion: number
  /** MPa; undefined for brittle and hardened materials, which break before they yield. */
  readonly yieldStrength?: number | undefined
  /** MPa, in tension. */
  readonly ultimateStrength?: number | undefined
  /** Least engaged thread when tapped, in major diameters; undefined where it is not tapped. */
  readonly threadEngagement?: number | undefined
  /** Name of a row of the work materials, for cutting it; undefined where a shop does not cut it. */
  readonly workMaterial?: string | undefined
  readonly note?: string | undefined
  readonly source: string
}

export function materialsSchema(units: Units) {
  const field = fields(units)
  return tableSchema(
    z.strictObject({
      name: words('Name.'),
      title: words('What the material is.'),
      density: field.density({ says: 'Density.', min: 100, max: 25_000 }),
      youngsModulus: field.pressure({ says: "Young's modulus.", min: 100, max: 2e6 }),
      poissonRatio: z.number().min(0).lt(0.5),
      expansion: field.expansion({ says: 'Linear thermal expansion.', above: 0, max: 1e-3 }),
      yieldStrength: field.pressure({ says: 'Yield strength.', above: 0, max: 10_000 }).optional(),
      ultimateStrength: field.pressure({ says: 'Ultimate strength.', above: 0, max: 10_000 }).optional(),
      threadEngagement: z.number().positive().max(10).optional(),
      workMaterial: words('Name of a row of work-materials.json.').optional(),
      ...rowRemarks,
    }),
  )
}

type MaterialsFile = z.output<ReturnType<typeof materialsSchema>>

/** Faults: a yield strength above the ultimate, a work material that is not in its table. */
export function readMaterials(
  file: MaterialsFile,
  workMaterials: readonly WorkMaterialRow[] | undefined,
): RowsRead<MaterialRow> {
  const rows = file.rows.map((row) => ({ ...row, source: row.source ?? file.source }))
  const faults: RowFault[] = []
  for (const [at, row] of rows.entries()) {
    const work = row.workMaterial
    if (work !== undefined && workMaterials?.some((candidate) => candidate.name === work) === false) {
      faults.push(absentName(work, ['rows', at, 'workMaterial'], 'work-materials', workMaterials))
    }
    if (row.yieldStrength === undefined || row.ultimateStrength === undefined) continue
    if (row.yieldStrength <= row.ultimateStrength) continue
    faults.push({
      code: 'contradiction',
      path: ['rows', at, 'yieldStrength'],
      allowed: `no more than the ultimate strength, ${formatQuantity('pressure', row.ultimateStrength, file.units)}`,
    })
  }
  faults.push(...repeatedNames(file.rows.map((row, at) => ({ name: row.name, path: ['rows', at, 'name'] }))))
  return { rows, faults }
}
