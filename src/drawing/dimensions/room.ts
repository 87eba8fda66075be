import type { Point } from '../entity.ts'

/** A rectangle with sides along the axes. */
export interface Box {
  readonly low: Point
  readonly high: Point
}

export const boxOf = (points: readonly Point[]): Box => {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of points) {
    x0 = Math.min(x0, x)
    y0 = Math.min(y0, y)
    x1 = Math.max(x1, x)
    y1 = Math.max(y1, y)
  }
  return { low: [x0, y0], high: [x1, y1] }
}

/** The corners of a text's box in turn. */
export type Quad = readonly [Point, Point, Point, Point]
export type Segment = readonly [Point, Point]

interface Placed<T> {
  readonly shape: T
  readonly box: Box
}

/** How far shapes that touch may reach into each other, mm: far below a line's width. */
const slack = 1e-6

const apart = (a: Box, b: Box): boolean =>
  a.high[0] < b.low[0] + slack ||
  b.high[0] < a.low[0] + slack ||
  a.high[1] < b.low[1] + slack ||
  b.high[1] < a.low[1] + slack

/** Whether two convex shapes overlap: no edge of either separates them. */
export function overlap(a: readonly Point[], b: readonly Point[]): boolean {
  return !separates(a, b) && !separates(b, a)
}

function separates(a: readonly Point[], b: readonly Point[]): boolean {
  for (let i = 0; i < a.length; i++) {
    const [p, q] = [a[i]!, a[(i + 1) % a.length]!]
    const [dx, dy] = [q[0] - p[0], q[1] - p[1]]
    const size = Math.hypot(dx, dy)
    if (size === 0) continue
    let [mineLow, mineHigh, low, high] = [Infinity, -Infinity, Infinity, -Infinity]
    for (const c of a) {
      const across = ((c[0] - p[0]) * dy - (c[1] - p[1]) * dx) / size
      if (across < mineLow) mineLow = across
      if (across > mineHigh) mineHigh = across
    }
    for (const c of b) {
      const across = ((c[0] - p[0]) * dy - (c[1] - p[1]) * dx) / size
      if (across < low) low = across
      if (across > high) high = across
    }
    if (low > mineHigh - slack || high < mineLow + slack) return true
  }
  return false
}

/** Odd-even: how often a ray to the right crosses the loops. */
export function isInside(loops: readonly (readonly Point[])[], [x, y]: Point): boolean {
  let inside = false
  for (const loop of loops) {
    loop.forEach((b, i) => {
      const a = loop[(i + loop.length - 1) % loop.length]!
      if (a[1] > y !== b[1] > y && a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]) > x) inside = !inside
    })
  }
  return inside
}

/** What is taken already: text, and lines that text must keep off. Shapes given here include their own gap. */
export class Room {
  private readonly texts: Placed<Quad>[] = []
  private readonly lines: Placed<Segment>[] = []
  private readonly faces: { readonly loops: readonly (readonly Point[])[]; readonly box: Box }[] = []
  private reserved: (Placed<Segment> & { readonly owner: string })[] = []

  addText(quad: Quad): void {
    this.texts.push({ shape: quad, box: boxOf(quad) })
  }

  addLine(from: Point, to: Point): void {
    this.lines.push({ shape: [from, to], box: boxOf([from, to]) })
  }

  /** A hatched face, its loops as straight pieces, inside by the odd-even rule. */
  addFace(loops: readonly (readonly Point[])[]): void {
    this.faces.push({ loops, box: boxOf(loops.flat()) })
  }

  /** Whether a shape that crosses no line stands on a hatched face. */
  onHatch(quad: Quad): boolean {
    const middle: Point = [(quad[0][0] + quad[2][0]) / 2, (quad[0][1] + quad[2][1]) / 2]
    const box: Box = { low: middle, high: middle }
    return this.faces.some((f) => !apart(f.box, box) && isInside(f.loops, middle))
  }

  /** Keeps text of others off a line that `owner` will want. */
  reserve(owner: string, from: Point, to: Point): void {
    this.reserved.push({ owner, shape: [from, to], box: boxOf([from, to]) })
  }

  /** Gives up what `owner` had reserved, once it has its place. */
  release(owner: string): void {
    this.reserved = this.reserved.filter((r) => r.owner !== owner)
  }

  /** Whether a text of `owner` would stand clear of every text and line, and of lines that others have reserved. */
  textFits(quad: Quad, owner: string): boolean {
    const box = boxOf(quad)
    const free = ({ shape, box: other }: Placed<readonly Point[]>) => apart(box, other) || !overlap(quad, shape)
    return this.texts.every(free) && this.lines.every(free) && this.reserved.every((r) => r.owner === owner || free(r))
  }

  /** Whether a line would stand clear of every text. */
  lineFits(from: Point, to: Point): boolean {
    const segment: Segment = [from, to]
    const box = boxOf(segment)
    return this.texts.every(({ shape, box: other }) => apart(box, other) || !overlap(shape, segment))
  }

  /** How many lines it would cross. */
  crossings(from: Point, to: Point): number {
    const segment: Segment = [from, to]
    const box = boxOf(segment)
    return this.lines.filter(({ shape, box: other }) => !apart(box, other) && overlap(shape, segment)).length
  }

  /** How many lines run through a shape or come near it. */
  linesIn(quad: Quad): number {
    const box = boxOf(quad)
    return this.lines.filter(({ shape, box: other }) => !apart(box, other) && overlap(quad, shape)).length
  }

  /** Around everything in it. */
  bounds(): Box {
    return boxOf([...this.texts, ...this.lines].flatMap(({ box }) => [box.low, box.high]))
  }
}
