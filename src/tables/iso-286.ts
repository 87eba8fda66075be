import { z } from 'zod'
import { fields } from '../input/fields.ts'
import { formatNumber } from '../quantity/format-number.ts'
import type { Units } from '../quantity/kind.ts'
import { toUnit } from '../quantity/to-unit.ts'
import type { RowFault, RowsRead } from './row-fault.ts'
import { type SizeStep, stepFaults } from './size-step.ts'
import { rowRemarks, tableHead } from './table-schema.ts'

/** One step of nominal sizes of ISO 286; all lengths in mm. */
export interface Iso286Row extends SizeStep {
  /** The step as written in the file's unit: `18-30`. */
  readonly name: string
  /** Width of the tolerance by grade. */
  readonly grades: Readonly<Record<ToleranceGrade, number>>
  /**
   * Fundamental deviation of shafts: upper deviation for f, g, h; lower for k to x. `k` holds for IT4 to IT7 and is 0
   * for other grades. `t` is not defined up to 24 mm.
   */
  readonly shaft: Readonly<Record<Exclude<ShaftLetter, 't'>, number>> & { readonly t?: number | undefined }
  readonly source: string
}

const toleranceGrades = ['IT5', 'IT6', 'IT7', 'IT8', 'IT9', 'IT10', 'IT11'] as const
export type ToleranceGrade = (typeof toleranceGrades)[number]

/** In the order in which shafts get larger. */
const shaftLetters = ['f', 'g', 'h', 'k', 'm', 'n', 'p', 'r', 's', 't', 'u', 'x'] as const
export type ShaftLetter = (typeof shaftLetters)[number]

export function iso286Schema(units: Units) {
  const field = fields(units)
  const micrometres = (schema: z.ZodNumber) => schema.transform((value) => value / 1000)
  const grade = micrometres(z.number().positive().max(10_000))
  const above = micrometres(z.number().min(0).max(10_000))
  const below = micrometres(z.number().max(0).min(-10_000))
  const row = z.strictObject({
    over: field.length({ says: 'Sizes over this.', min: 0, max: 10_000 }),
    upTo: field.length({ says: 'Sizes up to and including this.', above: 0, max: 10_000 }),
    grades: z.strictObject({
      IT5: grade,
      IT6: grade,
      IT7: grade,
      IT8: grade,
      IT9: grade,
      IT10: grade,
      IT11: grade,
    }),
    shaft: z.strictObject({
      f: below,
      g: below,
      h: below,
      k: above,
      m: above,
      n: above,
      p: above,
      r: above,
      s: above,
      t: above.optional(),
      u: above,
      x: above,
    }),
    ...rowRemarks,
  })
  return z.strictObject({ ...tableHead, valuesIn: z.literal('micrometre'), rows: z.array(row).min(1) })
}

type Iso286File = z.output<ReturnType<typeof iso286Schema>>

/** Faults: gaps or overlaps between steps, a coarser grade that is no wider, a shaft smaller than the letter before it. */
export function readIso286(file: Iso286File): RowsRead<Iso286Row> {
  const write = (size: number) => formatNumber(toUnit('length', size, file.units), 4, { trim: true })
  const rows = file.rows.map(({ over, upTo, grades, shaft, source }) => ({
    name: `${write(over)}-${write(upTo)}`,
    over,
    upTo,
    grades,
    shaft,
    source: source ?? file.source,
  }))
  const faults: RowFault[] = [
    ...stepFaults(
      rows.map((step, at) => ({ step, path: ['rows', at] })),
      file.units,
    ),
  ]
  const figure = (length: number) => formatNumber(length * 1000, 3, { trim: true })
  for (const [at, { grades, shaft }] of rows.entries()) {
    const letters = shaftLetters.flatMap((letter) => {
      const deviation = shaft[letter]
      return deviation === undefined ? [] : [{ letter, deviation }]
    })
    for (const [which, { letter, deviation }] of letters.entries()) {
      const before = letters[which - 1]
      if (before === undefined || deviation >= before.deviation) continue
      const allowed = `no less than ${before.letter}, ${figure(before.deviation)}`
      faults.push({ code: 'contradiction', path: ['rows', at, 'shaft', letter], allowed })
    }
    for (const [which, grade] of toleranceGrades.entries()) {
      const finer = toleranceGrades[which - 1]
      if (finer === undefined || grades[grade] > grades[finer]) continue
      faults.push({
        code: 'contradiction',
        path: ['rows', at, 'grades', grade],
        allowed: `more than ${finer}, ${figure(grades[finer])}`,
      })
    }
  }
  return { rows, faults }
}
