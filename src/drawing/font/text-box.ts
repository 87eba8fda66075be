import type { Point, Text } from '../entity.ts'
import type { Font } from './font.ts'

/** Width of a line of text, mm, at a height of capitals in mm. Throws RangeError at a character the font lacks. */
export function textWidth(font: Font, text: string, height: number): number {
  let sum = 0
  for (const character of text) {
    const advance = font.advance(character)
    if (advance === undefined) throw new RangeError(`the drawing font has no sign for ${JSON.stringify(character)}`)
    sum += advance
  }
  return sum * height
}

/** Lowest and highest ink of a line of text against its baseline, mm; at least from the baseline to a capital. */
export function textInk(font: Font, text: string, height: number): { readonly low: number; readonly high: number } {
  let [low, high] = [0, 1]
  for (const character of text) {
    const ink = font.ink(character)
    if (ink === undefined) throw new RangeError(`the drawing font has no sign for ${JSON.stringify(character)}`)
    low = Math.min(low, ink.low)
    high = Math.max(high, ink.high)
  }
  return { low: low * height, high: high * height }
}

/** Where the line of writing begins: left end of the baseline. */
export function textStart(font: Font, text: Text<string>): Point {
  const width = textWidth(font, text.text, text.height)
  const back = text.across === 'left' ? 0 : text.across === 'center' ? width / 2 : width
  const down = text.up === 'baseline' ? 0 : text.up === 'middle' ? text.height / 2 : text.height
  const [c, s] = [Math.cos(text.rotation), Math.sin(text.rotation)]
  return [text.at[0] - back * c + down * s, text.at[1] - back * s - down * c]
}

/** The four corners of a text's ink, `gap` mm larger all round: lower left first, anticlockwise as it is read. */
export function textCorners(font: Font, text: Text<string>, gap = 0): readonly [Point, Point, Point, Point] {
  const [x, y] = textStart(font, text)
  const width = textWidth(font, text.text, text.height)
  const { low, high } = textInk(font, text.text, text.height)
  const [c, s] = [Math.cos(text.rotation), Math.sin(text.rotation)]
  const corner = (along: number, across: number): Point => [x + along * c - across * s, y + along * s + across * c]
  return [
    corner(-gap, low - gap),
    corner(width + gap, low - gap),
    corner(width + gap, high + gap),
    corner(-gap, high + gap),
  ]
}
