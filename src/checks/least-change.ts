/** What became of a finding after a change: it is gone, or it stays; with how far its figure is from its limit. */
export type Outcome = { readonly gone: true } | { readonly gone: false; readonly short: number | undefined }

/**
 * The least change that clears a finding, between `low`, which does not, and `high`, which does, 4 % apart at the most;
 * undefined where no change up to `room` does. The change is grown from `first` by fours and then halved down. Whatever
 * lies below a change that is known to leave the finding, or above one known to clear it, is not asked again, and where
 * figures tell how far it is still to go, both ends of the bracket that they point to are asked first: mostly that
 * settles it. Throws RangeError unless `first` and `room` are above 0.
 */
export function leastChange(
  first: number,
  room: number,
  /** Figure less limit, without any change. */
  short: number | undefined,
  ask: (change: number) => Outcome,
): { readonly low: number; readonly high: number } | undefined {
  if (!(first > 0 && room > 0)) throw new RangeError(`first change ${first} of ${room}: both are more than 0`)
  let staysUpTo = 0
  let goneFrom = Infinity
  const points: Point[] = short === undefined ? [] : [{ change: 0, short }]
  const look = (change: number): boolean => {
    const outcome = ask(change)
    if (outcome.gone) goneFrom = Math.min(goneFrom, change)
    else if (outcome.short !== undefined) {
      staysUpTo = Math.max(staysUpTo, change)
      points.push({ change, short: outcome.short })
    }
    return outcome.gone
  }
  let guesses = 3
  const guess = () => {
    if (guesses === 0) return
    const aim = whereNothingIsShort(points.toSorted((a, b) => a.change - b.change).slice(-3))
    if (aim === undefined) return
    guesses--
    const aimed = bracket(first, room, (change) => change >= aim)
    if (!aimed) return
    if (aimed.low > staysUpTo && aimed.low < goneFrom && look(aimed.low)) return
    if (aimed.high > staysUpTo && aimed.high < goneFrom) look(aimed.high)
  }
  const known = (change: number) => (change >= goneFrom ? true : change <= staysUpTo ? false : undefined)
  return bracket(first, room, (change) => {
    if (known(change) === undefined) guess()
    return known(change) ?? look(change)
  })
}

interface Point {
  readonly change: number
  readonly short: number
}

function bracket(first: number, room: number, clears: (change: number) => boolean) {
  let low = 0
  let high = first
  while (!clears(high)) {
    if (high >= room * (1 - 1e-9)) return undefined
    low = high
    high = Math.min(high * 4, room)
  }
  for (let i = 0; i < 30 && high - low > 0.04 * high; i++) {
    const middle = (low + high) / 2
    if (clears(middle)) high = middle
    else low = middle
  }
  return { low, high }
}

/** Where two or three points lead to by the curve through them, change as a function of what is short (Lagrange). */
function whereNothingIsShort(points: readonly Point[]): number | undefined {
  if (points.length < 2) return undefined
  let aim = 0
  points.forEach((point, i) => {
    const weight = points.reduce((w, other, j) => (j === i ? w : (w * other.short) / (other.short - point.short)), 1)
    aim += weight * point.change
  })
  return aim > points.at(-1)!.change && Number.isFinite(aim) ? aim : undefined
}
