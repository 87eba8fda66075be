import type { z } from 'zod'
import type { Change, Finding, Remedy } from '../checks/finding.ts'
import { changesOf } from '../checks/finding.ts'
import { remedyFor, type Variants } from '../checks/remedy.ts'
import { findingsOf } from '../checks/rule.ts'
import { fieldMeta, isQuantityKind } from '../input/field-meta.ts'
import { inOtherBranch, namesBranch } from '../input/other-branch.ts'
import { readParameter, withParameter } from '../input/parameter-path.ts'
import type { Result } from '../input/problem.ts'
import { schemaAt, unwrap } from '../input/schema-tree.ts'
import { formatNumber } from '../quantity/format-number.ts'
import type { QuantityKind, Units } from '../quantity/kind.ts'
import { fromUnit, toUnit } from '../quantity/to-unit.ts'
import { unitSymbol } from '../quantity/unit-table.ts'
import type { CommonParameters, Design, Family } from './family.ts'

export interface JudgedFinding extends Finding {
  readonly remedy?: Remedy
  /** A remedy for this stop or caution was looked for, and no single change clears it. */
  readonly noRemedy?: true
}

/** Every finding of a design, with a remedy for each where asked for. */
export function judged<P extends CommonParameters, D extends Design>(
  family: Family<P, D>,
  design: D,
  withRemedies: boolean,
): JudgedFinding[] {
  const findings = findingsOf(family.rules, design)
  if (!withRemedies) return findings
  const variants = variantsOf(family, design)
  const present = findings.filter((f) => f.level === 'stop').map((f) => f.id)
  return findings.map((finding) => {
    const remedy = finding.levers.length > 0 ? remedyFor(finding, variants, present) : undefined
    if (remedy) return { ...finding, remedy }
    // Of a note there is nothing to clear.
    return finding.level === 'note' ? finding : { ...finding, noRemedy: true }
  })
}

/** The design with a remedy taken. */
export const remedied = <P extends CommonParameters, D extends Design>(
  family: Family<P, D>,
  design: D,
  remedy: Remedy,
): Result<D> => family.build(changed(family, design, changesOf(remedy)), design.tables)

/** The parameters with changes made: from what the user gave, since what followed from an old value follows anew. */
function changed<P extends CommonParameters, D extends Design>(
  family: Family<P, D>,
  design: D,
  changes: readonly Change[],
): P {
  return changes.reduce((parameters, { path, to }) => {
    if (typeof to !== 'string') return withParameter(parameters, path, to)
    const steps = path.split('.')
    const schema = family.schema(design.units)
    if (!namesBranch(schema, steps, parameters)) return withParameter(parameters, path, to)
    const above = steps.slice(0, -1)
    const section = readParameter(parameters, above.join('.')) as Readonly<Record<string, unknown>>
    const sections = schemaAt(schema, above, parameters)!
    return withParameter(parameters, above.join('.'), inOtherBranch(sections, section, steps.at(-1)!, to))
  }, design.parameters as P)
}

