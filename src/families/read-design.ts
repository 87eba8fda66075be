import { checkDocument } from '../input/check-document.ts'
import { fileUnits } from '../input/file-units.ts'
import { nearest } from '../input/nearest.ts'
import type { Result } from '../input/problem.ts'
import { type ReadDocument, readDocument } from '../input/read-document.ts'
import { type ParameterRow, walkParameters } from '../input/walk-parameters.ts'
import type { Tables } from '../tables/read-tables.ts'
import { type AnyFamily, type CommonParameters, type Design, type Family, located } from './family.ts'

/** A parameter file that holds together, and the design that follows from it. */
export interface ReadDesign<P extends CommonParameters, D extends Design> {
  readonly family: Family<P, D>
  readonly design: D
  /** Every parameter with its value and where that came from. */
  readonly rows: readonly ParameterRow[]
}

/** Reads a parameter file of a known family. `file` is only named in problems. */
export function readDesign<P extends CommonParameters, D extends Design>(
  family: Family<P, D>,
  text: string,
  file: string,
  tables: Tables,
): Result<ReadDesign<P, D>> {
  const document = readDocument(text, file)
  return document.ok ? designOf(family, document.value, file, tables) : document
}

/** Reads a parameter file of whichever of the families it names. */
export function readAnyDesign(
  families: readonly AnyFamily[],
  text: string,
  file: string,
  tables: Tables,
): Result<ReadDesign<CommonParameters, Design>> {
  const document = readDocument(text, file)
  if (!document.ok) return document
  const name = (document.value.raw as { family?: unknown }).family
  const family = families.find((f) => f.name === name)
  if (family) return designOf(family, document.value, file, tables)
  const names = families.map((f) => f.name)
  const meant = typeof name === 'string' ? nearest(name, names) : undefined
  return {
    ok: false,
    problems: [
      {
        code: name === undefined ? 'missing-key' : 'unknown-choice',
        where: { file, path: 'family', ...document.value.locate(['family'], 'value') },
        found: document.value.writtenAt(['family']),
        allowed: names.join(', '),
        ...(meant !== undefined && { remedy: `write ${meant}` }),
      },
    ],
  }
}

function designOf<P extends CommonParameters, D extends Design>(
  family: Family<P, D>,
  document: ReadDocument,
  file: string,
  tables: Tables,
): Result<ReadDesign<P, D>> {
  const units = fileUnits(document, file)
  // Without units no length can be read, but everything else that is wrong can still be told.
  const schema = family.schema(units.ok ? units.value : 'mm')
  const parameters = checkDocument(document, file, schema)
  if (!parameters.ok) return parameters
  if (!units.ok) return units
  const design = family.build(parameters.value, tables)
  if (!design.ok) {
    const locate = (path: string) => document.locate(path.split('.'), 'value')
    return { ok: false, problems: located(design.problems, file, locate) }
  }
  const rows = walkParameters(schema, document, family.filledIn(design.value), units.value)
  return { ok: true, value: { family, design: design.value, rows } }
}
