import { z } from 'zod'
import type { FieldMeta, IssueProblem } from './field-meta.ts'

/** What every field builder takes. */
export interface FieldOptions {
  /** One sentence that tells the user what this is. */
  readonly says: string
  readonly title?: string
  /** May be left out, and then has no value. */
  readonly optional?: true
  /** May be left out, and is then worked out by a later step. */
  readonly derived?: true
  /** The default is a rule of thumb. */
  readonly rule?: boolean
}

/** The schema a builder gives for its options: with a default, optional, or required. */
export type FieldOf<Schema extends z.ZodType, Options> = Options extends { readonly default: unknown }
  ? z.ZodPrefault<Schema>
  : Options extends { readonly optional: true } | { readonly derived: true }
    ? z.ZodOptional<Schema>
    : Schema

/** A value as read, or what is wrong with it. */
export type FieldRead<Out> = { readonly ok: true; readonly value: Out } | ({ readonly ok: false } & IssueProblem)

/**
 * A zod schema from a reading function. One custom issue carries the problem, so that the words are ours and zod's
 * own grammar of unions and transforms never reaches the user. A missing key (`undefined`) and a key without a
 * value (`null`) are answered here, once for all kinds.
 */
export function makeField<Out, In>(
  read: (written: unknown) => FieldRead<Out>,
  allowed: string,
  meta: FieldMeta,
): z.ZodType<Out, In> {
  const schema = z
    .unknown()
    .transform((written, context): Out => {
      const result = written === undefined || written === null ? absent(written, allowed, meta) : read(written)
      if (result.ok) return result.value
      const { ok: _, ...problem } = result
      context.addIssue({ code: 'custom', message: problem.allowed, params: { problem } })
      return z.NEVER
    })
    .meta({ ...meta })
  // The input is typed for those who write parameter sets in code; what comes from a file is unknown and checked.
  return schema as unknown as z.ZodType<Out, In>
}

/** Wraps a schema as its options say. The default is written as a user would write it and read like the rest. */
export function withPresence<Schema extends z.ZodType, Options extends FieldOptions & { readonly default?: unknown }>(
  schema: Schema,
  options: Options,
): FieldOf<Schema, Options> {
  if (options.default !== undefined) {
    const read = schema.safeParse(options.default)
    if (!read.success)
      throw new RangeError(`the default ${String(options.default)} is not allowed: ${read.error.message}`)
    return schema.prefault(options.default as never) as unknown as FieldOf<Schema, Options>
  }
  const mayMiss = options.optional === true || options.derived === true
  return (mayMiss ? schema.optional() : schema) as unknown as FieldOf<Schema, Options>
}

/** The meta common to all kinds. */
export function metaOf(
  kind: FieldMeta['kind'],
  unit: string,
  options: FieldOptions,
  json: FieldMeta['json'],
): FieldMeta {
  return {
    kind,
    unit,
    description: options.says,
    ...(options.title === undefined ? {} : { title: options.title }),
    ruleOfThumb: options.rule === true,
    derived: options.derived === true,
    json,
  }
}

function absent(written: null | undefined, allowed: string, meta: FieldMeta): FieldRead<never> {
  return written === undefined
    ? { ok: false, code: 'missing-key', found: 'nothing', allowed, remedy: `add it: ${meta.description}` }
    : { ok: false, code: 'wrong-kind', found: 'nothing', allowed, remedy: 'write a value, or leave the key out' }
}
