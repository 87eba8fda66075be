import { globalRegistry, type z } from 'zod'
import { type QuantityKind, quantityKinds } from '../quantity/kind.ts'
import type { ProblemCode } from './problem.ts'

export type ParameterKind = QuantityKind | 'count' | 'choice' | 'text' | 'flag' | 'list'

/** What a field builder writes beside its schema, so that one source serves check, editor schema and report. */
export interface FieldMeta {
  readonly kind: ParameterKind
  /** Symbol of the unit in the file, `''` where there is none. */
  readonly unit: string
  /** One sentence for the user. */
  readonly description: string
  readonly title?: string
  /** The default is a rule of thumb, not a fact. */
  readonly ruleOfThumb: boolean
  /** Worked out by a later step when it is left out. */
  readonly derived: boolean
  /** What an editor may check: JSON Schema keywords for the value as written. */
  readonly json: Readonly<Record<string, unknown>>
}

/** The meta of a schema made by a field builder; undefined for any other schema. Wrappers are not looked through. */
export function fieldMeta(schema: z.core.$ZodType): FieldMeta | undefined {
  const meta = globalRegistry.get(schema) as Partial<FieldMeta> | undefined
  if (meta?.kind === undefined || meta.json === undefined) return undefined
  return meta as FieldMeta
}

/** The sentence that describes a schema of any make, where it has one. */
export function descriptionOf(schema: z.core.$ZodType): string | undefined {
  return globalRegistry.get(schema)?.description
}

/** True for the kinds that have a unit and a number. */
export function isQuantityKind(kind: ParameterKind): kind is QuantityKind {
  return (quantityKinds as readonly string[]).includes(kind)
}

/**
 * What a schema says is wrong, in `params.problem` of a custom zod issue; `checkDocument` adds the place. Without
 * `found` the source text at that place is quoted.
 */
export interface IssueProblem {
  readonly code: ProblemCode
  readonly allowed: string
  readonly found?: string
  readonly remedy?: string
  /** What stands there has stood before: said behind the quotation. */
  readonly isRepeat?: true
}
