import type { z } from 'zod'
import { fieldMeta } from './field-meta.ts'

type Schema = z.core.$ZodType

/** The schema below optional, default and the like; a field of ours stays whole, other pipes show their input. */
export function unwrap(schema: Schema): Schema {
  let current = schema
  // Schemas are finite, but `lazy` may turn in a circle.
  for (let turns = 0; turns < 64; turns++) {
    if (fieldMeta(current) !== undefined) return current
    const { def } = (current as z.core.$ZodTypes)._zod
    switch (def.type) {
      case 'optional':
      case 'nullable':
      case 'default':
      case 'prefault':
      case 'nonoptional':
      case 'readonly':
      case 'catch':
        current = def.innerType
        break
      case 'pipe':
        current = isTransform(def.in) ? def.out : def.in
        break
      case 'lazy':
        current = def.getter()
        break
      default:
        return current
    }
  }
  return current
}

/** Keys of an object schema with their schemas; undefined for anything else. */
export function shapeOf(schema: Schema): Readonly<Record<string, Schema>> | undefined {
  const { def } = (schema as z.core.$ZodTypes)._zod
  return def.type === 'object' ? def.shape : undefined
}

/** Schema of the items of a list; undefined for anything else. */
export function elementOf(schema: Schema): Schema | undefined {
  const { def } = (schema as z.core.$ZodTypes)._zod
  return def.type === 'array' ? def.element : undefined
}

/**
 * The unwrapped schema, and of a union the branch that was meant: the one whose constant keys agree with the value,
 * else the one that shares most keys with it. Values may be raw or checked; constants are the same in both.
 */
export function resolve(schema: Schema, value: unknown): Schema {
  const plain = unwrap(schema)
  if (fieldMeta(plain) !== undefined) return plain
  const { def } = (plain as z.core.$ZodTypes)._zod
  if (def.type !== 'union') return plain
  const branches = def.options.map((option) => resolve(option, value))
  return branches.reduce((best, branch) => (likeness(branch, value) > likeness(best, value) ? branch : best))
}

/** The schema at a path of a document, as far as the schema goes; undefined beyond it. */
export function schemaAt(schema: Schema, path: readonly PropertyKey[], value: unknown): Schema | undefined {
  let current: Schema | undefined = schema
  let here = value
  for (const step of path) {
    if (current === undefined) return undefined
    const plain = resolve(current, here)
    const shape = shapeOf(plain)
    current = shape === undefined ? (elementOf(plain) ?? valueTypeOf(plain)) : own(shape, step)
    here = own(here, step)
  }
  return current
}

/** A property of the value itself, never one it inherits. */
export function own<Value>(value: Readonly<Record<string, Value>>, key: PropertyKey): Value | undefined
export function own(value: unknown, key: PropertyKey): unknown
export function own(value: unknown, key: PropertyKey): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined
  return (value as Record<PropertyKey, unknown>)[key]
}

function valueTypeOf(schema: Schema): Schema | undefined {
  const { def } = (schema as z.core.$ZodTypes)._zod
  return def.type === 'record' ? def.valueType : undefined
}

/** How well a branch fits a value: an agreeing constant counts most, a contradicting one rules it out. */
function likeness(branch: Schema, value: unknown): number {
  const shape = shapeOf(branch)
  if (shape === undefined) return elementOf(branch) !== undefined && Array.isArray(value) ? 0.5 : 0
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return -1
  let score = 0
  for (const [key, field] of Object.entries(shape)) {
    if (!Object.hasOwn(value, key)) continue
    const constants = constantsOf(field)
    if (constants === undefined) score += 1
    else score += constants.includes(own(value, key)) ? 1000 : -1000
  }
  return score
}

/** The values a literal or enumeration accepts; undefined for other schemas. */
export function constantsOf(schema: Schema): readonly unknown[] | undefined {
  const { def } = (unwrap(schema) as z.core.$ZodTypes)._zod
  if (def.type === 'literal') return def.values
  return def.type === 'enum' ? Object.values(def.entries) : undefined
}

function isTransform(schema: Schema): boolean {
  return (schema as z.core.$ZodTypes)._zod.def.type === 'transform'
}
