/** Some of the values, each taken once, added or taken off. */
export interface SignedSum {
  readonly sum: number
  /** Places of the values, lowest first. */
  readonly picked: readonly number[]
  /** 1 added, −1 taken off, one for each that is picked. */
  readonly signs: readonly (1 | -1)[]
}

export interface NearestSumInput {
  /** Whole numbers above 0: whole, so that what is exact is seen to be. */
  readonly values: readonly number[]
  readonly wanted: number
  /** Near enough: the fewest values that come this close are taken. 0 or more. */
  readonly within: number
  /** Most values of a sum, 1 to 6. */
  readonly most: number
  readonly subtracts: boolean
}

/**
 * The sum of fewest values that comes within a distance of what is wanted; of those the nearest. Where none does, the nearest sum
 * of all, and of equally near ones that of fewest. Undefined without values. Exact: a sum of k is met in the middle, each sum of the smaller half
 * with the nearest of the larger one that shares no value with it. Of equal sums the one found first, so that the order of `values` decides.
 * Work grows as n³ for five or six of n values. Throws RangeError where `most` is outside 1 to 6.
 */
export function nearestSum({ values, wanted, within, most, subtracts }: NearestSumInput): SignedSum | undefined {
  if (!(most >= 1 && most <= 6)) throw new RangeError(`sums of ${most} values`)
  const made: Sums[] = [sumsOfNone]
  let best: SignedSum | undefined
  for (let count = 1; count <= Math.min(most, values.length); count++) {
    const [small, large] = [Math.floor(count / 2), Math.ceil(count / 2)]
    while (made.length <= large) made.push(withOneMore(made.at(-1)!, values, subtracts))
    const found = meet(made[small]!, made[large]!, wanted)
    if (found && (!best || Math.abs(found.sum - wanted) < Math.abs(best.sum - wanted))) best = found
    if (best && Math.abs(best.sum - wanted) <= within) break
  }
  return best
}

/** All sums of `count` values, in the order of their places; places and signs stand `count` to a sum. */
interface Sums {
  readonly count: number
  readonly sums: Float64Array
  readonly places: Int32Array
  readonly signs: Int8Array
}

const sumsOfNone: Sums = { count: 0, sums: new Float64Array(1), places: new Int32Array(0), signs: new Int8Array(0) }

function withOneMore(less: Sums, values: readonly number[], subtracts: boolean): Sums {
  const ways = subtracts ? ([1, -1] as const) : ([1] as const)
  const after = (at: number) => (less.count === 0 ? 0 : less.places[at * less.count + less.count - 1]! + 1)
  let length = 0
  for (let at = 0; at < less.sums.length; at++) length += ways.length * (values.length - after(at))
  const count = less.count + 1
  const [sums, places, signs] = [
    new Float64Array(length),
    new Int32Array(length * count),
    new Int8Array(length * count),
  ]
  let to = 0
  for (let at = 0; at < less.sums.length; at++) {
    for (let i = after(at); i < values.length; i++) {
      for (const way of ways) {
        sums[to] = less.sums[at]! + way * values[i]!
        for (let k = 0; k < less.count; k++) {
          places[to * count + k] = less.places[at * less.count + k]!
          signs[to * count + k] = less.signs[at * less.count + k]!
        }
        places[to * count + less.count] = i
        signs[to * count + less.count] = way
        to++
      }
    }
  }
  return { count, sums, places, signs }
}

/** One sum of each, without a value in both, nearest to what is wanted. */
function meet(few: Sums, many: Sums, wanted: number): SignedSum | undefined {
  const order = Uint32Array.from(many.sums.keys()).sort((a, b) => many.sums[a]! - many.sums[b]! || a - b)
  let best: readonly [number, number] | undefined
  let least = Infinity
  for (let a = 0; a < few.sums.length && least > 0; a++) {
    const rest = wanted - few.sums[a]!
    const middle = firstAtLeast(many.sums, order, rest)
    for (const way of [1, -1] as const) {
      for (let k = way > 0 ? middle : middle - 1; k >= 0 && k < order.length; k += way) {
        const b = order[k]!
        const off = Math.abs(many.sums[b]! - rest)
        if (off >= least) break
        if (shareOne(few, a, many, b)) continue
        best = [a, b]
        least = off
        break
      }
    }
  }
  return best && together([few, best[0]], [many, best[1]])
}

function shareOne(few: Sums, a: number, many: Sums, b: number): boolean {
  for (let i = a * few.count; i < (a + 1) * few.count; i++) {
    for (let k = b * many.count; k < (b + 1) * many.count; k++) if (few.places[i] === many.places[k]) return true
  }
  return false
}

function together(...parts: readonly (readonly [Sums, number])[]): SignedSum {
  const terms = parts.flatMap(([{ count, places, signs }, at]) =>
    Array.from({ length: count }, (_, k) => ({
      place: places[at * count + k]!,
      sign: signs[at * count + k] === 1 ? (1 as const) : (-1 as const),
    })),
  )
  terms.sort((a, b) => a.place - b.place)
  return {
    sum: parts.reduce((sum, [{ sums }, at]) => sum + sums[at]!, 0),
    picked: terms.map((t) => t.place),
    signs: terms.map((t) => t.sign),
  }
}

/** Place in the order of the first sum that is no less. */
function firstAtLeast(sums: Float64Array, order: Uint32Array, sum: number): number {
  let [low, high] = [0, order.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (sums[order[middle]!]! < sum) low = middle + 1
    else high = middle
  }
  return low
}
