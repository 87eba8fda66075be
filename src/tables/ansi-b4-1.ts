import { z } from 'zod'
import { fields } from '../input/fields.ts'
import { formatNumber } from '../quantity/format-number.ts'
import type { Units } from '../quantity/kind.ts'
import { toUnit } from '../quantity/to-unit.ts'
import type { RowFault, RowsRead } from './row-fault.ts'
import { type SizeStep, stepFaults } from './size-step.ts'
import { rowRemarks, tableHead, words } from './table-schema.ts'

/** One preferred fit of ANSI/ASME B4.1 for one step of nominal sizes; all lengths in mm. */
export interface AnsiB41Row extends SizeStep {
  /** Class and step as written in the file's unit: `FN2 0.71-0.95`. */
  readonly name: string
  /** `FN2`, `LN1`, `LT3`, `LC6`. */
  readonly fitClass: string
  /** ISO zone of the hole, `H7`, and of the shaft where the standard gives one. */
  readonly holeZone: string
  readonly shaftZone?: string | undefined
  /** Deviations from nominal. */
  readonly hole: Deviations
  readonly shaft: Deviations
  readonly source: string
}

/** The classes of ANSI/ASME B4.1: running, locational clearance, transition and interference, force. */
const fitClasses = [
  ...['RC1', 'RC2', 'RC3', 'RC4', 'RC5', 'RC6', 'RC7', 'RC8', 'RC9'],
  ...['LC1', 'LC2', 'LC3', 'LC4', 'LC5', 'LC6', 'LC7', 'LC8', 'LC9', 'LC10', 'LC11'],
  ...['LT1', 'LT2', 'LT3', 'LT4', 'LT5', 'LT6'],
  ...['LN1', 'LN2', 'LN3'],
  ...['FN1', 'FN2', 'FN3', 'FN4', 'FN5'],
]

export interface Deviations {
  readonly lower: number
  readonly upper: number
}

/** Least and greatest clearance, mm, positive; interference is negative. */
export function clearanceLimits(fit: Pick<AnsiB41Row, 'hole' | 'shaft'>): {
  readonly least: number
  readonly most: number
} {
  return { least: fit.hole.lower - fit.shaft.upper, most: fit.hole.upper - fit.shaft.lower }
}

export function ansiB41Schema(units: Units) {
  const field = fields(units)
  const thou = z
    .number()
    .min(-1000)
    .max(1000)
    .transform((value) => (value * 25.4) / 1000)
  const deviations = z.strictObject({ lower: thou, upper: thou })
  const row = z.strictObject({
    class: field.choice(fitClasses, { says: 'Class of fit.' }),
    over: field.length({ says: 'Sizes over this.', min: 0, max: 10_000 }),
    upTo: field.length({ says: 'Sizes up to and including this.', above: 0, max: 10_000 }),
    holeZone: words('ISO zone of the hole.'),
    shaftZone: words('ISO zone of the shaft.').optional(),
    hole: deviations,
    shaft: deviations,
    ...rowRemarks,
  })
  return z.strictObject({ ...tableHead, valuesIn: z.literal('thousandths of an inch'), rows: z.array(row).min(1) })
}

type AnsiB41File = z.output<ReturnType<typeof ansiB41Schema>>

/** Faults: gaps or overlaps between the steps of one class, limits that are swapped. */
export function readAnsiB41(file: AnsiB41File): RowsRead<AnsiB41Row> {
  const write = (size: number) => formatNumber(toUnit('length', size, file.units), 4, { trim: true })
  const faults: RowFault[] = []
  const classes = new Map<string, { step: SizeStep; path: RowFault['path'] }[]>()
  const rows = file.rows.map((row, at): AnsiB41Row => {
    for (const part of ['hole', 'shaft'] as const) {
      if (row[part].lower < row[part].upper) continue
      faults.push({
        code: 'contradiction',
        path: ['rows', at, part],
        found: 'lower not below upper',
        allowed: 'lower below upper',
      })
    }
    const steps = classes.get(row.class) ?? []
    steps.push({ step: row, path: ['rows', at] })
    classes.set(row.class, steps)
    return {
      name: `${row.class} ${write(row.over)}-${write(row.upTo)}`,
      fitClass: row.class,
      over: row.over,
      upTo: row.upTo,
      holeZone: row.holeZone,
      shaftZone: row.shaftZone,
      hole: row.hole,
      shaft: row.shaft,
      source: row.source ?? file.source,
    }
  })
  for (const steps of classes.values()) {
    const ordered = steps.toSorted((a, b) => a.step.over - b.step.over)
    faults.push(...stepFaults(ordered, file.units))
  }
  return { rows, faults }
}
