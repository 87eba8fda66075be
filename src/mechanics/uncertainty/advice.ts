import { madeParts } from './made-parts.ts'
import { type Held, type Outcome, shareOf, spreadOf, type Toleranced } from './spread.ts'

export interface AdviceInput {
  readonly sizes: readonly Toleranced[]
  readonly outcome: Outcome
  /** A limit for each figure that has one, in the order of the outcome. */
  readonly held: readonly (Held | undefined)[]
  /** Parts to simulate, 1 or more. */
  readonly count: number
  readonly seed: number
  /** Share of good parts that is wanted, 0 to 1. */
  readonly wanted: number
  /** Share of all parts that may go from good to bad when a tolerance is doubled, for it to count as free; 0 to 1. */
  readonly mayCost: number
}

/** What one other tolerance would do. */
export interface Change {
  readonly id: string
  /** Good parts with that tolerance, all others as they are. */
  readonly good: ReturnType<typeof shareOf>
  /** Parts that turn bad less parts that turn good, over all parts; positive where it costs. */
  readonly cost: number
}

export interface Advice {
  /** Parts that are good in every figure that has a limit. */
  readonly good: ReturnType<typeof shareOf>
  /** What halving each tolerance would bring, best first; empty where enough parts are good already, or where no tolerance helps. */
  readonly tighten: readonly (Change & { readonly shareOfVariance: number })[]
  /** Tolerances that may each be doubled, the others staying: those that cost least first. */
  readonly relax: readonly Change[]
}

/**
 * Which tolerance to tighten and which could be relaxed, by simulating the same parts again with one tolerance halved or doubled:
 * the very same draws, so that even a small difference is the tolerance's and not chance. The share of the variance is the largest of the
 * held figures'. Costs (1 + twice the sizes) × count outcomes. Throws RangeError as `spreadOf` does, and on shares outside 0 to 1.
 */
export function toleranceAdvice({ sizes, outcome, held, count, seed, wanted, mayCost }: AdviceInput): Advice {
  for (const share of [wanted, mayCost]) if (!(share >= 0 && share <= 1)) throw new RangeError(`a share of ${share}`)
  const spreads = spreadOf({ sizes, outcome, held, count: 1, seed })
  const goodWith = (tried: readonly Toleranced[]) =>
    madeParts(tried, count, seed).filter((part) => isGood(outcome(part), held)).length
  const now = goodWith(sizes)
  const change = (i: number, factor: number): Change => {
    const other = goodWith(sizes.map((size, k) => (k === i ? scaled(size, factor) : size)))
    return { id: sizes[i]!.id, good: shareOf(other, count), cost: (now - other) / count }
  }
  const shareOfVariance = (id: string) =>
    Math.max(
      0,
      ...spreads.flatMap(({ causes }, k) => (held[k] ? causes.filter((c) => c.id === id).map((c) => c.share) : [])),
    )
  const enough = now / count >= wanted
  return {
    good: shareOf(now, count),
    tighten: enough
      ? []
      : sizes
          .map(({ id }, i) => ({ ...change(i, 0.5), shareOfVariance: shareOfVariance(id) }))
          .filter(({ cost }) => cost < 0)
          .sort((a, b) => a.cost - b.cost || b.shareOfVariance - a.shareOfVariance),
    relax: sizes
      .map((_, i) => change(i, 2))
      .filter(({ cost }) => cost <= mayCost)
      .sort((a, b) => a.cost - b.cost),
  }
}

const scaled = (size: Toleranced, factor: number): Toleranced => {
  const [middle, half] = [(size.low + size.high) / 2, (size.high - size.low) / 2]
  return { ...size, low: middle - factor * half, high: middle + factor * half }
}

function isGood(figures: readonly (number | undefined)[], held: readonly (Held | undefined)[]): boolean {
  return held.every((limit, k) => {
    if (limit === undefined) return true
    const value = figures[k]
    return value !== undefined && (limit.is === 'least' ? value >= limit.value : value <= limit.value)
  })
}
