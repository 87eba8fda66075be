import type { z } from 'zod'
import { constantsOf, own, resolve, schemaAt, shapeOf } from './schema-tree.ts'

/**
 * Whether the value at the path says which of several kinds its section is: `fit.kind`. Another word there makes the
 * rest of the section another one.
 */
export function namesBranch(schema: z.core.$ZodType, path: readonly string[], parameters: unknown): boolean {
  const found = schemaAt(schema, path, parameters)
  return found !== undefined && (found as z.core.$ZodTypes)._zod.def.type === 'literal'
}

/**
 * A section in the kind that `word` names: what that kind has too is kept, the rest takes its defaults, and what it has no
 * value for is left out. Values are checked ones, in internal units.
 */
export function inOtherBranch(
  schema: z.core.$ZodType,
  section: Readonly<Record<string, unknown>>,
  key: string,
  word: string,
): Record<string, unknown> {
  const shape = shapeOf(resolve(schema, { [key]: word })) ?? {}
  const made: Record<string, unknown> = {}
  for (const [name, field] of Object.entries(shape)) {
    const words = constantsOf(field)
    const kept = own(section, name)
    const value = name === key ? word : kept !== undefined ? kept : words?.length === 1 ? words[0] : defaultOf(field)
    if (value !== undefined) made[name] = value
  }
  return made
}

function defaultOf(field: z.core.$ZodType): unknown {
  const read = (field as z.ZodType).safeParse(undefined)
  return read.success ? read.data : undefined
}
