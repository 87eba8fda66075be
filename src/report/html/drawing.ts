import type { Point, Polygon, Segment } from '../../geometry/polygon.ts'
import { coordinate as c } from './coordinate.ts'
import { escaped } from './escape.ts'

/** How a line or an area looks; each is a class of the report's style sheet. */
export type Look =
  | 'outline'
  | 'edge'
  | 'thin'
  | 'hidden'
  | 'axis'
  | 'circle'
  | 'swept'
  | 'work'
  | 'metal'
  | 'cut-metal'
  | 'ground-away'
  | 'void'
  | 'bit'
  | 'inserted'
  | 'bar'
  | 'bar-main'
  | 'advice'
  | 'grid'
  | 'limit'
  | 'mark'
  | 'leader'
  | 'dimension'
  | 'turn'
  | 'heavy'
  | 'hole'
  | 'gap'

export interface TextLook {
  readonly anchor?: 'start' | 'middle' | 'end'
  readonly size?: number
  readonly strong?: boolean
}

/** Height of usual text, and the width that one sign of it takes at the most that is likely, over its height. */
export const textSize = 3
export const signWidth = 0.6

/** An SVG that is drawn from the back to the front; x to the right, y down, about 1 mm on paper. */
export class Drawing {
  readonly width: number
  height: number
  private readonly parts: string[] = []

  /** The height may be set again once it is known. */
  constructor(width: number, height = 0) {
    this.width = width
    this.height = height
  }

  line(look: Look, from: Point, to: Point, ends?: 'arrow' | 'arrows'): void {
    this.parts.push(
      `<line class="${look}"${arrowheads(ends)} x1="${c(from[0])}" y1="${c(from[1])}" x2="${c(to[0])}" y2="${c(to[1])}"/>`,
    )
  }

  polygon(look: Look, corners: Polygon): void {
    if (corners.length > 1) this.parts.push(`<polygon class="${look}" points="${pointsOf(corners)}"/>`)
  }

  polyline(look: Look, points: readonly Point[], ends?: 'arrow' | 'arrows'): void {
    this.parts.push(`<polyline class="${look}"${arrowheads(ends)} points="${pointsOf(points)}"/>`)
  }

  /** Many short lines as one element. */
  segments(look: Look, segments: readonly Segment[]): void {
    if (segments.length === 0) return
    const d = segments.map(([p, q]) => `M${c(p[0])} ${c(p[1])}L${c(q[0])} ${c(q[1])}`).join('')
    this.parts.push(`<path class="${look}" d="${d}"/>`)
  }

  circle(look: Look, [x, y]: Point, radius: number): void {
    this.parts.push(`<circle class="${look}" cx="${c(x)}" cy="${c(y)}" r="${c(radius)}"/>`)
  }

  /** Arc about a centre; angles in rad as on paper: from the right, anticlockwise to the eye. Arrows at its end. */
  arc(look: Look, [x, y]: Point, radius: number, from: number, to: number, ends?: 'arrow' | 'arrows'): void {
    const at = (angle: number) => `${c(x + radius * Math.cos(angle))} ${c(y - radius * Math.sin(angle))}`
    const large = Math.abs(to - from) > Math.PI ? 1 : 0
    const sweep = to < from ? 1 : 0
    const r = c(radius)
    this.parts.push(
      `<path class="${look}"${arrowheads(ends)} d="M${at(from)}A${r} ${r} 0 ${large} ${sweep} ${at(to)}"/>`,
    )
  }

  /** Words with their base line at a point. */
  text([x, y]: Point, words: string, look: TextLook = {}): void {
    const { anchor = 'start', size = textSize, strong = false } = look
    const bold = strong ? ' font-weight="bold"' : ''
    this.parts.push(
      `<text x="${c(x)}" y="${c(y)}" font-size="${c(size)}" text-anchor="${anchor}"${bold}>${escaped(words)}</text>`,
    )
  }

  /** The whole as an element; `id` unique in the page, `title` and `says` for those who cannot see it. */
  element(id: string, title: string, says: string): string {
    return [
      `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="${id}-title ${id}-desc" viewBox="0 0 ${c(this.width)} ${c(this.height)}">`,
      `<title id="${id}-title">${escaped(title)}</title>`,
      `<desc id="${id}-desc">${escaped(says)}</desc>`,
      ...this.parts,
      '</svg>',
    ].join('\n')
  }
}

/** Hatches and arrow heads that the pictures of a page share; goes into it once. */
export const sharedMarks = [
  '<svg xmlns="http://www.w3.org/2000/svg" class="marks" aria-hidden="true" width="0" height="0"><defs>',
  '<pattern id="hatch-metal" width="2" height="2" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path class="hatch" d="M1 0V2"/></pattern>',
  '<pattern id="hatch-ground" width="1.1" height="1.1" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path class="hatch" d="M0.55 0V1.1"/></pattern>',
  '<marker id="head" viewBox="0 0 6 4" refX="5.6" refY="2" markerWidth="3" markerHeight="2" markerUnits="userSpaceOnUse" orient="auto-start-reverse"><path d="M0 0L6 2L0 4Z"/></marker>',
  '</defs></svg>',
].join('\n')

const arrowheads = (ends: 'arrow' | 'arrows' | undefined): string =>
  ends === undefined ? '' : ` ${ends === 'arrows' ? 'marker-start="url(#head)" ' : ''}marker-end="url(#head)"`

const pointsOf = (points: readonly Point[]): string => points.map(([x, y]) => `${c(x)},${c(y)}`).join(' ')
