import { type Distribution, variance } from './distribution.ts'
import { madeParts } from './made-parts.ts'

/** A size that may come out anywhere in its limits. */
export interface Toleranced {
  readonly id: string
  /** Lower and upper limit, `low` < `high`; the middle is aimed at. */
  readonly low: number
  readonly high: number
  /** How it lies between them; normal unless said. */
  readonly distribution?: Distribution
}

/** What the sizes make; undefined where they make nothing at all, which is a bad part. */
export type Outcome = (sizes: readonly number[]) => readonly (number | undefined)[]

/** What a figure is held against. */
export interface Held {
  readonly value: number
  readonly is: 'least' | 'most'
}

/** How one figure comes out over all tolerances. */
export interface Spread {
  /** With every size in the middle of its limits; undefined where that makes nothing. */
  readonly middle: number | undefined
  /** With every size at the limit that is worse, each way by the sign of its slope, and no less than any size does alone. */
  readonly worst: { readonly low: number; readonly high: number } | undefined
  /** Middle ∓ the root of the sum of squares of what each tolerance does alone. */
  readonly rootSumSquare: { readonly low: number; readonly high: number } | undefined
  /** Simulated, each size by its own distribution. */
  readonly mean: number | undefined
  readonly deviation: number | undefined
  /** Share of parts on the right side of the limit, with the 95 % interval of Wilson; undefined without a limit. */
  readonly good: { readonly share: number; readonly low: number; readonly high: number } | undefined
  /** Share of the variance that each tolerance brings by its slope, largest first; those that bring nothing are left out. */
  readonly causes: readonly { readonly id: string; readonly share: number }[]
}

export interface SpreadInput {
  readonly sizes: readonly Toleranced[]
  readonly outcome: Outcome
  /** A limit for each figure that has one, in the order of the outcome. */
  readonly held: readonly (Held | undefined)[]
  /** Parts to simulate, 1 or more. */
  readonly count: number
  readonly seed: number
}

/**
 * Spread of every figure of an outcome: worst case and root of the sum of squares from central differences at the limits,
 * and a simulation that repeats. Distributions are assumptions, not measurements. What bends back between its limits, such as
 * a distance that passes through nought, has no slope there: trust the simulation. Throws RangeError on limits
 * that are no interval and on a count below 1.
 */
export function spreadOf({ sizes, outcome, held, count, seed }: SpreadInput): Spread[] {
  if (!(Number.isInteger(count) && count >= 1)) throw new RangeError(`parts to simulate: ${count}`)
  for (const { id, low, high } of sizes) if (!(low < high)) throw new RangeError(`${id}: limits ${low} and ${high}`)
  const middles = sizes.map(({ low, high }) => (low + high) / 2)
  const having = (i: number, value: number) => outcome(middles.map((m, k) => (k === i ? value : m)))
  const ends = sizes.map(({ low, high }, i) => ({ low: having(i, low), high: having(i, high) }))
  const parts = madeParts(sizes, count, seed).map(outcome)
  const atMiddle = outcome(middles)
  return held.map((limit, figure) => {
    const middle = atMiddle[figure]
    const effects = ends.map(({ low, high }) => half(low[figure], high[figure]))
    const whole = middle !== undefined && effects.every((e) => e !== undefined)
    const known = whole ? (effects as number[]) : []
    const corner = (way: 1 | -1) =>
      outcome(sizes.map(({ low, high }, i) => (way * known[i]! >= 0 ? high : low)))[figure]
    const worst = whole
      ? rangeOf([corner(-1), corner(1), middle, ...ends.flatMap((e) => [e.low[figure], e.high[figure]])])
      : undefined
    const square = known.reduce((sum, e) => sum + e * e, 0)
    const variances = known.map((e, i) => e * e * variance[sizes[i]!.distribution ?? 'normal'])
    const varied = variances.reduce((sum, v) => sum + v, 0)
    const made = parts.map((p) => p[figure])
    const values = made.filter((v) => v !== undefined)
    const mean = values.length > 0 ? values.reduce((sum, v) => sum + v, 0) / values.length : undefined
    const isGood = (v: number | undefined) =>
      v !== undefined && limit !== undefined && (limit.is === 'least' ? v >= limit.value : v <= limit.value)
    return {
      middle,
      worst,
      rootSumSquare: whole ? { low: middle - Math.sqrt(square), high: middle + Math.sqrt(square) } : undefined,
      mean,
      deviation:
        mean === undefined || values.length < 2
          ? undefined
          : Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1)),
      good: limit && shareOf(made.filter(isGood).length, count),
      causes: variances
        .map((v, i) => ({ id: sizes[i]!.id, share: varied > 0 ? v / varied : 0 }))
        .filter(({ share }) => share > 1e-9)
        .sort((a, b) => b.share - a.share),
    }
  })
}

/** What a tolerance does alone, from its middle to its upper limit. */
const half = (low: number | undefined, high: number | undefined): number | undefined =>
  low === undefined || high === undefined ? undefined : (high - low) / 2

/** Least and most of some values; undefined where one of them is not there. */
function rangeOf(values: readonly (number | undefined)[]): Spread['worst'] {
  const known = values.filter((v) => v !== undefined)
  return known.length < values.length ? undefined : { low: Math.min(...known), high: Math.max(...known) }
}

/** 97.5 % point of the normal distribution. */
const z = 1.959964

/** Share of `good` in `count`, with Wilson's score interval (E. B. Wilson 1927, from memory). */
export function shareOf(good: number, count: number): { share: number; low: number; high: number } {
  const share = good / count
  const centre = share + (z * z) / (2 * count)
  const reach = z * Math.sqrt((share * (1 - share)) / count + (z * z) / (4 * count * count))
  const over = 1 + (z * z) / count
  return { share, low: Math.max(0, (centre - reach) / over), high: Math.min(1, (centre + reach) / over) }
}
