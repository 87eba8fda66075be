import type { Entity, Point } from '../../src/drawing/entity.ts'
import { flattened } from '../../src/drawing/entity-shape.ts'
import type { Font } from '../../src/drawing/font/font.ts'
import { textCorners } from '../../src/drawing/font/text-box.ts'
import { type Sheet, sheetOnPaper } from '../../src/drawing/sheet/sheet.ts'
import { meets } from './clear-text.ts'

/** Far enough inside for a binary last digit, far less than a line's width: mm. */
const slack = 1e-3

interface Boxed<T> {
  readonly shape: T
  readonly low: Point
  readonly high: Point
}

function boxed<T extends readonly Point[]>(shape: T): Boxed<T> {
  const [xs, ys] = [shape.map((p) => p[0]), shape.map((p) => p[1])]
  return { shape, low: [Math.min(...xs), Math.min(...ys)], high: [Math.max(...xs), Math.max(...ys)] }
}

const apart = (a: Boxed<unknown>, b: Boxed<unknown>): boolean =>
  a.high[0] <= b.low[0] || b.high[0] <= a.low[0] || a.high[1] <= b.low[1] || b.high[1] <= a.low[1]

/** What is wrong on a whole sheet, frame and title block with it, in words: texts in the way, and ink outside the frame. */
export function sheetFaults(font: Font, sheet: Sheet): string[] {
  const all = sheetOnPaper(sheet)
  const texts = all.flatMap((e) =>
    e.kind === 'text' ? [{ text: e.text, ...boxed(textCorners(font, e, -slack)) }] : [],
  )
  const pieces = all.flatMap((e) => piecesOf(e).map(boxed))
  const { width, height, margins } = sheet.size
  const inFrame = ({ low, high }: Boxed<unknown>) =>
    low[0] > margins.left - 5 &&
    high[0] < width - margins.right + 5 &&
    low[1] > margins.bottom - 5 &&
    high[1] < height - margins.top + 5
  return [
    ...texts.flatMap((t, i) => [
      ...texts.slice(i + 1).flatMap((o) => (!apart(t, o) && meets(o.shape, t.shape) ? [`${t.text} on ${o.text}`] : [])),
      ...pieces.flatMap((p) =>
        !apart(t, p) && meets(p.shape, t.shape) ? [`${t.text} on a line at ${p.shape.flat().map(Math.round)}`] : [],
      ),
      ...(t.low[0] > margins.left &&
      t.high[0] < width - margins.right &&
      t.low[1] > margins.bottom &&
      t.high[1] < height - margins.top
        ? []
        : [`${t.text} outside the frame`]),
    ]),
    ...pieces.flatMap((p) => (inFrame(p) ? [] : [`a line outside the frame at ${p.shape.flat().map(Math.round)}`])),
  ]
}

function piecesOf(e: Entity<string>): Point[][] {
  if (e.kind === 'text' || e.kind === 'hatch') return []
  if (e.kind === 'arrow') {
    const back = (side: number): Point => [
      e.tip[0] - e.length * Math.cos(e.direction) - (side * e.width * Math.sin(e.direction)) / 2,
      e.tip[1] - e.length * Math.sin(e.direction) + (side * e.width * Math.cos(e.direction)) / 2,
    ]
    return [[e.tip, back(1), back(-1)]]
  }
  const points = flattened(e, 0.02)
  return points.slice(1).map((p, i) => [points[i]!, p])
}
