import type { Font } from './font.ts'
import { textWidth } from './text-box.ts'

/**
 * The words of a text on as many lines as they need, none wider than `width` mm at that height of capitals; `indent` goes
 * before every line but the first. A word that is wider than a line is broken.
 */
export function wrap(text: string, width: number, height: number, font: Font, indent = ''): string[] {
  const wide = (line: string) => textWidth(font, line, height) > width
  const out: string[] = []
  let current = ''
  const put = (word: string) => {
    const next = current === '' ? word : `${current}${current === indent ? '' : ' '}${word}`
    if (!wide(next)) {
      current = next
      return
    }
    if (current !== '' && current !== indent) {
      out.push(current)
      current = indent
      put(word)
      return
    }
    let fits = [...word].length - 1
    while (fits > 1 && wide(current + [...word].slice(0, fits).join(''))) fits--
    if (fits < 1) {
      current += word
      return
    }
    out.push(current + [...word].slice(0, fits).join(''))
    current = indent
    put([...word].slice(fits).join(''))
  }
  for (const word of text.split(' ').filter((w) => w !== '')) put(word)
  return [...out, current]
}

/** A text set at one of several heights. */
export interface SetText {
  readonly lines: readonly string[]
  readonly height: number
}

/**
 * A text at the largest of `heights` (mm, largest first) at which it takes no more than the lines that go with that
 * height; at the last one however many it takes.
 */
export function fittedText(
  text: string,
  width: number,
  heights: readonly (readonly [height: number, lines: number])[],
  font: Font,
): SetText {
  for (const [height, most] of heights) {
    const lines = wrap(text, width, height, font)
    if (lines.length <= most) return { lines, height }
  }
  const [height] = heights.at(-1)!
  return { lines: wrap(text, width, height, font), height }
}
