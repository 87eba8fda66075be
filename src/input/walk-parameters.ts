import type { z } from 'zod'
import type { Units } from '../quantity/kind.ts'
import { unitSymbol } from '../quantity/unit-table.ts'
import { descriptionOf, fieldMeta, isQuantityKind, type ParameterKind } from './field-meta.ts'
import type { DocumentPath, ReadDocument } from './read-document.ts'
import { elementOf, own, resolve, shapeOf } from './schema-tree.ts'

/** One parameter with its value and where that came from. */
export interface ParameterRow {
  /** Dotted: `screws.count`; a list of plain values is one row, sections in a list have their index: `bits.0.width`. */
  readonly path: string
  readonly kind: ParameterKind
  /** Of the items, where the kind is `list`. */
  readonly itemKind?: ParameterKind
  /** Internal units. */
  readonly value: unknown
  readonly origin: 'given' | 'default' | 'rule of thumb' | 'derived'
  readonly says: string
  /** Symbol of the unit in files with these units, `''` where there is none. */
  readonly unit: string
}

/**
 * Every parameter that has a value, in the order of the schema. `value` is the checked value, later with what a
 * further step derived; `document` tells what the user wrote.
 */
export function walkParameters(
  schema: z.ZodType,
  document: Pick<ReadDocument, 'has'>,
  value: unknown,
  units: Units,
): ParameterRow[] {
  return rowsAt(schema, value, [])

  function rowsAt(schema: z.core.$ZodType, value: unknown, path: DocumentPath): ParameterRow[] {
    if (value === undefined) return []
    const plain = resolve(schema, value)
    const meta = fieldMeta(plain)
    const element = elementOf(plain)
    if (element !== undefined && Array.isArray(value)) {
      const inner = resolve(element, value[0])
      if (shapeOf(inner) !== undefined) return value.flatMap((item, index) => rowsAt(element, item, [...path, index]))
      const itemKind = fieldMeta(inner)?.kind ?? plainKind(inner)
      return [{ ...row(schema, plain, 'list', value, path), unit: symbol(itemKind), itemKind }]
    }
    const shape = meta === undefined ? shapeOf(plain) : undefined
    if (shape !== undefined) {
      return Object.entries(shape).flatMap(([key, inner]) => rowsAt(inner, own(value, key), [...path, key]))
    }
    return [row(schema, plain, meta?.kind ?? plainKind(plain), value, path)]
  }

  function row(
    schema: z.core.$ZodType,
    plain: z.core.$ZodType,
    kind: ParameterKind,
    value: unknown,
    path: DocumentPath,
  ): ParameterRow {
    const meta = fieldMeta(plain)
    const without = meta?.derived === true ? 'derived' : meta?.ruleOfThumb === true ? 'rule of thumb' : 'default'
    return {
      path: path.join('.'),
      kind,
      value,
      origin: document.has(path) ? 'given' : without,
      says: descriptionOf(plain) ?? descriptionOf(schema) ?? '',
      unit: symbol(kind),
    }
  }

  function symbol(kind: ParameterKind): string {
    return isQuantityKind(kind) ? unitSymbol(kind, units) : ''
  }
}

/** The kind of a plain zod schema, such as the constant that tells the branches of a union apart. */
function plainKind(schema: z.core.$ZodType): ParameterKind {
  switch ((schema as z.core.$ZodTypes)._zod.def.type) {
    case 'number':
      return 'count'
    case 'boolean':
      return 'flag'
    case 'literal':
    case 'enum':
      return 'choice'
    case 'array':
      return 'list'
    default:
      return 'text'
  }
}