/** Variants of a design in which one parameter differs, and what changes with it. */
export function variantsOf<P extends CommonParameters, D extends Design>(family: Family<P, D>, design: D): Variants {
  const filled = family.filledIn(design)
  const schema = family.schema(design.units)
  let last: { readonly key: string; readonly variant: D | undefined } | undefined
  const build = (key: string, changes: readonly Change[]): D | undefined => {
    // A variant that clears a finding is asked for stops next: what it has worked out by then still holds.
    if (last?.key !== key) {
      const built = family.build(changed(family, design, changes), design.tables)
      last = { key, variant: built.ok ? built.value : undefined }
    }
    return last.variant
  }
  const asked = new Map<string, string | undefined>()
  const limits = new Map<string, ReturnType<typeof limitsAt>>()
  let rules = family.rules
  return {
    units: design.units,
    number(path) {
      const given = readParameter(design.parameters, path)
      const value = given ?? readParameter(filled, path)
      if (typeof value !== 'number') return undefined
      if (!limits.has(path)) limits.set(path, limitsAt(schema, path, filled, design.units))
      const found = limits.get(path)
      return found && { value, ...found }
    },
    finding(changes, id) {
      const variant = build(keyOf(changes), changes)
      if (!variant) return 'impossible'
      const rule = family.rules.find((r) => id === r.id || id.startsWith(`${r.id}:`))
      return rule?.findings(variant, id).find((f) => f.id === id)
    },
    broughtStop(changes, present) {
      const key = keyOf(changes)
      if (asked.has(key)) return asked.get(key)
      const variant = build(key, changes)
      const isNew = (f: Finding) => f.level === 'stop' && !present.includes(f.id)
      // Rule by rule: the first new stop settles it. Next time the rule that found it is asked first, since variants
      // that lie close together mostly fail by the same rule.
      let brought = variant ? undefined : 'impossible'
      for (const rule of variant ? rules : []) {
        brought = rule.findings(variant!).find(isNew)?.id
        if (brought === undefined) continue
        rules = [rule, ...rules.filter((other) => other !== rule)]
        break
      }
      asked.set(key, brought)
      return brought
    },
    text(changes) {
      const after = changed(family, design, changes)
      const show = (path: string, value: unknown, of: unknown) =>
        typeof value === 'number' ? inFull(value, kindAt(schema, path, of), design.units) : String(value)
      const said = changes.map(({ path, to }) => {
        const now = readParameter(filled, path)
        return `${path} to ${show(path, to, after)}${now === undefined ? '' : ` (now ${show(path, now, filled)})`}`
      })
      const [{ path }] = changes as readonly [Change]
      const other = namesBranch(schema, path.split('.'), filled) ? leftOut(design.parameters, after, path) : []
      return `set ${said.join(' and ')}${other.length === 0 ? '' : `, and leave out ${other.join(', ')}`}`
    },
  }
}

const keyOf = (changes: readonly Change[]): string => changes.map(({ path, to }) => `${path} ${to}`).join(' ')

/** What the section had and has no more in its other kind: in the file it would be refused. */
function leftOut(before: unknown, after: unknown, path: string): string[] {
  const above = path.split('.').slice(0, -1).join('.')
  const [had, has] = [before, after].map((p) => Object.keys(readParameter(p, above) as object))
  return had!.filter((key) => !has!.includes(key))
}

function kindAt(schema: z.ZodType, path: string, value: unknown): QuantityKind | 'count' | undefined {
  const at = schemaAt(schema, path.split('.'), value)
  const kind = (at && fieldMeta(unwrap(at)))?.kind
  return kind !== undefined && (isQuantityKind(kind) || kind === 'count') ? kind : undefined
}

function limitsAt(schema: z.ZodType, path: string, value: unknown, units: Units) {
  const kind = kindAt(schema, path, value)
  if (kind === undefined) return undefined
  const { json } = fieldMeta(unwrap(schemaAt(schema, path.split('.'), value)!))!
  const limit = (plain: unknown, exclusive: unknown, inward: number, otherwise: number) => {
    const found = plain ?? exclusive
    if (typeof found !== 'number') return otherwise
    const value = kind === 'count' ? found : fromUnit(kind, found, units)
    return plain === undefined ? value + inward * 1e-4 : value
  }
  return {
    kind,
    min: limit(json.minimum, json.exclusiveMinimum, 1, -1e9),
    max: limit(json.maximum, json.exclusiveMaximum, -1, 1e9),
  }
}

/** With every digit that the number has, so that typing it in gives the design that was checked. */
function inFull(value: number, kind: QuantityKind | 'count' | undefined, units: Units): string {
  if (kind === undefined || kind === 'count') return String(value)
  const symbol = unitSymbol(kind, units)
  return `${formatNumber(toUnit(kind, value, units), 6, { trim: true })}${symbol === '°' ? '' : ' '}${symbol}`.trim()
}
