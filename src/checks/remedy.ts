import { formatNumber } from '../quantity/format-number.ts'
import type { QuantityKind, Units } from '../quantity/kind.ts'
import { fromUnit, toUnit } from '../quantity/to-unit.ts'
import { unitSymbol } from '../quantity/unit-table.ts'
import type { Finding, Remedy } from './finding.ts'
import { leastChange } from './least-change.ts'

/** What the solver may ask about variants of a design in which one parameter has another value. */
export interface Variants {
  readonly units: Units
  /** Value and kind of a numeric parameter (given or derived), and its limits; undefined where it has no value. */
  number(path: string): { value: number; kind: QuantityKind | 'count'; min: number; max: number } | undefined
  /** Present word of a choice. */
  word(path: string): string | undefined
  /** The finding of that id in the variant, undefined where it is gone; `impossible` where the variant cannot be built. */
  finding(path: string, to: number | string, id: string): Finding | undefined | 'impossible'
  /** Whether the variant has a stop that is not in `present`, or cannot be built. */
  bringsStop(path: string, to: number | string, present: readonly string[]): boolean
}

/**
 * The first lever whose change clears the finding, by solving on the parameter: the least change that does it is rounded
 * the far way to a number a person would write, and the rounded number is checked again. The rounded change is less than twice the least one, so half of it would not do.
 * A change that brings a new stop (one not in `present`) is no remedy. Undefined: no single parameter clears it within
 * reach (as much again as it is now, or 10 mm).
 */
export function remedyFor(finding: Finding, variants: Variants, present: readonly string[]): Remedy | undefined {
  for (const lever of finding.levers) {
    const isClean = (to: number | string) => !variants.bringsStop(lever.path, to, present)
    const to =
      'choose' in lever
        ? clearingWord(finding, lever.path, lever.choose, variants, isClean)
        : clearingNumber(finding, lever, variants, isClean)
    if (to === undefined) continue
    return { path: lever.path, to, text: textOf(lever.path, to, variants) }
  }
  return undefined
}

function clearingWord(
  finding: Finding,
  path: string,
  word: string,
  variants: Variants,
  isClean: (to: string) => boolean,
): string | undefined {
  return variants.finding(path, word, finding.id) === undefined && isClean(word) ? word : undefined
}

function clearingNumber(
  finding: Finding,
  { path, turn }: { path: string; turn: 'up' | 'down' },
  variants: Variants,
  isClean: (to: number) => boolean,
): number | undefined {
  const now = variants.number(path)
  if (!now) return undefined
  const sign = turn === 'up' ? 1 : -1
  const far = Math.max(Math.abs(now.value), now.kind === 'length' ? 10 : 0.5)
  const room = Math.min(turn === 'up' ? now.max - now.value : now.value - now.min, far)
  // A derived value may lie at its bound, or beyond: there is nowhere to go.
  if (!(room > 0)) return undefined
  const asked = new Map<number, ReturnType<Variants['finding']>>()
  const found = (change: number) => {
    const to = now.value + sign * change
    if (!asked.has(to)) asked.set(to, variants.finding(path, to, finding.id))
    return asked.get(to)
  }
  const clears = (change: number) => found(change) === undefined
  if (now.kind === 'count') {
    for (let change = 1; change <= room; change++) {
      const to = now.value + sign * change
      if (clears(change)) return isClean(to) ? to : undefined
    }
    return undefined
  }
  let first = Math.min(firstStep(now.value, now.kind), room)
  // A first step that makes no design at all (limits that would cross) was too long.
  for (let i = 0; i < 6 && found(first) === 'impossible'; i++) first /= 4
  const least = leastChange(first, room, shortOf(finding), (change) => {
    const outcome = found(change)
    if (outcome === undefined) return { gone: true }
    return { gone: false, short: outcome === 'impossible' ? undefined : shortOf(outcome) }
  })
  if (!least) return undefined
  const { low, high } = least
  const unclean = new Set<number>()
  for (const round of roundings(now.value + sign * high, now.value, now.kind, variants.units, sign)) {
    const change = sign * (round - now.value)
    // More than the least change, yet less than twice what is known not to do.
    if (change < high * (1 - 1e-12) || change >= 1.9 * Math.max(low, high * 0.9) || change > room) continue
    if (!clears(change)) continue
    if (isClean(round)) return round
    if (unclean.add(round).size === 4) return undefined
  }
  return undefined
}

/** How far the figure is from its limit. */
const shortOf = ({ figure, limit }: Finding): number | undefined => figure && limit && figure.value - limit.value

const firstStep = (value: number, kind: QuantityKind | 'count'): number =>
  kind === 'angle' ? 0.005 : Math.max(Math.abs(value) * 0.01, 0.01)

/** Numbers a person would write, at or beyond `value` away from `from`, coarsest first; internal units. */
function* roundings(
  value: number,
  from: number,
  kind: QuantityKind | 'count',
  units: Units,
  sign: number,
): Generator<number> {
  if (kind === 'count') return
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

function textOf(path: string, to: number | string, variants: Variants): string {
  if (typeof to === 'string') return `set ${path} to ${to} (now ${variants.word(path)})`
  const { kind, value } = variants.number(path)!
  return `set ${path} to ${inFull(to, kind, variants.units)} (now ${inFull(value, kind, variants.units)})`
}

/** With every digit that the number has, so that typing it in gives the design that was checked. */
function inFull(value: number, kind: QuantityKind | 'count', units: Units): string {
  if (kind === 'count') return String(value)
  const symbol = unitSymbol(kind, units)
  return `${formatNumber(toUnit(kind, value, units), 6, { trim: true })}${symbol === '°' ? '' : ' '}${symbol}`.trim()
}
