import { z } from 'zod'
import { drawnLetters, firstUndrawn } from './drawn-letters.ts'
import { fieldMeta, type IssueProblem } from './field-meta.ts'
import { type FieldOf, type FieldOptions, type FieldRead, makeField, metaOf, withPresence } from './make-field.ts'
import { nearest } from './nearest.ts'
import { firstBadCharacter } from './plain-text.ts'
import { own, unwrap } from './schema-tree.ts'

export interface CountOptions extends FieldOptions {
  readonly min?: number
  readonly max?: number
  readonly default?: number
}

/** A whole number without unit. */
export function countField<const Options extends CountOptions>(
  options: Options,
): FieldOf<z.ZodType<number, number>, Options> {
  const { min, max } = options
  const limits = [
    min === undefined ? undefined : `at least ${min}`,
    max === undefined ? undefined : `at most ${max}`,
  ].filter((part) => part !== undefined)
  const allowed = ['a whole number', ...(limits.length === 0 ? [] : [limits.join(' and ')])].join(', ')
  const read = (written: unknown): FieldRead<number> => {
    if (typeof written !== 'number' || !Number.isInteger(written)) return { ok: false, code: 'wrong-kind', allowed }
    if ((min !== undefined && written < min) || (max !== undefined && written > max)) {
      return { ok: false, code: 'out-of-range', allowed }
    }
    return { ok: true, value: written }
  }
  const json = {
    type: 'integer',
    ...(min === undefined ? {} : { minimum: min }),
    ...(max === undefined ? {} : { maximum: max }),
  }
  return withPresence(makeField<number, number>(read, allowed, metaOf('count', '', options, json)), options)
}

export interface ChoiceOptions<Value extends string> extends FieldOptions {
  readonly default?: Value
  /** Other words for a value, too far from it in letters: they are refused, and it is named. */
  readonly meaning?: Readonly<Record<string, Value>>
}

/**
 * One of a list of words. A choice that looks like a number, such as a screw's property class 12.9, may be written
 * without quotes.
 */
export function choiceField<const Value extends string, const Options extends ChoiceOptions<NoInfer<Value>>>(
  values: readonly Value[],
  options: Options,
): FieldOf<z.ZodType<Value, Value>, Options> {
  const allowed = values.join(', ')
  const read = (written: unknown): FieldRead<Value> => {
    const name =
      typeof written === 'string' ? written.trim() : typeof written === 'number' ? String(written) : undefined
    const value = values.find((candidate) => candidate === name)
    if (value !== undefined) return { ok: true, value }
    if (name === undefined) return { ok: false, code: 'wrong-kind', allowed }
    const meant = own(options.meaning ?? {}, name.toLowerCase()) ?? nearest(name, values)
    return { ok: false, code: 'unknown-choice', allowed, ...(meant === undefined ? {} : { remedy: `write ${meant}` }) }
  }
  const asNumbers = values.filter((value) => value === String(Number(value))).map(Number)
  const json = asNumbers.length === 0 ? { type: 'string', enum: values } : { enum: [...values, ...asNumbers] }
  return withPresence(makeField<Value, Value>(read, allowed, metaOf('choice', '', options, json)), options)
}

export interface TextOptions extends FieldOptions {
  /** Longest text, in characters; 80 unless said. */
  readonly max?: number
  readonly default?: string
}

/**
 * One line of text, without spaces at its ends and with accents in one piece with their letters. Any of it may come to
 * stand on a drawing.
 */
