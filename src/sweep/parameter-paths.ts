import type { z } from 'zod'
import { fieldMeta, isQuantityKind } from '../input/field-meta.ts'
import { constantsOf, elementOf, own, resolve, shapeOf, unwrap } from '../input/schema-tree.ts'

/** What stands at a path of a parameter set. */
export type PathKind = 'value' | 'list' | 'section' | 'decides'

/**
 * Every path of a parameter set that a sweep could name, with what stands there, in the order of the schema. Keys that
 * have no value are there too; of alternatives only the one that this set has. `decides`: a constant that tells
 * alternatives apart, and with it which other keys there are.
 */
export function parameterPaths(schema: z.ZodType, value: unknown): Map<string, PathKind> {
  const paths = new Map<string, PathKind>()
  walk(schema, value, [])
  return paths

  function walk(here: z.core.$ZodType, value: unknown, path: readonly string[]): void {
    const plain = resolve(here, value)
    const name = path.join('.')
    const element = elementOf(plain)
    if (element !== undefined) {
      paths.set(name, 'list')
      if (Array.isArray(value)) value.forEach((item, at) => void walk(element, item, [...path, String(at)]))
      return
    }
    const shape = fieldMeta(plain) === undefined ? shapeOf(plain) : undefined
    if (shape !== undefined) {
      if (path.length > 0) paths.set(name, 'section')
      for (const [key, inner] of Object.entries(shape)) walk(inner, own(value, key), [...path, key])
      return
    }
    const kind = fieldMeta(plain)?.kind
    const isValue = kind !== undefined && (isQuantityKind(kind) || ['count', 'choice', 'text', 'flag'].includes(kind))
    if (isValue) paths.set(name, 'value')
    else if (constantsOf(unwrap(plain)) !== undefined) paths.set(name, 'decides')
  }
}

/** The key, with its constants, of the alternative in which a section has this key; undefined where none has. */
export function alternativeWith(section: z.core.$ZodType, key: string): string | undefined {
  const { def } = (unwrap(section) as z.core.$ZodTypes)._zod
  if (def.type !== 'union') return undefined
  for (const option of def.options) {
    const shape = shapeOf(unwrap(option))
    if (shape === undefined || !Object.hasOwn(shape, key)) continue
    for (const [name, inner] of Object.entries(shape)) {
      const constants = fieldMeta(unwrap(inner)) === undefined ? constantsOf(inner) : undefined
      if (constants !== undefined) return `${name}: ${constants.map(String).join(' or ')}`
    }
  }
  return undefined
}
