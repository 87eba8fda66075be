import type { Amount, Finding, Level } from '../checks/finding.ts'
import { findingsOf } from '../checks/rule.ts'
import type { CommonParameters, Design, Family } from '../families/family.ts'
import type { Figure } from '../figures/figure.ts'
import { withParameter } from '../input/parameter-path.ts'
import type { Problem } from '../input/problem.ts'
import { toUnit } from '../quantity/to-unit.ts'
import { steady } from '../report/steady.ts'
import type { Tables } from '../tables/read-tables.ts'
import type { AxisPoint } from './axis.ts'

/** The worst that a set has: `none` without any finding, `impossible` where it cannot be built at all. */
export type SetLevel = 'none' | Level | 'impossible'

/** From the best to the worst. */
export const setLevels: readonly SetLevel[] = ['none', 'note', 'caution', 'stop', 'impossible']

/** What one set of parameters comes to. Plain data: it goes from thread to thread. */
export interface SetResult {
  readonly level: SetLevel
  /** Ids of the findings that stop it. */
  readonly stops: readonly string[]
  /** Why it cannot be built. */
  readonly problems: readonly Problem[]
  /** In the order of the figures, in the file's unit to nine digits; null where this set has no such thing. */
  readonly figures: readonly (number | null)[]
  /** What each of them is held against. */
  readonly limits: readonly (number | null)[]
}

/** A place in a sweep: which parameters stand otherwise than in the file, and at what. */
export type SetChange = readonly { readonly path: string; readonly value: AxisPoint['value'] }[]

/** Works out one set. Throws Error, naming the set, on a defect of a rule or a figure. */
export function setResult<P extends CommonParameters, D extends Design>(
  family: Family<P, D>,
  parameters: P,
  tables: Tables,
  change: SetChange,
  figures: readonly Figure<D>[],
): SetResult {
  try {
    const built = family.build(changed(parameters, change), tables)
    if (!built.ok) {
      const none = figures.map(() => null)
      return { level: 'impossible', stops: [], problems: built.problems, figures: none, limits: none }
    }
    const design = built.value
    const findings = findingsOf(family.rules, design)
    const number = (kind: Amount['kind'], value: number | undefined): number | null => {
      if (value === undefined) return null
      if (!Number.isFinite(value)) throw new Error(`a figure is ${value}`)
      return steady(kind === 'count' ? value : toUnit(kind, value, design.units))
    }
    const held = figures.map(({ kind, of, limit }) => {
      const value = number(kind, of(design))
      return { value, limit: value === null ? null : number(kind, limit?.(design)) }
    })
    return {
      level: findings[0]?.level ?? 'none',
      stops: stopsIn(findings).map(({ id }) => id),
      problems: [],
      figures: held.map(({ value }) => value),
      limits: held.map(({ limit }) => limit),
    }
  } catch (error) {
    const set = change.map(({ path, value }) => `${path} = ${value}`).join(', ')
    throw new Error(`in the set ${set}: ${error instanceof Error ? error.message : error}`, { cause: error })
  }
}

/** The findings that stop a set, with their words; none where it cannot be built. */
export function stopsOf<P extends CommonParameters, D extends Design>(
  family: Family<P, D>,
  parameters: P,
  tables: Tables,
  change: SetChange,
): Finding[] {
  const built = family.build(changed(parameters, change), tables)
  return built.ok ? stopsIn(findingsOf(family.rules, built.value)) : []
}

const stopsIn = (findings: readonly Finding[]): Finding[] => findings.filter(({ level }) => level === 'stop')

/** From what the user gave: what followed from an old value follows anew from the new one. */
const changed = <P>(parameters: P, change: SetChange): P =>
  change.reduce((sofar, { path, value }) => withParameter(sofar, path, value), parameters)
