import type { Box } from '../dimensions/room.ts'
import type { Point } from '../entity.ts'

/** Width and height, mm. */
export type Extent = readonly [number, number]

export interface Spot {
  readonly page: number
  /** Lower left corner. */
  readonly at: Point
}

/** Things on pages. */
export interface Packed {
  /** In the order of the things. */
  readonly spots: readonly Spot[]
  readonly pages: number
  /** No arrangement with that gap takes fewer pages: the things fill them. */
  readonly least: number
}

/** In which turn places are tried: from the top down, or from left to right. */
type Rule = 'rows' | 'columns'

/**
 * The arrangement with the fewest pages among several: things in the order given, the tallest, the widest or the largest
 * first, each at the first place that has room. Undefined where that is not fewer than `fewerThan`, or a thing is too large
 * for an empty page. `taken`: boxes of the area that are free on no page; `gap`: mm between any two things.
 */
export function packedBest(
  sizes: readonly Extent[],
  area: Box,
  taken: readonly Box[],
  gap: number,
  fewerThan = Infinity,
): Packed | undefined {
  // Each thing with its gap to the right and above, on an area that is larger by one gap.
  const free =
    (area.high[0] - area.low[0] + gap) * (area.high[1] - area.low[1] + gap) -
    taken.reduce((sum, b) => sum + Math.max(0, overlapOf(area, b)), 0)
  const least = Math.max(1, Math.ceil(sizes.reduce((sum, [w, h]) => sum + (w + gap) * (h + gap), 0) / free - 1e-9))
  const given = sizes.map((_, i) => i)
  const by = (key: (size: Extent) => number) => [...given].sort((a, b) => key(sizes[b]!) - key(sizes[a]!) || a - b)
  const orders = [given, by(([, h]) => h), by(([w]) => w), by(([w, h]) => w * h)]
  let best: Packed | undefined
  for (const order of orders) {
    for (const rule of ['rows', 'columns'] as const) {
      if (least >= (best?.pages ?? fewerThan)) return best && evened(best, sizes, area, taken, gap)
      const spots = packedSo(sizes, order, area, taken, gap, rule)
      if (!spots) return undefined
      const pages = Math.max(...spots.map((s) => s.page)) + 1
      if (pages < (best?.pages ?? fewerThan)) best = { spots: centred(spots, sizes, area, taken, gap), pages, least }
    }
  }
  return best && evened(best, sizes, area, taken, gap)
}

/** How much more than its even part a page may take, tried in turn. */
const uneven = [1.05, 1.15, 1.3, 1.5]

/** The same things on as many pages, none much fuller than another, those given first on the first: where that can be. */
function evened(packed: Packed, sizes: readonly Extent[], area: Box, taken: readonly Box[], gap: number): Packed {
  if (packed.pages === 1) return packed
  const given = sizes.map((_, i) => i)
  const even = sizes.reduce((sum, [w, h]) => sum + w * h, 0) / packed.pages
  for (const share of uneven) {
    for (const rule of ['rows', 'columns'] as const) {
      const spots = packedSo(sizes, given, area, taken, gap, rule, share * even)
      if (!spots || Math.max(...spots.map((s) => s.page)) + 1 > packed.pages) continue
      return { ...packed, spots: centred(spots, sizes, area, taken, gap) }
    }
  }
  return packed
}

const overlapOf = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.high[0], b.high[0]) - Math.max(a.low[0], b.low[0])) *
  Math.max(0, Math.min(a.high[1], b.high[1]) - Math.max(a.low[1], b.low[1]))

const boxAt = ([x, y]: Point, [w, h]: Extent): Box => ({ low: [x, y], high: [x + w, y + h] })

