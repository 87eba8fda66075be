import { wrapped } from './callouts.ts'
import { type Drawing, type Look, signWidth, textSize } from './drawing.ts'

/** One line of a bar picture: words, a bar or a mark on the shared scale, figures. */
export interface BarRow {
  readonly label: string
  readonly bar?: { readonly from: number; readonly to: number; readonly look: Look }
  /** A single place instead of a stretch. */
  readonly mark?: { readonly at: number; readonly look: 'mark' | 'limit' }
  readonly figures: string
}

/** Where the rows stand: labels left, bars between `left` and `right`, figures right of them. */
export interface BarScale {
  readonly low: number
  readonly high: number
}

export const barColumns = { labels: 2, left: 56, right: 138, figures: 142, end: 180 } as const

const labelSigns = Math.floor((barColumns.left - barColumns.labels - 2) / (signWidth * textSize))
const figureSigns = Math.floor((barColumns.end - barColumns.figures) / (signWidth * textSize))
const lineHeight = 1.25 * textSize

/** Place on the page of a value, held to the ends of the scale. */
export function barPlace({ low, high }: BarScale, value: number): number {
  const share = Math.min(1, Math.max(0, (value - low) / (high - low)))
  return barColumns.left + share * (barColumns.right - barColumns.left)
}

/** Draws the rows from `top` down and gives where they end. A bar that runs past the scale ends in two strokes. */
export function barRows(drawing: Drawing, scale: BarScale, rows: readonly BarRow[], top: number): number {
  let y = top
  for (const { label, bar, mark, figures } of rows) {
    const [words, numbers] = [wrapped(label, labelSigns), wrapped(figures, figureSigns)]
    const height = Math.max(words.length, numbers.length) * lineHeight + 2.4
    const middle = y + height / 2
    const write = (lines: readonly string[], x: number) => {
      lines.forEach((line, i) => {
        drawing.text([x, middle + (i - lines.length / 2 + 0.78) * lineHeight], line)
      })
    }
    write(words, barColumns.labels)
    write(numbers, barColumns.figures)
    if (bar) {
      const [from, to] = [barPlace(scale, bar.from), barPlace(scale, bar.to)]
      drawing.polygon(bar.look, [
        [from, middle - 2],
        [Math.max(to, from + 0.3), middle - 2],
        [Math.max(to, from + 0.3), middle + 2],
        [from, middle + 2],
      ])
      if (bar.to > scale.high) {
        for (const x of [to - 3, to - 1.6]) drawing.line('gap', [x - 0.7, middle + 2.6], [x + 0.7, middle - 2.6])
      }
    }
    if (mark !== undefined && mark.at >= scale.low && mark.at <= scale.high) {
      const x = barPlace(scale, mark.at)
      drawing.line(mark.look, [x, middle - 2.6], [x, middle + 2.6])
    }
    y += height
  }
  return y
}
