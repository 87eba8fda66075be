import type { Box } from '../dimensions/room.ts'
import type { Point } from '../entity.ts'

/** Width and height, mm. */
export type Extent = readonly [number, number]

/** Pages that are filled from the top left; every page has the same area and the same places that are taken. */
export class Pages {
  private readonly area: Box
  private readonly gap: number
  private readonly taken: readonly Box[]
  readonly filled: Box[][] = []

  /** `taken`: boxes inside the area that are not free. `gap`: mm between any two things. */
  constructor(area: Box, taken: readonly Box[], gap: number) {
    this.area = area
    this.taken = taken
    this.gap = gap
  }

  /**
   * Puts a thing on the first page that has room, else on a new one: highest place first, then furthest left. Gives
   * page and lower left corner, or undefined where an empty page is too small.
   */
  put(size: Extent): { readonly page: number; readonly at: Point } | undefined {
    for (let page = 0; page <= this.filled.length; page++) {
      const boxes = this.filled[page] ?? []
      const at = this.placeAmong([...this.taken, ...boxes], size)
      if (!at) continue
      this.filled[page] = [...boxes, { low: at, high: [at[0] + size[0], at[1] + size[1]] }]
      return { page, at }
    }
    return undefined
  }

  private placeAmong(boxes: readonly Box[], [width, height]: Extent): Point | undefined {
    const { low, high } = this.area
    const gap = this.gap
    const lefts = [low[0], ...boxes.map((b) => b.high[0] + gap)].sort((a, b) => a - b)
    const tops = [high[1], ...boxes.map((b) => b.low[1] - gap)].sort((a, b) => b - a)
    for (const top of tops) {
      for (const left of lefts) {
        const [right, bottom] = [left + width, top - height]
        if (right > high[0] + 1e-9 || bottom < low[1] - 1e-9 || left < low[0] || top > high[1]) continue
        const clear = boxes.every(
          (b) =>
            right + gap <= b.low[0] + 1e-9 ||
            b.high[0] + gap <= left + 1e-9 ||
            top + gap <= b.low[1] + 1e-9 ||
            b.high[1] + gap <= bottom + 1e-9,
        )
        if (clear) return [left, bottom]
      }
    }
    return undefined
  }
}
