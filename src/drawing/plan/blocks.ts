import type { Entity, Point } from '../entity.ts'
import type { Font } from '../font/font.ts'
import { textWidth } from '../font/text-box.ts'
import type { DrawingStyle, LayerName } from '../style.ts'
import type { Block, DrawnNotes, DrawnTable } from './sheet-plan.ts'

/** A block set in type: mm on paper from its lower left corner. */
export interface SetBlock {
  readonly width: number
  readonly height: number
  readonly entities: readonly Entity<LayerName>[]
}

/** Sets a table or notes, no wider than `widest` mm: notes are wrapped, a table that is too wide is set smaller. */
export function setBlock(block: Block, widest: number, style: DrawingStyle, font: Font): SetBlock {
  if (block.kind === 'notes') return setNotes(block, widest, style, font)
  const whole = setTable(block, style.textHeight, style, font)
  return whole.width <= widest
    ? whole
    : setTable(block, (style.textHeight * widest * 0.999) / whole.width, { ...style, textGap: 0 }, font)
}

const text = (at: Point, words: string, height: number, across: 'left' | 'right' = 'left'): Entity<LayerName> => ({
  kind: 'text',
  layer: 'text',
  at,
  text: words,
  height,
  across,
  up: 'baseline',
  rotation: 0,
})

/** Columns of numbers stand right, words left: told by their first cell. */
function setTable({ title, columns, rows }: DrawnTable, h: number, style: DrawingStyle, font: Font): SetBlock {
  const pad = 0.6 * h
  const row = 1.9 * h
  const widths = columns.map((label, i) =>
    Math.max(...[label, ...rows.map((r) => r[i] ?? '')].map((cell) => textWidth(font, cell, h) + 2 * pad)),
  )
  const short = textWidth(font, title, h) - widths.reduce((sum, w) => sum + w, 0)
  if (short > 0) widths[widths.length - 1]! += short
  const edges = [0]
  for (const w of widths) edges.push(edges.at(-1)! + w)
  const width = edges.at(-1)!
  const top = (rows.length + 1) * row
  const layer: LayerName = 'datum'
  const entities: Entity<LayerName>[] = [
    text([0, top + style.textGap + 0.4 * h], title, h),
    ...Array.from(
      { length: rows.length + 2 },
      (_, k): Entity<LayerName> => ({ kind: 'line', layer, from: [0, k * row], to: [width, k * row] }),
    ),
    ...edges.map((x): Entity<LayerName> => ({ kind: 'line', layer, from: [x, 0], to: [x, top] })),
  ]
  ;[columns, ...rows].forEach((cells, k) => {
    cells.forEach((cell, i) => {
      if (cell === '') return
      const y = top - (k + 1) * row + 0.45 * h
      const number = /^[−+(]?\d/.test(rows[0]?.[i] ?? '')
      const at: Point = number ? [edges[i + 1]! - pad, y] : [edges[i]! + pad, y]
      entities.push(text(at, cell, h, number ? 'right' : 'left'))
    })
  })
  return { width, height: top + style.textGap + 1.9 * h, entities }
}

function setNotes({ title, lines }: DrawnNotes, widest: number, style: DrawingStyle, font: Font): SetBlock {
  const h = style.textHeight
  const wrapped = [title, ...lines.flatMap((line) => wrap(line, Math.min(widest, 110), h, font))]
  const height = (wrapped.length - 1) * style.lineSpacing + 1.4 * h
  return {
    width: Math.max(...wrapped.map((line) => textWidth(font, line, h))),
    height,
    entities: wrapped.map((line, i) => text([0, height - h - i * style.lineSpacing], line, h)),
  }
}

/** The words of a line on as many lines as they need; what goes on is set in. */
export function wrap(line: string, width: number, height: number, font: Font): string[] {
  const out: string[] = []
  let current = ''
  for (const word of line.split(' ')) {
    const next = current === '' ? word : `${current} ${word}`
    if (current !== '' && textWidth(font, next, height) > width) {
      out.push(current)
      current = `  ${word}`
    } else current = next
  }
  return [...out, current]
}
