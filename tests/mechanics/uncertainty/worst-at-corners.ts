import type { Outcome, Toleranced } from '../../../src/mechanics/uncertainty/spread.ts'

/** Most sizes whose corners are all tried: 4096 of them. */
const mostSizes = 12

/**
 * Least and most of every figure of an outcome over all corners, each size at one of its limits. This is the true worst case
 * of any outcome that goes one way in each size while the others stand still, whichever way that is; where the slopes change their
 * signs on the way, corners chosen by slopes miss it. A figure is undefined where a corner makes nothing of it. Throws RangeError above
 * 12 sizes: take the worst of `spreadOf` there.
 */
export function worstAtCorners(
  sizes: readonly Toleranced[],
  outcome: Outcome,
): ({ readonly low: number; readonly high: number } | undefined)[] {
  if (sizes.length > mostSizes) throw new RangeError(`${sizes.length} sizes have too many corners to try them all`)
  const corners = Array.from({ length: 2 ** sizes.length }, (_, corner) =>
    outcome(sizes.map(({ low, high }, i) => (corner & (1 << i) ? high : low))),
  )
  return corners[0]!.map((_, figure) => {
    const values = corners.map((c) => c[figure])
    const known = values.filter((v) => v !== undefined)
    return known.length < values.length ? undefined : { low: Math.min(...known), high: Math.max(...known) }
  })
}