function packedSo(
  sizes: readonly Extent[],
  order: readonly number[],
  area: Box,
  taken: readonly Box[],
  gap: number,
  rule: Rule,
  mostArea = Infinity,
): Spot[] | undefined {
  const pages: Box[][] = []
  const areaOf = (boxes: readonly Box[]) =>
    boxes.reduce((sum, { low, high }) => sum + (high[0] - low[0]) * (high[1] - low[1]), 0)
  const spots: Spot[] = []
  for (const i of order) {
    for (let page = 0; ; page++) {
      const boxes = pages[page] ?? []
      const [w, h] = sizes[i]!
      if (boxes.length > 0 && areaOf(boxes) + w * h > mostArea) continue
      const at = placeAmong([...taken, ...boxes], sizes[i]!, area, gap, rule)
      if (!at) {
        if (boxes.length === 0) return undefined
        continue
      }
      pages[page] = [...boxes, boxAt(at, sizes[i]!)]
      spots[i] = { page, at }
      break
    }
  }
  // Pages are alike: the one with the first thing comes first.
  const inOrder = [...new Set(spots.map((s) => s.page))]
  return spots.map(({ page, at }) => ({ page: inOrder.indexOf(page), at }))
}

function placeAmong(
  boxes: readonly Box[],
  [width, height]: Extent,
  { low, high }: Box,
  gap: number,
  rule: Rule,
): Point | undefined {
  const fitsRight = (left: number) => left + width <= high[0] + 1e-9
  const fitsBelow = (top: number) => top <= high[1] && top - height >= low[1] - 1e-9
  const lefts = [low[0], ...boxes.map((b) => b.high[0] + gap)].filter(fitsRight).sort((a, b) => a - b)
  const tops = [high[1], ...boxes.map((b) => b.low[1] - gap)].filter(fitsBelow).sort((a, b) => b - a)
  const [outer, inner] = rule === 'rows' ? [tops, lefts] : [lefts, tops]
  for (const first of outer) {
    for (const second of inner) {
      const [left, top] = rule === 'rows' ? [second, first] : [first, second]
      if (isFree(boxes, left, top - height, left + width, top, gap)) return [left, top - height]
    }
  }
  return undefined
}

/** Tried many thousand times a sheet: plain numbers, no boxes made. */
function isFree(boxes: readonly Box[], left: number, bottom: number, right: number, top: number, gap: number) {
  for (const { low, high } of boxes) {
    const clear =
      right + gap <= low[0] + 1e-9 ||
      high[0] + gap <= left + 1e-9 ||
      top + gap <= low[1] + 1e-9 ||
      high[1] + gap <= bottom + 1e-9
    if (!clear) return false
  }
  return true
}

/** The things of each page moved together into the middle of what is free, as far as they clear what is taken. */
function centred(
  spots: readonly Spot[],
  sizes: readonly Extent[],
  area: Box,
  taken: readonly Box[],
  gap: number,
): Spot[] {
  const moved = [...spots]
  const pages = Math.max(...spots.map((s) => s.page)) + 1
  for (let page = 0; page < pages; page++) {
    const mine = spots.flatMap((s, i) => (s.page === page ? [i] : []))
    const boxes = mine.map((i) => boxAt(spots[i]!.at, sizes[i]!))
    const right = Math.max(...boxes.map((b) => b.high[0]))
    const bottom = Math.min(...boxes.map((b) => b.low[1]))
    // What is taken right across the area bounds it from below.
    const floors = taken.filter((t) => t.low[0] <= area.low[0] && t.high[0] >= area.high[0]).map((t) => t.high[1] + gap)
    const shift: Point = [(area.high[0] - right) / 2, (Math.max(area.low[1], ...floors) - bottom) / 2]
    const clear = ([dx, dy]: Point) =>
      boxes.every((b) => {
        return isFree(taken, b.low[0] + dx, b.low[1] + dy, b.high[0] + dx, b.high[1] + dy, gap)
      })
    const by = ([shift, [shift[0], 0], [0, shift[1]]] as const).find(clear)
    if (!by) continue
    for (const i of mine) {
      const [x, y] = spots[i]!.at
      moved[i] = { page, at: [x + by[0], y + by[1]] }
    }
  }
  return moved
}
