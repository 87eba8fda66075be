import type { QuantityKind, Units } from '../quantity/kind.ts'
import { fromUnit, toUnit } from '../quantity/to-unit.ts'
import type { Change, Finding, FindingLever, Remedy } from './finding.ts'
import { leastChange, type Outcome } from './least-change.ts'

/** What the solver may ask about variants of a design that differ in one parameter and in what changes with it. */
export interface Variants {
  readonly units: Units
  /** Value and kind of a numeric parameter (given or derived), and its limits; undefined where it has no value. */
  number(path: string): { value: number; kind: QuantityKind | 'count'; min: number; max: number } | undefined
  /** The finding of that id in the variant, undefined where it is gone; `impossible` where the variant cannot be built. */
  finding(changes: readonly Change[], id: string): Finding | undefined | 'impossible'
  /** The first stop of the variant that is not in `present`, `impossible` where it cannot be built. */
  broughtStop(changes: readonly Change[], present: readonly string[]): string | undefined
  /** The changes in words, with what is there now. */
  text(changes: readonly Change[]): string
}

/**
 * The first lever whose change clears the finding, by solving on the parameter: the least change that does it is rounded
 * the far way to a number a person would write, and the rounded number is checked again. A change that brings a new stop
 * (one not in `present`) is no remedy. Where the least change only turns the finding into another stop of the same rule,
 * the least that leaves neither is looked for. The rounded change is less than twice the least one, so half of it would
 * not do. Undefined: no single lever clears it within reach (as much again as it is now, or 10 mm).
 */
export function remedyFor(finding: Finding, variants: Variants, present: readonly string[]): Remedy | undefined {
  for (const lever of finding.levers) {
    const changes =
      'choose' in lever
        ? clearingChoice(finding, lever, variants, present)
        : clearingNumber(finding, lever, variants, present)
    const [first, ...also] = changes ?? []
    if (first === undefined) continue
    return { ...first, ...(also.length > 0 && { also }), text: variants.text([first, ...also]) }
  }
  return undefined
}

function clearingChoice(
  finding: Finding,
  { path, choose, bringing = [] }: Extract<FindingLever, { choose: unknown }>,
  variants: Variants,
  present: readonly string[],
): readonly Change[] | undefined {
  const changes = [{ path, to: choose }, ...bringing]
  if (variants.finding(changes, finding.id) !== undefined) return undefined
  return variants.broughtStop(changes, present) === undefined ? changes : undefined
}

function clearingNumber(
  finding: Finding,
  { path, turn, with: others = [] }: Extract<FindingLever, { turn: unknown }>,
  variants: Variants,
  present: readonly string[],
): readonly Change[] | undefined {
  const [now, ...moved] = [path, ...others].map((p) => variants.number(p))
  if (!now || moved.includes(undefined)) return undefined
  const sign = turn === 'up' ? 1 : -1
  const far = Math.max(Math.abs(now.value), now.kind === 'length' ? 10 : 0.5)
  const rooms = [now, ...moved].map((n) => (turn === 'up' ? n!.max - n!.value : n!.value - n!.min))
  const room = Math.min(...rooms, far)
  // A derived value may lie at its bound, or beyond: there is nowhere to go.
  if (!(room > 0)) return undefined
  const changesFor = (to: number): readonly Change[] => [
    { path, to },
    ...others.map((p, i) => ({ path: p, to: asWritten(moved[i]!.value + (to - now.value), now.kind, variants.units) })),
  ]
  const asked = new Map<number, ReturnType<Variants['finding']>>()
  const found = (to: number) => {
    if (!asked.has(to)) asked.set(to, variants.finding(changesFor(to), finding.id))
    return asked.get(to)
  }
  const brought = (to: number) => variants.broughtStop(changesFor(to), present)
  const isClean = (to: number) => brought(to) === undefined
  if (now.kind === 'count') {
    for (let change = 1; change <= room; change++) {
      const to = now.value + sign * change
      if (found(to) === undefined) return isClean(to) ? changesFor(to) : undefined
    }
    return undefined
  }
  const { kind } = now
  let first = Math.min(firstStep(now.value, kind), room)
  // A first step that makes no design at all (limits that would cross) was too long.
  for (let i = 0; i < 6 && found(now.value + sign * first) === 'impossible'; i++) first /= 4
  const solve = (clears: (to: number) => boolean): number | undefined => {
    const least = leastChange(first, room, shortOf(finding), (change): Outcome => {
      const to = now.value + sign * change
      if (clears(to)) return { gone: true }
      const outcome = found(to)
      return { gone: false, short: typeof outcome === 'object' ? shortOf(outcome) : undefined }
    })
    if (!least) return undefined
    const { low, high } = least
    const unclean = new Set<number>()
    for (const round of roundings(now.value + sign * high, now.value, kind, variants.units, sign)) {
      const change = sign * (round - now.value)
      // More than the least change, yet less than twice what is known not to do.
      if (change < high * (1 - 1e-12) || change >= 1.9 * Math.max(low, high * 0.9) || change > room) continue
      if (found(round) !== undefined) continue
      if (isClean(round)) return round
      if (unclean.add(round).size === 4) break
    }
    if (unclean.size > 0) worse = brought([...unclean].at(-1)!)
    return undefined
  }
  let worse: string | undefined
  const least = solve((to) => found(to) === undefined)
  if (least !== undefined) return changesFor(least)
  if (worse === undefined || ruleOf(worse) !== ruleOf(finding.id)) return undefined
  const further = solve((to) => found(to) === undefined && isClean(to))
  return further === undefined ? undefined : changesFor(further)
}

const ruleOf = (id: string): string => id.split(':')[0]!

/** How far the figure is from its limit. */
const shortOf = ({ figure, limit }: Finding): number | undefined => figure && limit && figure.value - limit.value

const firstStep = (value: number, kind: QuantityKind | 'count'): number =>
  kind === 'angle' ? 0.005 : Math.max(Math.abs(value) * 0.01, 0.01)

/** What is left of a number when it is written out with the digits that a text shows. */
const asWritten = (value: number, kind: QuantityKind | 'count', units: Units): number =>
  kind === 'count' ? value : fromUnit(kind, Math.round(toUnit(kind, value, units) * 1e6) / 1e6, units)

/** Numbers a person would write, at or beyond `value` away from `from`, coarsest first; internal units. */
function* roundings(value: number, from: number, kind: QuantityKind, units: Units, sign: number): Generator<number> {
  const shown = toUnit(kind, value, units)
  const shownFrom = toUnit(kind, from, units)
  const change = Math.abs(shown - shownFrom)
  for (const step of [10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, 0.001, 0.0005, 0.0001, 0.00001]) {
    if (step > 2 * change) continue
    const steps = sign > 0 ? Math.ceil(shown / step - 1e-9) : Math.floor(shown / step + 1e-9)
    // Division by the whole number keeps 0.1 from coming out as 0.30000000000000004.
    const inverse = Math.round(1 / step)
    yield fromUnit(kind, step >= 1 ? steps * step : steps / inverse, units)
  }
}