export function textField<const Options extends TextOptions>(
  options: Options,
): FieldOf<z.ZodType<string, string>, Options> {
  const longest = options.max ?? 80
  const allowed = `one line of text, at most ${longest} characters`
  const read = (written: unknown): FieldRead<string> => {
    // 0012 would come out as 12 and 1.50 as 1.5: a name made of digits has to be quoted to survive.
    if (typeof written === 'number') return { ok: false, code: 'wrong-kind', allowed, remedy: 'put it in quotes' }
    if (typeof written !== 'string') return { ok: false, code: 'wrong-kind', allowed }
    const text = written.trim().normalize('NFC')
    if (text === '') return { ok: false, code: 'wrong-kind', allowed, remedy: 'write some text' }
    if (/[\n\r\t]/.test(text) || firstBadCharacter(text) !== undefined) {
      return { ok: false, code: 'wrong-kind', allowed, remedy: 'write it on one line, without tabs' }
    }
    if ([...text].length > longest) return { ok: false, code: 'out-of-range', allowed }
    const undrawn = firstUndrawn(text)
    if (undrawn !== undefined) return { ok: false, code: 'not-text', found: undrawn, allowed: drawnLetters }
    return { ok: true, value: text }
  }
  const json = { type: 'string', minLength: 1, maxLength: longest }
  return withPresence(makeField<string, string>(read, allowed, metaOf('text', '', options, json)), options)
}

export interface FlagOptions extends FieldOptions {
  readonly default?: boolean
}

/** True or false. YAML 1.2 knows no `yes` and `no`; whoever writes them is told. */
export function flagField<const Options extends FlagOptions>(
  options: Options,
): FieldOf<z.ZodType<boolean, boolean>, Options> {
  const allowed = 'true or false'
  const read = (written: unknown): FieldRead<boolean> => {
    if (typeof written === 'boolean') return { ok: true, value: written }
    const word = typeof written === 'string' ? written.trim().toLowerCase() : ''
    const meant = /^(?:yes|y|on|true)$/.test(word) ? 'true' : /^(?:no|n|off|false)$/.test(word) ? 'false' : undefined
    return { ok: false, code: 'wrong-kind', allowed, ...(meant === undefined ? {} : { remedy: `write ${meant}` }) }
  }
  const json = { type: 'boolean' }
  return withPresence(makeField<boolean, boolean>(read, allowed, metaOf('flag', '', options, json)), options)
}

export interface ListOptions<Item> extends FieldOptions {
  /** Fewest and most items. */
  readonly min?: number
  readonly max?: number
  /** No number smaller than the one before it. */
  readonly ascending?: true
  readonly default?: Item[]
  /** The same value twice is a slip: what one has is on the list or is not. */
  readonly distinct?: true
}

/** A list of fields, or of sections. */
export function listField<Inner extends z.ZodType, const Options extends ListOptions<z.input<NoInfer<Inner>>>>(
  inner: Inner,
  options: Options,
): FieldOf<z.ZodArray<Inner>, Options> {
  let list = z.array(inner)
  if (options.min !== undefined) list = list.min(options.min)
  if (options.max !== undefined) list = list.max(options.max)
  if (options.ascending) list = list.check(ascends)
  if (options.distinct) list = list.superRefine(refuseRepeats)
  const unit = fieldMeta(unwrap(inner))?.unit ?? ''
  return withPresence(list.meta({ ...metaOf('list', unit, options, {}) }), options)
}

function ascends({ value, issues }: z.core.ParsePayload<unknown[]>): void {
  const at = value.findIndex((item, i) => i > 0 && (item as number) < (value[i - 1] as number))
  if (at < 0) return
  const problem: IssueProblem = { code: 'contradiction', allowed: 'ascending: each greater than the one before it' }
  issues.push({ code: 'custom', input: value, path: [at], params: { problem } })
}

function refuseRepeats(items: readonly unknown[], context: z.core.$RefinementCtx): void {
  items.forEach((item, at) => {
    const first = items.indexOf(item)
    if (first === at) return
    const remedy = `item ${first + 1} of the list is the same: remove one of the two, or write what was meant`
    const problem: IssueProblem = { code: 'contradiction', allowed: 'each value once', remedy, isRepeat: true }
    context.addIssue({ code: 'custom', message: problem.allowed, path: [at], params: { problem } })
  })
}
