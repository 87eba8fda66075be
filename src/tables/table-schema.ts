import { z } from 'zod'
import { unitsField } from '../input/file-units.ts'
import { textField } from '../input/plain-field.ts'

/** Longest source or note, in characters: room for every figure of a row to name where it comes from. */
const longestRemark = 1000

/** A name or title: one line that says something. */
export function words(says: string) {
  return textField({ says })
}

function remark(says: string) {
  return textField({ says, max: longestRemark })
}

/** What every row may carry besides its figures: its own source where it differs from the file's, and a remark. */
export const rowRemarks = {
  source: remark('Where the figures of this row come from.').optional(),
  note: remark('What whoever edits this row should know.').optional(),
}

/** The head that every table has; `units` is the unit of bare lengths, and any length may be written with its own. */
export const tableHead = {
  title: words('What the table is.'),
  source: remark('Where the figures come from.'),
  units: unitsField,
  note: remark('What whoever edits this table should know.').optional(),
}

/** A table: head and at least one row. */
export function tableSchema<Row extends z.ZodType>(row: Row) {
  return z.strictObject({ ...tableHead, rows: z.array(row).min(1) })
}
