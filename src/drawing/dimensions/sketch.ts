import type { Entity, Hatch, Point, Text } from '../entity.ts'
import { flattened } from '../entity-shape.ts'
import type { Font } from '../font/font.ts'
import { textCorners, textWidth } from '../font/text-box.ts'
import type { DrawingStyle, LayerName } from '../style.ts'
import type { Quad, Room, Segment } from './room.ts'

/** What placing needs everywhere. All coordinates are mm on paper from the view's origin. */
export interface Paper {
  readonly style: DrawingStyle
  readonly font: Font
  readonly room: Room
}

/** How far a chord may leave its curve where room is looked for, mm on paper. */
const chord = 0.1

export const drawnLine = (from: Point, to: Point): Entity<LayerName> => ({ kind: 'line', layer: 'dimension', from, to })

export const arrowAt = ({ style }: Paper, tip: Point, direction: number): Entity<LayerName> => ({
  kind: 'arrow',
  layer: 'dimension',
  tip,
  direction,
  length: style.arrowLength,
  width: style.arrowWidth,
})

export const stepped = (p: Point, direction: number, distance: number): Point => [
  p[0] + distance * Math.cos(direction),
  p[1] + distance * Math.sin(direction),
]

/** Width of the widest line of a text, mm. */
export const blockWidth = ({ font, style }: Paper, lines: readonly string[]): number =>
  Math.max(...lines.map((line) => textWidth(font, line, style.textHeight)))

/**
 * Lines of a text standing on a line: `at` lies on that line, at the left end or the middle of the text as it is read.
 * The lowest ink keeps the style's gap from the line.
 */
export function textBlock(
  { font, style }: Paper,
  lines: readonly string[],
  at: Point,
  rotation: number,
  across: 'left' | 'center' | 'right',
): Text<LayerName>[] {
  const h = style.textHeight
  // Brackets and small p reach below the baseline.
  const low = Math.min(0, ...[...lines.at(-1)!].map((c) => font.ink(c)?.low ?? 0)) * h
  return lines.map((text, i) => {
    const rise = style.textGap - low + style.lineSpacing * (lines.length - 1 - i)
    return {
      kind: 'text',
      layer: 'dimension',
      at: stepped(at, rotation + Math.PI / 2, rise),
      text,
      height: h,
      across,
      up: 'baseline',
      rotation,
    }
  })
}

/** The room a text takes with half the gap all round, so that two texts stand a whole gap apart. */
export const quadOf = ({ font, style }: Paper, text: Text<LayerName>): Quad =>
  textCorners(font, text, style.textGap / 2)

export const middleOf = (quads: readonly Quad[]): Point => {
  const all = quads.flat()
  const mean = (k: 0 | 1) => all.reduce((sum, p) => sum + p[k], 0) / all.length
  return [mean(0), mean(1)]
}

/** Straight pieces of everything drawn that is no text; arrows by their axis. */
export function segmentsOf(graphics: readonly Entity<LayerName>[]): Segment[] {
  return graphics.flatMap((g): Segment[] => {
    if (g.kind === 'text' || g.kind === 'hatch') return []
    if (g.kind === 'arrow') return [[g.tip, stepped(g.tip, g.direction, -g.length)]]
    const points = flattened(g, chord)
    return points.slice(1).map((p, i): Segment => [points[i]!, p])
  })
}

/**
 * Whether a whole dimension stands clear: its text of everything, its lines of every text. `onHatch`: text may stand on a
 * hatched face, which is then cut out round it.
 */
export function fits(
  { room }: Paper,
  id: string,
  quads: readonly Quad[],
  segments: readonly Segment[],
  onHatch = false,
): boolean {
  return (
    quads.every((q) => room.textFits(q, id) && (onHatch || !room.onHatch(q))) &&
    segments.every(([a, b]) => room.lineFits(a, b))
  )
}

/** The loops of a hatch as straight pieces. */
export const hatchLoops = (hatch: Hatch<LayerName>): Point[][] =>
  hatch.loops.map((loop) => {
    // Edges follow one another in either sense: each is turned so that it starts where the last one ended.
    const pieces = loop.map((edge) => [...flattened(edge, chord)])
    const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])
    return pieces.flatMap((piece, i) => {
      const before = pieces[i - 1]
      const after = pieces[i + 1]
      const [first, last] = [piece[0]!, piece.at(-1)!]
      const backwards = before
        ? apart(last, before.at(-1)!) < apart(first, before.at(-1)!)
        : after !== undefined &&
          Math.min(apart(first, after[0]!), apart(first, after.at(-1)!)) <
            Math.min(apart(last, after[0]!), apart(last, after.at(-1)!))
      if (backwards) piece.reverse()
      return piece
    })
  })

/** Takes its room, and gives up what was reserved for it. */
export function take(paper: Paper, id: string, graphics: readonly Entity<LayerName>[]): void {
  paper.room.release(id)
  for (const g of graphics) if (g.kind === 'text') paper.room.addText(quadOf(paper, g))
  for (const [a, b] of segmentsOf(graphics)) paper.room.addLine(a, b)
}
