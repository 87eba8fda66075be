import { z } from 'zod'
import { fields } from '../input/fields.ts'
import type { Units } from '../quantity/kind.ts'
import { absentName } from './absent-name.ts'
import { repeatedNames } from './repeated-names.ts'
import type { RowFault, RowsRead } from './row-fault.ts'
import { growingFaults, longestPiece, readPiece, type ShankPiece } from './shank-profile.ts'
import { rowRemarks, tableSchema, words } from './table-schema.ts'
import type { ThreadRow } from './threads.ts'

const shankKinds = ['straight', 'morse', 'r8', '7-24'] as const
export type ShankKind = (typeof shankKinds)[number]

/** A shank by which a head is held in the spindle; lengths in mm. */
export interface ShankRow {
  /** As the user writes it: `straight-20`, `straight-3/4`, `morse-2`, `r8`, `7-24-30`. */
  readonly name: string
  readonly kind: ShankKind
  /** Diameter at the gauge plane, or of a straight shank. */
  readonly gaugeDiameter: number
  /** Change of diameter per length, 7/24 for 7:24; undefined for a straight shank. */
  readonly taper?: number | undefined
  /** Length of the tapered part; undefined for a straight shank. */
  readonly taperLength?: number | undefined
  /** Diameter where the tapered part ends; of a straight shank, its diameter. */
  readonly smallDiameter: number
  /** From the gauge plane to the upper end. */
  readonly length: number
  /** What turns the shank: friction in the socket or collet, or keys of the spindle nose. */
  readonly drive: 'friction' | 'keys'
  /** Threads in which a drawbar for it is usual, names of rows of the threads table; empty for none. */
  readonly drawbarThreads: readonly string[]
  /** ISO 286 zone to which the diameter is ground, where there is one. */
  readonly tolerance?: string | undefined
  /** Pieces from the gauge plane (straight: the shoulder) upwards. */
  readonly profile: readonly ShankPiece[]
  readonly note?: string | undefined
  readonly source: string
}

export function shanksSchema(units: Units) {
  const field = fields(units)
  return tableSchema(
    z.strictObject({
      name: words('Name, such as straight-20.'),
      kind: field.choice(shankKinds, { says: 'Kind of shank.' }),
      drive: field.choice(['friction', 'keys'], { says: 'What turns it.' }),
      tolerance: words('ISO 286 zone of the diameter.').optional(),
      drawbarThreads: z.array(words('Name of a row of threads.json.')),
      profile: z
        .array(
          z.strictObject({
            from: field.length({ says: 'Lower diameter.', above: 0, max: 500 }),
            to: field.length({ says: 'Upper diameter.', above: 0, max: 500 }).optional(),
            length: field.length({ says: 'Length of the piece.', above: 0, max: longestPiece }).optional(),
            taper: words('Taper: ratio, inches per foot or included angle.').optional(),
          }),
        )
        .min(1),
      ...rowRemarks,
    }),
  )
}

type ShanksFile = z.output<ReturnType<typeof shanksSchema>>

/** Letters and grades of the ISO 286 table. */
const shaftZone = /^(?:js|[fghkmnprstux])(?:[5-9]|10|11)$/

/**
 * Rows with the profile worked out. Faults: a piece that leaves its shape open or contradicts itself, a profile that
 * gets thicker upwards, a straight shank with a cone or a tapered one without, a zone that ISO 286 has not, a drawbar
 * thread that is not in the threads table.
 */
export function readShanks(file: ShanksFile, threads: readonly ThreadRow[] | undefined): RowsRead<ShankRow> {
  const rows: ShankRow[] = []
  const faults: RowFault[] = []
  for (const [at, row] of file.rows.entries()) {
    for (const [which, name] of row.drawbarThreads.entries()) {
      if (threads === undefined || threads.some((thread) => thread.name === name)) continue
      faults.push(absentName(name, ['rows', at, 'drawbarThreads', which], 'threads', threads))
    }
    if (row.tolerance !== undefined && !shaftZone.test(row.tolerance)) {
      const allowed = 'a shaft zone of iso-286.json, such as h6'
      faults.push({ code: 'not-in-table', path: ['rows', at, 'tolerance'], allowed })
    }
    const path = ['rows', at, 'profile'] as const
    const reads = row.profile.map((written, which) => readPiece(written, [...path, which], file.units))
    const pieces = reads.flatMap((read) => (read.ok ? [read] : []))
    faults.push(...reads.flatMap((read) => (read.ok ? [] : [read.fault])))
    const profile = pieces.map((read) => read.piece)
    const first = pieces[0]
    if (first === undefined || pieces.length < reads.length) continue
    faults.push(...growingFaults(profile, path, file.units))
    const isStraight = row.kind === 'straight'
    const hasCone = pieces.some((read) => read.taper > 0)
    if (isStraight ? hasCone : first.taper === 0) {
      faults.push({
        code: 'contradiction',
        path: isStraight ? path : [...path, 0],
        found: isStraight ? 'a cone in a straight shank' : `a cylinder at the gauge plane of a ${row.kind} shank`,
        allowed: isStraight ? 'cylinders only' : 'a cone as the first piece',
      })
    }
    rows.push({
      name: row.name,
      kind: row.kind,
      gaugeDiameter: first.piece.from,
      taper: isStraight ? undefined : first.taper,
      taperLength: isStraight ? undefined : first.piece.length,
      smallDiameter: first.piece.to,
      length: profile.reduce((sum, piece) => sum + piece.length, 0),
      drive: row.drive,
      drawbarThreads: row.drawbarThreads,
      tolerance: row.tolerance,
      profile,
      note: row.note,
      source: row.source ?? file.source,
    })
  }
  faults.push(...repeatedNames(file.rows.map((row, at) => ({ name: row.name, path: ['rows', at, 'name'] }))))
  return { rows, faults }
}
