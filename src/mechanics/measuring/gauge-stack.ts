/** Gauge blocks wrung together. */
export interface GaugeStack {
  /** Lengths of the blocks, longest first, mm. */
  readonly blocks: readonly number[]
  /** Their sum, mm. */
  readonly height: number
  /** How far that is from what was asked for, mm; positive when it is too high. */
  readonly off: number
}

/** What blocks are told apart by, mm: a tenth of a micrometre. */
const unit = 1e-4
/** Most blocks worth wringing together: each joint adds its own film (common practice, no source). */
const mostBlocks = 4

/**
 * The fewest blocks of a set, at most four, that come to a height: exactly to 0.1 µm where that can be, else the nearest.
 * Of equal stacks the one with the longest block. Undefined for a set without blocks. Lengths in mm, above 0; a set may have
 * a length twice. Throws RangeError on a height or a block that is not above 0.
 */
export function gaugeStack(set: readonly number[], height: number): GaugeStack | undefined {
  if (!(height > 0) || set.some((b) => !(b > 0))) throw new RangeError('gauge blocks and heights are above 0')
  if (set.length === 0) return undefined
  const blocks = set.map((b) => Math.round(b / unit)).sort((a, b) => b - a)
  const wanted = Math.round(height / unit)
  let best: { picked: readonly number[]; off: number } | undefined
  for (let count = 1; count <= Math.min(mostBlocks, blocks.length); count++) {
    const found = nearestOf(blocks, wanted, count)
    if (found && (!best || Math.abs(found.off) < Math.abs(best.off))) best = found
    if (best?.off === 0) break
  }
  const { picked, off } = best!
  return {
    blocks: picked.map((i) => blocks[i]! * unit),
    height: (wanted + off) * unit,
    off: (wanted + off) * unit - height,
  }
}

/** So many blocks, by their places in the set, whose sum is nearest. */
function nearestOf(blocks: readonly number[], wanted: number, count: number) {
  if (count === 1)
    return nearestAmong(
      blocks.map((sum, i) => ({ sum, picked: [i] })),
      wanted,
    )
  const pairs = pairsOf(blocks)
  if (count === 2) return nearestAmong(pairs, wanted)
  // Singles or pairs, each with the nearest pair that shares no block with it.
  const others = count === 3 ? blocks.map((sum, i) => ({ sum, picked: [i] })) : pairs
  const sorted = [...pairs].sort((a, b) => a.sum - b.sum)
  let best: { picked: readonly number[]; off: number } | undefined
  for (const a of others) {
    const middle = firstAtLeast(sorted, wanted - a.sum)
    for (const way of [1, -1] as const) {
      for (let k = way > 0 ? middle : middle - 1; k >= 0 && k < sorted.length; k += way) {
        const b = sorted[k]!
        const off = a.sum + b.sum - wanted
        if (best && Math.abs(off) >= Math.abs(best.off)) break
        if (a.picked.some((i) => b.picked.includes(i))) continue
        best = { picked: [...a.picked, ...b.picked].sort((p, q) => p - q), off }
        break
      }
    }
    if (best?.off === 0) break
  }
  return best
}

/** Place of the first sum that is no less. */
function firstAtLeast(sorted: readonly Sum[], sum: number): number {
  let [low, high] = [0, sorted.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (sorted[middle]!.sum < sum) low = middle + 1
    else high = middle
  }
  return low
}

interface Sum {
  readonly sum: number
  readonly picked: readonly number[]
}

function pairsOf(blocks: readonly number[]): Sum[] {
  const out: Sum[] = []
  for (let i = 0; i < blocks.length; i++) {
    for (let k = i + 1; k < blocks.length; k++) out.push({ sum: blocks[i]! + blocks[k]!, picked: [i, k] })
  }
  return out
}

function nearestAmong(sums: readonly Sum[], wanted: number) {
  let best: { picked: readonly number[]; off: number } | undefined
  for (const { sum, picked } of sums) {
    const off = sum - wanted
    if (!best || Math.abs(off) < Math.abs(best.off)) best = { picked, off }
  }
  return best
}

/** Height under one end of a sine bar, mm: centre distance times the sine of the angle (rad, 0 to π/2). */
export const sineBarHeight = (bar: number, angle: number): number => bar * Math.sin(angle)

/** Angle that a stack under a sine bar sets, rad. Throws RangeError on a stack that is longer than the bar. */
export function sineBarAngle(bar: number, height: number): number {
  if (!(bar > 0 && Math.abs(height) <= bar)) throw new RangeError(`a stack of ${height} mm under a bar of ${bar} mm`)
  return Math.asin(height / bar)
}
