import { z } from 'zod'
import { fields } from '../input/fields.ts'
import type { Units } from '../quantity/kind.ts'
import { type Range, rangeSchema, swappedRange } from './range.ts'
import { repeatedNames } from './repeated-names.ts'
import type { RowFault, RowsRead } from './row-fault.ts'
import { rowRemarks, tableSchema, words } from './table-schema.ts'

/** A material to be cut. Undefined: no published figure was found. */
export interface WorkMaterialRow {
  readonly name: string
  readonly title: string
  /** Group number of VDI 3323. */
  readonly vdi3323?: number | undefined
  /** kc1.1 in MPa: cutting force per area of chip 1 mm wide and 1 mm thick, kc = kc1.1 h^-mc with h in mm. */
  readonly specificForce?: number | undefined
  /** mc of the same formula, a plain number. */
  readonly forceExponent?: number | undefined
  /** Cutting speed of a high-speed-steel mill, mm/s. */
  readonly hssSpeed: Range
  /** Cutting speed of a carbide mill, mm/s. */
  readonly carbideSpeed?: Range | undefined
  /** Feed per tooth of a high-speed-steel face mill, mm. */
  readonly feedPerTooth?: Range | undefined
  /** Angles of a high-speed-steel lathe tool under their lathe names, rad. */
  readonly hssAngles?: HssAngles | undefined
  readonly note?: string | undefined
  readonly source: string
}

export interface HssAngles {
  readonly sideRelief: Range
  readonly frontRelief: Range
  readonly sideRake: Range
  readonly backRake: Range
}

export function workMaterialsSchema(units: Units) {
  const field = fields(units)
  const speed = rangeSchema(field.cuttingSpeed({ says: 'Cutting speed.', above: 0, max: 1e6 }))
  const relief = rangeSchema(field.angle({ says: 'Relief angle.', above: 0, below: Math.PI / 2 }))
  const rake = rangeSchema(field.angle({ says: 'Rake angle.', min: -Math.PI / 4, below: Math.PI / 2 }))
  return tableSchema(
    z.strictObject({
      name: words('Name.'),
      title: words('What the material is.'),
      vdi3323: field.count({ says: 'Group of VDI 3323.', min: 1, max: 41 }).optional(),
      specificForce: field.pressure({ says: 'Specific cutting force kc1.1.', above: 0, max: 100_000 }).optional(),
      forceExponent: z.number().gt(0).lt(1).optional(),
      hssSpeed: speed,
      carbideSpeed: speed.optional(),
      feedPerTooth: rangeSchema(field.length({ says: 'Feed per tooth.', above: 0, max: 10 })).optional(),
      hssAngles: z.strictObject({ sideRelief: relief, frontRelief: relief, sideRake: rake, backRake: rake }).optional(),
      ...rowRemarks,
    }),
  )
}

type WorkMaterialsFile = z.output<ReturnType<typeof workMaterialsSchema>>

/** Faults: a range whose ends are swapped, a force without its exponent or the other way round. */
export function readWorkMaterials(file: WorkMaterialsFile): RowsRead<WorkMaterialRow> {
  const rows = file.rows.map((row) => ({ ...row, source: row.source ?? file.source }))
  const faults: RowFault[] = []
  for (const [at, row] of rows.entries()) {
    const path = ['rows', at] as const
    for (const key of ['hssSpeed', 'carbideSpeed', 'feedPerTooth'] as const) {
      faults.push(...swappedRange(row[key], [...path, key]))
    }
    for (const key of ['sideRelief', 'frontRelief', 'sideRake', 'backRake'] as const) {
      faults.push(...swappedRange(row.hssAngles?.[key], [...path, 'hssAngles', key]))
    }
    if ((row.specificForce === undefined) === (row.forceExponent === undefined)) continue
    faults.push({
      code: 'missing-key',
      path,
      found: row.specificForce === undefined ? 'forceExponent alone' : 'specificForce alone',
      allowed: 'specificForce and forceExponent, or neither',
    })
  }
  faults.push(...repeatedNames(file.rows.map((row, at) => ({ name: row.name, path: ['rows', at, 'name'] }))))
  return { rows, faults }
}
