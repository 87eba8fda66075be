import type { z } from 'zod'
import type { Finding, Remedy } from '../checks/finding.ts'
import { remedyFor, type Variants } from '../checks/remedy.ts'
import { findingsOf } from '../checks/rule.ts'
import { fieldMeta, isQuantityKind } from '../input/field-meta.ts'
import { readParameter, withParameter } from '../input/parameter-path.ts'
import { schemaAt, unwrap } from '../input/schema-tree.ts'
import { fromUnit } from '../quantity/to-unit.ts'
import type { CommonParameters, Design, Family } from './family.ts'

export interface JudgedFinding extends Finding {
  /** Undefined: no single parameter clears it, or it was not asked for. */
  readonly remedy?: Remedy
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
    return remedy ? { ...finding, remedy } : finding
  })
}

/** Variants of a design in which one parameter differs. */
export function variantsOf<P extends CommonParameters, D extends Design>(family: Family<P, D>, design: D): Variants {
  const filled = family.filledIn(design)
  const schema = family.schema(design.units)
  let last: { readonly path: string; readonly to: number | string; readonly variant: D | undefined } | undefined
  const build = (path: string, to: number | string): D | undefined => {
    // A variant that clears a finding is asked for stops next: what it has worked out by then still holds.
    if (last?.path !== path || last.to !== to) {
      // From what the user gave: what followed from the old value must follow anew from the new one.
      const built = family.build(withParameter(design.parameters as P, path, to), design.tables)
      last = { path, to, variant: built.ok ? built.value : undefined }
    }
    return last.variant
  }
  const asked = new Map<string, boolean>()
  const limits = new Map<string, ReturnType<typeof limitsAt>>()
  let rules = family.rules
  return {
    units: design.units,
    number(path) {
      const given = readParameter(design.parameters, path)
      const value = given ?? readParameter(filled, path)
      if (typeof value !== 'number') return undefined
      if (!limits.has(path)) limits.set(path, limitsAt(schema, path, filled, design))
      const found = limits.get(path)
      return found && { value, ...found }
    },
    word(path) {
      const value = readParameter(filled, path)
      return typeof value === 'string' ? value : undefined
    },
    finding(path, to, id) {
      const variant = build(path, to)
      if (!variant) return 'impossible'
      const rule = family.rules.find((r) => id === r.id || id.startsWith(`${r.id}:`))
      return rule?.findings(variant, id).find((f) => f.id === id)
    },
    bringsStop(path, to, present) {
      const key = `${path} ${to}`
      const known = asked.get(key)
      if (known !== undefined) return known
      const variant = build(path, to)
      const isNew = (f: Finding) => f.level === 'stop' && !present.includes(f.id)
      // Rule by rule: the first new stop settles it. Next time the rule that found it is asked first, since variants
      // that lie close together mostly fail by the same rule.
      const against = variant && rules.find((rule) => rule.findings(variant).some(isNew))
      if (against) rules = [against, ...rules.filter((rule) => rule !== against)]
      const brings = !variant || against !== undefined
      asked.set(key, brings)
      return brings
    },
  }
}

function limitsAt(schema: z.ZodType, path: string, value: unknown, design: Design) {
  const at = schemaAt(schema, path.split('.'), value)
  const meta = at && fieldMeta(unwrap(at))
  if (!meta || !(isQuantityKind(meta.kind) || meta.kind === 'count')) return undefined
  const { kind, json } = meta
  const limit = (plain: unknown, exclusive: unknown, inward: number, otherwise: number) => {
    const found = plain ?? exclusive
    if (typeof found !== 'number') return otherwise
    const value = kind === 'count' ? found : fromUnit(kind, found, design.units)
    return plain === undefined ? value + inward * 1e-4 : value
  }
  return {
    kind,
    min: limit(json.minimum, json.exclusiveMinimum, 1, -1e9),
    max: limit(json.maximum, json.exclusiveMaximum, -1, 1e9),
  }
}
