import { z } from 'zod'
import { fields } from '../input/fields.ts'
import { formatLength } from '../quantity/format-length.ts'
import type { Units } from '../quantity/kind.ts'
import { repeatedNames } from './repeated-names.ts'
import type { RowFault, RowsRead } from './row-fault.ts'
import { rowRemarks, tableSchema, words } from './table-schema.ts'
import { minorDiameter, type ThreadSize } from './thread-geometry.ts'

/** A screw thread and the drill for tapping it; lengths in mm. */
export interface ThreadRow extends ThreadSize {
  /** As it is written on a drawing: `M6`, `1/4-20`. */
  readonly name: string
  readonly series: ThreadSeries
  readonly tapDrill: number
  /** What the drill is called where it is not called by its size in mm: `No.7`, `F`, `27/64`. */
  readonly tapDrillName?: string | undefined
  readonly source: string
}

const threadSeries = ['metric coarse', 'metric fine', 'UNC', 'UNF', 'UNEF'] as const
export type ThreadSeries = (typeof threadSeries)[number]

export function threadsSchema(units: Units) {
  const field = fields(units)
  return tableSchema(
    z.strictObject({
      name: words('Name as written on a drawing.'),
      series: field.choice(threadSeries, { says: 'Thread series.' }),
      majorDiameter: field.length({ says: 'Major diameter.', above: 0, max: 500 }),
      pitch: field.length({ says: 'Pitch.', above: 0, max: 50 }).optional(),
      threadsPerInch: z.number().min(0.5).max(200).optional(),
      tapDrill: field.length({ says: 'Diameter of the tap drill.', above: 0, max: 500 }),
      tapDrillName: words('What the drill is called.').optional(),
      ...rowRemarks,
    }),
  )
}

type ThreadsFile = z.output<ReturnType<typeof threadsSchema>>

/** Rows with the pitch worked out; faults: pitch given twice or not at all, a tap drill that leaves no thread. */
export function readThreads(file: ThreadsFile): RowsRead<ThreadRow> {
  const rows: ThreadRow[] = []
  const faults: RowFault[] = []
  for (const [at, row] of file.rows.entries()) {
    const path = ['rows', at] as const
    const pitch = row.pitch ?? (row.threadsPerInch === undefined ? undefined : 25.4 / row.threadsPerInch)
    if (pitch === undefined) {
      faults.push({
        code: 'missing-key',
        path,
        found: `${row.name} without a pitch`,
        allowed: 'pitch or threadsPerInch',
      })
      continue
    }
    if (row.pitch !== undefined && row.threadsPerInch !== undefined) {
      faults.push({
        code: 'contradiction',
        path: [...path, 'threadsPerInch'],
        found: 'pitch and threadsPerInch',
        allowed: 'one of the two',
        remedy: 'remove threadsPerInch',
      })
      continue
    }
    const thread: ThreadRow = {
      name: row.name,
      system: row.series.startsWith('metric') ? 'metric' : 'inch',
      series: row.series,
      majorDiameter: row.majorDiameter,
      pitch,
      tapDrill: row.tapDrill,
      tapDrillName: row.tapDrillName,
      source: row.source ?? file.source,
    }
    rows.push(thread)
    faults.push(...drillFaults(thread, path, file.units))
  }
  faults.push(...repeatedNames(file.rows.map((row, at) => ({ name: row.name, path: ['rows', at, 'name'] }))))
  return { rows, faults }
}

/** A hole below the basic minor diameter jams the tap, one at the major diameter leaves nothing to cut. */
function drillFaults(thread: ThreadRow, path: RowFault['path'], units: Units): readonly RowFault[] {
  const minor = minorDiameter(thread)
  const write = (length: number) => formatLength(length, units)
  if (minor <= 0) {
    return [
      {
        code: 'contradiction',
        path,
        found: `pitch ${write(thread.pitch)} at major diameter ${write(thread.majorDiameter)}`,
        allowed: 'a pitch that leaves a core',
      },
    ]
  }
  if (thread.tapDrill >= minor && thread.tapDrill < thread.majorDiameter) return []
  return [
    {
      code: 'contradiction',
      path: [...path, 'tapDrill'],
      allowed: `at least the minor diameter ${write(minor)} and below the major diameter ${write(thread.majorDiameter)}`,
    },
  ]
}
