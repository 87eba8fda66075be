import type { z } from 'zod'
import { formatQuantity } from '../quantity/format-quantity.ts'
import type { QuantityKind, Units } from '../quantity/kind.ts'
import { parseQuantity } from '../quantity/parse-quantity.ts'
import { allowedQuantity, quantityExamples } from '../quantity/quantity-examples.ts'
import { toUnit } from '../quantity/to-unit.ts'
import { unitSymbol } from '../quantity/unit-table.ts'
import { type FieldOf, type FieldOptions, type FieldRead, makeField, metaOf, withPresence } from './make-field.ts'

/** Limits are in the internal unit of the kind. */
export interface QuantityOptions extends FieldOptions {
  readonly min?: number
  readonly max?: number
  /** Exclusive limits. */
  readonly above?: number
  readonly below?: number
  /** With `min: 0`, the smallest size other than 0, which stands for none: a finer one could be neither made nor drawn. */
  readonly finest?: number
  /** As the trade writes it: `0.02 mm`. A bare number takes the file's unit. */
  readonly default?: string | number
  /** What an inch shop would write in its place. */
  readonly defaultIn?: string
}

/** A quantity as a user writes it, number or text; out comes the internal unit. */
export type QuantityField = z.ZodType<number, number | string>

export function quantityField<const Options extends QuantityOptions>(
  kind: QuantityKind,
  units: Units,
  given: Options,
): FieldOf<QuantityField, Options> {
  const options = units === 'in' && given.defaultIn !== undefined ? { ...given, default: given.defaultIn } : given
  const limits = sayLimits(kind, units, options)
  const allowed = allowedQuantity(kind, units)
  const read = (written: unknown): FieldRead<number> => {
    if (typeof written !== 'number' && typeof written !== 'string') return { ok: false, code: 'wrong-kind', allowed }
    const result = parseQuantity(kind, written, units)
    if (!result.ok) {
      const { code, remedy } = result
      return { ok: false, code, allowed: result.allowed, ...(remedy === undefined ? {} : { remedy }) }
    }
    if (isWithin(result.value, options)) return { ok: true, value: result.value }
    return { ok: false, code: 'out-of-range', allowed: limits }
  }
  const json = {
    type: ['number', 'string'],
    ...jsonLimits(kind, units, options),
    examples: examplesFor(kind, units, options),
  }
  const expected = limits === '' ? allowed : `${allowed}, ${limits}`
  return withPresence(makeField(read, expected, metaOf(kind, unitSymbol(kind, units), options, json)), options)
}

/** A limit is met although a conversion left its last digit a little off; relative. */
const slack = 1e-12

function isWithin(value: number, { min, max, above, below, finest }: QuantityOptions): boolean {
  if (finest !== undefined && value !== 0 && Math.abs(value) < finest - finest * slack) return false
  if (min !== undefined && value < min - Math.abs(min) * slack) return false
  if (max !== undefined && value > max + Math.abs(max) * slack) return false
  return !(above !== undefined && value <= above) && !(below !== undefined && value >= below)
}

function sayLimits(kind: QuantityKind, units: Units, { min, max, above, below, finest }: QuantityOptions): string {
  const write = (limit: number) => formatQuantity(kind, limit, units)
  const parts = [
    min === undefined ? undefined : finest === undefined ? `at least ${write(min)}` : `0, or at least ${write(finest)}`,
    above === undefined ? undefined : `more than ${write(above)}`,
    max === undefined ? undefined : `at most ${write(max)}`,
    below === undefined ? undefined : `less than ${write(below)}`,
  ]
  return parts.filter((part) => part !== undefined).join(' and ')
}

/** The default is the likeliest thing to write; without one, the ways to write a quantity of this kind. */
function examplesFor(kind: QuantityKind, units: Units, options: QuantityOptions): readonly (string | number)[] {
  if (options.default !== undefined) return [options.default]
  const [bare, ...others] = quantityExamples(kind, units)
  return [Number(bare), ...others]
}

/** Limits for a bare number, in the file's unit; an editor leaves text such as `1/2 in` to the program. */
function jsonLimits(kind: QuantityKind, units: Units, { min, max, above, below }: QuantityOptions) {
  const inUnit = (limit: number) => toUnit(kind, limit, units)
  return {
    ...(min === undefined ? {} : { minimum: inUnit(min) }),
    ...(max === undefined ? {} : { maximum: inUnit(max) }),
    ...(above === undefined ? {} : { exclusiveMinimum: inUnit(above) }),
    ...(below === undefined ? {} : { exclusiveMaximum: inUnit(below) }),
  }
}
