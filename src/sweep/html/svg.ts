import type { Point } from '../../geometry/polygon.ts'
import { coordinate as c } from '../../report/html/coordinate.ts'
import { escaped } from '../../report/html/escape.ts'

export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

export const rect = (look: string, { left, top, right, bottom }: Box): string =>
  `<rect class="${look}" x="${c(left)}" y="${c(top)}" width="${c(right - left)}" height="${c(bottom - top)}"/>`

export const line = (look: string, from: Point, to: Point): string =>
  `<line class="${look}" x1="${c(from[0])}" y1="${c(from[1])}" x2="${c(to[0])}" y2="${c(to[1])}"/>`

/** Lines that hang together, as one element. */
export const strokes = (look: string, runs: readonly (readonly Point[])[]): string => {
  const d = runs.map((run) => run.map(([x, y], at) => `${at === 0 ? 'M' : 'L'}${c(x)} ${c(y)}`).join('')).join('')
  return d === '' ? '' : `<path class="${look}" d="${d}"/>`
}

/** Rectangles that look alike, as one element. */
export const boxes = (look: string, all: readonly Box[]): string => {
  const d = all.map((b) => `M${c(b.left)} ${c(b.top)}H${c(b.right)}V${c(b.bottom)}H${c(b.left)}Z`).join('')
  return d === '' ? '' : `<path class="${look}" d="${d}"/>`
}

export interface TextLook {
  readonly anchor?: 'start' | 'middle' | 'end'
  readonly size?: number
  readonly look?: string
}

export const usualSize = 3

export function text(
  [x, y]: Point,
  words: string,
  { anchor = 'start', size = usualSize, look }: TextLook = {},
): string {
  const name = look === undefined ? '' : ` class="${look}"`
  return `<text${name} x="${c(x)}" y="${c(y)}" font-size="${c(size)}" text-anchor="${anchor}">${escaped(words)}</text>`
}

/** Words broken into lines of so many signs; a longer word stands alone. */
export function wrapped(words: string, signs: number): string[] {
  const lines: string[] = []
  for (const word of words.split(' ')) {
    const last = lines.at(-1)
    if (last !== undefined && last.length + 1 + word.length <= signs) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}

/** A picture with its words for those who cannot see it, which stand under it too. `id`: unique in the page. */
export function figureElement(
  id: string,
  title: string,
  says: string,
  width: number,
  height: number,
  parts: readonly string[],
): string {
  return [
    '<figure>',
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="${id}-title ${id}-desc" viewBox="0 0 ${c(width)} ${c(height)}">`,
    `<title id="${id}-title">${escaped(title)}</title>`,
    `<desc id="${id}-desc">${escaped(says)}</desc>`,
    ...parts.filter((part) => part !== ''),
    '</svg>',
    `<figcaption>${escaped(says)}</figcaption>`,
    '</figure>',
  ].join('\n')
}
