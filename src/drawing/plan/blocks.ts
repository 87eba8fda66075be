import type { Entity, Point } from '../entity.ts'
import type { Font } from '../font/font.ts'
import { textWidth } from '../font/text-box.ts'
import { wrap } from '../font/wrap.ts'
import type { DrawingStyle, LayerName } from '../style.ts'
import type { Block, DrawnNotes, DrawnTable } from './sheet-plan.ts'

/** A block set in type: mm on paper from its lower left corner. */
export interface SetBlock {
  readonly width: number
  readonly height: number
  readonly entities: readonly Entity<LayerName>[]
}

/**
 * Sets a table or notes: notes wrapped to lines of `noteWidth` mm, a table that is wider than `widest` set closer, then
 * smaller, its title wrapped over its columns.
 */
export function setBlock(block: Block, noteWidth: number, widest: number, style: DrawingStyle, font: Font): SetBlock {
  if (block.kind === 'notes') return setNotes(block, noteWidth, style, font)
  const h = style.textHeight
  const wide = setTable(block, h, usualPad, style, font)
  if (wide.width <= widest) return wide
  const close = setTable(block, h, leastPad, style, font)
  return close.width <= widest
    ? close
    : setTable(block, (h * widest * 0.999) / close.width, leastPad, { ...style, textGap: 0 }, font)
}

/** Left and right of what stands in a cell, over the height of the text: as a rule, and where a table is wide. */
const [usualPad, leastPad] = [0.6, 0.3] as const

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

/** Columns of numbers stand right, limits and a thread among them too; words left. */
function setTable(
  { title, columns, rows }: DrawnTable,
  h: number,
  beside: number,
  style: DrawingStyle,
  font: Font,
): SetBlock {
  const pad = beside * h
  const row = 1.9 * h
  const widths = columns.map((label, i) =>
    Math.max(...[label, ...rows.map((r) => r[i] ?? '')].map((cell) => textWidth(font, cell, h) + 2 * pad)),
  )
  // A narrow table gives its title a line of at least this length.
  const own = widths.reduce((sum, w) => sum + w, 0)
  const longest = Math.max(...title.split(' ').map((word) => textWidth(font, word, h)))
  const says = wrap(title, Math.max(own, longest, 24 * h), h, font)
  const edges = [0]
  for (const w of widths) edges.push(edges.at(-1)! + w)
  const width = edges.at(-1)!
  const spacing = (style.lineSpacing * h) / style.textHeight
  const top = (rows.length + 1) * row
  const layer: LayerName = 'datum'
  const entities: Entity<LayerName>[] = [
    ...says.map((line, k) => text([0, top + style.textGap + 0.4 * h + (says.length - 1 - k) * spacing], line, h)),
    ...Array.from(
      { length: rows.length + 2 },
      (_, k): Entity<LayerName> => ({ kind: 'line', layer, from: [0, k * row], to: [width, k * row] }),
    ),
    ...edges.map((x): Entity<LayerName> => ({ kind: 'line', layer, from: [x, 0], to: [x, top] })),
  ]
  const numbers = columns.map((_, i) => {
    const cells = rows.flatMap((r) => (r[i] === undefined || r[i] === '' ? [] : [/^(to )?[−+(]?\d/.test(r[i])]))
    return cells.filter((isNumber) => !isNumber).length * 2 <= cells.length
  })
  ;[columns, ...rows].forEach((cells, k) => {
    cells.forEach((cell, i) => {
      if (cell === '') return
      const y = top - (k + 1) * row + 0.45 * h
      const number = numbers[i]!
      const at: Point = number ? [edges[i + 1]! - pad, y] : [edges[i]! + pad, y]
      entities.push(text(at, cell, h, number ? 'right' : 'left'))
    })
  })
  return {
    width: Math.max(width, ...says.map((line) => textWidth(font, line, h))),
    height: top + style.textGap + 1.9 * h + (says.length - 1) * spacing,
    entities,
  }
}

function setNotes({ title, lines }: DrawnNotes, widest: number, style: DrawingStyle, font: Font): SetBlock {
  const h = style.textHeight
  const wrapped = [title, ...lines.flatMap((line) => wrap(line, widest, h, font, '  '))]
  const height = (wrapped.length - 1) * style.lineSpacing + 1.4 * h
  return {
    width: Math.max(...wrapped.map((line) => textWidth(font, line, h))),
    height,
    entities: wrapped.map((line, i) => text([0, height - h - i * style.lineSpacing], line, h)),
  }
}
