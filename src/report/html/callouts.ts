import type { Point } from '../../geometry/polygon.ts'
import { type Drawing, signWidth, textSize } from './drawing.ts'

export interface Callout {
  /** What it points at; left out: words without a leader. */
  readonly at?: Point
  readonly words: string
}

/** A column of words beside a drawing. */
export interface Column {
  /** Which side of the drawing it stands on. */
  readonly side: 'left' | 'right'
  readonly x: number
  readonly width: number
  readonly top: number
  readonly bottom: number
}

const lineHeight = 1.25 * textSize
const gap = 1.6

/**
 * Words in a column, each as high up as what it points at as far as the others leave room, with a leader to it. Words
 * never overlap; what does not fit between top and bottom runs on below.
 */
export function callouts(drawing: Drawing, column: Column, items: readonly Callout[]): void {
  const { side, x, width, top, bottom } = column
  const sorted = items
    .map((item) => ({ ...item, lines: wrapped(item.words, Math.floor(width / (signWidth * textSize))) }))
    .toSorted((a, b) => (a.at?.[1] ?? Infinity) - (b.at?.[1] ?? Infinity))
  const heights = sorted.map(({ lines }) => lines.length * lineHeight)
  const starts = sorted.map(({ at }) => (at === undefined ? -Infinity : at[1] - lineHeight / 2))
  const pushDown = () => {
    let next = top
    heights.forEach((height, i) => {
      starts[i] = Math.max(starts[i]!, next)
      next = starts[i]! + height + gap
    })
  }
  pushDown()
  let limit = bottom
  for (let i = sorted.length - 1; i >= 0; i--) {
    starts[i] = Math.min(starts[i]!, limit - heights[i]!)
    limit = starts[i]! - gap
  }
  pushDown()
  sorted.forEach(({ at, lines }, i) => {
    const y = starts[i]!
    if (at !== undefined) {
      drawing.line('leader', [side === 'left' ? x + 0.8 : x - 0.8, y + lineHeight / 2], at)
      drawing.circle('leader', at, 0.35)
    }
    lines.forEach((line, k) => {
      drawing.text([x, y + (k + 0.78) * lineHeight], line, { anchor: side === 'left' ? 'end' : 'start' })
    })
  })
}

/** Words in lines of so many signs at the most; a longer word stands alone. */
export function wrapped(words: string, most: number): string[] {
  const lines: string[] = []
  for (const word of words.split(' ')) {
    const line = lines.at(-1)
    if (line !== undefined && line.length + 1 + word.length <= most) lines[lines.length - 1] = `${line} ${word}`
    else lines.push(word)
  }
  return lines
}
