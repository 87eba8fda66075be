import { z } from 'zod'
import { fields } from '../input/fields.ts'
import type { Units } from '../quantity/kind.ts'
import { absentName } from './absent-name.ts'
import type { MaterialRow } from './materials.ts'
import { repeatedNames } from './repeated-names.ts'
import type { RowFault, RowsRead } from './row-fault.ts'
import { rowRemarks, tableSchema, words } from './table-schema.ts'
import type { ThreadRow } from './threads.ts'

/** A hexagon socket set screw; lengths in mm, torque in N·mm, force in N. Undefined: no published figure. */
export interface SetScrewRow {
  /** Name of its thread: `M6`, `1/4-20`. */
  readonly name: string
  readonly system: 'metric' | 'inch'
  readonly majorDiameter: number
  readonly pitch: number
  /** Across flats of the hexagon key. */
  readonly keySize: number
  /** Least depth to which the key must enter. */
  readonly keyEngagement?: number | undefined
  readonly flatPointDiameter: number
  /** Lowest published tightening torque. */
  readonly seatingTorque?: number | undefined
  /** Axial force under which a cup point slips on a steel shaft, without a safety factor. */
  readonly cupHoldingForce?: number | undefined
  /** Standard lengths, shortest first. */
  readonly lengths: readonly number[]
  /** Name of a row of the materials table. */
  readonly material: string
  readonly source: string
}

export function setScrewsSchema(units: Units) {
  const field = fields(units)
  return tableSchema(
    z.strictObject({
      threads: z.array(words('Name of a row of threads.json.')).min(1),
      material: words('Name of a row of materials.json.'),
      keySize: field.length({ says: 'Hexagon key, across flats.', above: 0, max: 100 }),
      keyEngagement: field.length({ says: 'Least engagement of the key.', above: 0, max: 100 }).optional(),
      flatPointDiameter: field.length({ says: 'Diameter of the flat point.', above: 0, max: 100 }),
      seatingTorque: field.torque({ says: 'Lowest published seating torque.', above: 0, max: 1e6 }).optional(),
      cupHoldingForce: field.force({ says: 'Axial holding force of a cup point.', above: 0, max: 1e6 }).optional(),
      lengths: z.array(field.length({ says: 'Standard length.', above: 0, max: 500 })).min(1),
      ...rowRemarks,
    }),
  )
}

type SetScrewsFile = z.output<ReturnType<typeof setScrewsSchema>>

/**
 * One row for each thread of each size; diameter and pitch come from the threads table. Faults: a thread or
 * material that is not in its table, a key or point wider than the screw. Without threads (their table is broken) there
 * are no rows, but what else is wrong is still found.
 */
export function readSetScrews(
  file: SetScrewsFile,
  threads: readonly ThreadRow[] | undefined,
  materials: readonly MaterialRow[] | undefined,
): RowsRead<SetScrewRow> {
  const rows: SetScrewRow[] = []
  const faults: RowFault[] = []
  const names: { name: string; path: RowFault['path'] }[] = []
  for (const [at, row] of file.rows.entries()) {
    if (materials?.some((material) => material.name === row.material) === false) {
      faults.push(absentName(row.material, ['rows', at, 'material'], 'materials', materials))
    }
    for (const [which, name] of row.threads.entries()) {
      const path = ['rows', at, 'threads', which]
      names.push({ name, path })
      if (threads === undefined) continue
      const thread = threads.find((candidate) => candidate.name === name)
      if (thread === undefined) {
        faults.push(absentName(name, path, 'threads', threads))
        continue
      }
      for (const key of ['keySize', 'flatPointDiameter'] as const) {
        if (row[key] < thread.majorDiameter) continue
        faults.push({
          code: 'contradiction',
          path: ['rows', at, key],
          found: `${key} not below the major diameter of ${name}`,
          allowed: 'a size below the major diameter',
        })
      }
      rows.push({
        name,
        system: thread.system,
        majorDiameter: thread.majorDiameter,
        pitch: thread.pitch,
        keySize: row.keySize,
        keyEngagement: row.keyEngagement,
        flatPointDiameter: row.flatPointDiameter,
        seatingTorque: row.seatingTorque,
        cupHoldingForce: row.cupHoldingForce,
        lengths: row.lengths.toSorted((a, b) => a - b),
        material: row.material,
        source: row.source ?? file.source,
      })
    }
  }
  faults.push(...repeatedNames(names))
  return { rows, faults }
}
