import { describe, expect, it } from 'vitest'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { toJsonSchema } from '../../src/input/json-schema.ts'

interface Schema {
  readonly description?: string
  readonly properties?: Readonly<Record<string, Schema>>
  readonly oneOf?: readonly Schema[]
  readonly anyOf?: readonly Schema[]
  readonly items?: Schema
}

/** Everything with a name in a parameter file, by path; the kinds of one section share its name. */
function named(schema: Schema, path: string): (readonly [path: string, description: string | undefined])[] {
  const inner = [
    ...Object.entries(schema.properties ?? {}).map(([key, s]) => [`${path}.${key}`, s] as const),
    ...(schema.items ? [[`${path}[]`, schema.items] as const] : []),
  ]
  return [
    ...inner.flatMap(([at, s]) => [[at, s.description] as const, ...named(s, at)]),
    ...[...(schema.oneOf ?? []), ...(schema.anyOf ?? [])].flatMap((branch) => named(branch, path)),
  ]
}

describe('the schema that an editor shows', () => {
  it.each(['mm', 'in'] as const)('describes every section and every value, in %s', (units) => {
    const all = named(toJsonSchema(flyCutterHead.schema(units), '') as Schema, '')
    expect(all.length).toBeGreaterThan(150)
    expect(all.filter(([, description]) => !description?.endsWith('.')).map(([path]) => path)).toEqual([])
  })
})
