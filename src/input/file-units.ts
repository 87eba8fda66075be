import { z } from 'zod'
import type { Units } from '../quantity/kind.ts'
import { checkDocument } from './check-document.ts'
import { choiceField } from './plain-field.ts'
import type { Result } from './problem.ts'
import type { ReadDocument } from './read-document.ts'

/** What else is written for the two, too far from them in letters to be told by those. */
export const unitsMeant: Readonly<Record<string, Units>> = {
  inch: 'in',
  inches: 'in',
  '"': 'in',
  imperial: 'in',
  thou: 'in',
  cm: 'mm',
  metric: 'mm',
}

/**
 * The schema of the `units` key, the same in every family. It has no default: a bare 1 is 1 mm or 25.4 mm, and
 * whoever writes the file knows which.
 */
export const unitsField = choiceField(['mm', 'in'], {
  says: 'Unit of bare lengths in this file, mm or in.',
  meaning: unitsMeant,
})

/** Reads the `units` key of a file before anything else in it can be understood. */
export function fileUnits(document: ReadDocument, file: string): Result<Units> {
  const result = checkDocument(document, file, z.looseObject({ units: unitsField }))
  return result.ok ? { ok: true, value: result.value.units } : result
}
