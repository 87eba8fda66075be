import { boxOf } from '../dimensions/room.ts'
import { segmentsOf } from '../dimensions/sketch.ts'
import type { Entity, Point } from '../entity.ts'
import { arrowCorners, ellipsePoint, sweepOf } from '../entity-shape.ts'
import type { Font } from '../font/font.ts'
import { textCorners, textStart, textWidth } from '../font/text-box.ts'
import { hatchLines } from '../hatch-lines.ts'
import { type Sheet, sheetOnPaper, type View, viewOnPaper } from '../sheet/sheet.ts'
import { type DrawingStyle, dashesOf, type LayerName } from '../style.ts'

/** A whole sheet as SVG at its size on paper. */
export function sheetSvg(sheet: Sheet, style: DrawingStyle, font: Font): string {
  const { width, height } = sheet.size
  return svgOf(sheetOnPaper(sheet), { low: [0, 0], high: [width, height] }, sheet.title, style, font)
}

/** One view with its dimensions as SVG, cut to what it takes on paper. */
export function viewSvg(view: View, title: string, style: DrawingStyle, font: Font): string {
  const entities = viewOnPaper(view)
  const points = [
    ...segmentsOf(entities).flat(),
    ...entities.flatMap((e) => (e.kind === 'text' ? textCorners(font, e) : [])),
  ]
  if (points.length === 0) throw new RangeError(`${view.id}: a view without lines`)
  const { low, high } = boxOf(points)
  const gap = style.textHeight
  return svgOf(
    entities,
    { low: [low[0] - gap, low[1] - gap], high: [high[0] + gap, high[1] + gap] },
    title,
    style,
    font,
  )
}

function svgOf(
  entities: readonly Entity<LayerName>[],
  box: { readonly low: Point; readonly high: Point },
  title: string,
  style: DrawingStyle,
  font: Font,
): string {
  const [width, height] = [box.high[0] - box.low[0], box.high[1] - box.low[1]]
  const to = ([x, y]: Point): Point => [x - box.low[0], box.high[1] - y]
  const layers = Object.keys(style.layers) as LayerName[]
  const groups = layers.flatMap((layer) => {
    const mine = entities.filter((e) => e.layer === layer)
    if (mine.length === 0) return []
    const { width: stroke, colour, lineType } = style.layers[layer]
    const dashes = dashesOf(lineType, stroke)
    const dashed = dashes.length === 0 ? '' : ` stroke-dasharray="${dashes.map(digits).join(' ')}"`
    return [
      `<g class="${layer}" fill="none" stroke="${colour}" stroke-width="${digits(stroke)}"${dashed}>`,
      ...mine.map((e) => elementOf(e, to, colour, style, font)),
      '</g>',
    ]
  })
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${digits(width)}mm" height="${digits(height)}mm" viewBox="0 0 ${digits(width)} ${digits(height)}" stroke-linejoin="round" font-family="DejaVu Sans Condensed, Arial, sans-serif">`,
    `<title>${escaped(title)}</title>`,
    ...groups,
    '</svg>',
    '',
  ].join('\n')
}

function elementOf(
  e: Entity<LayerName>,
  to: (p: Point) => Point,
  colour: string,
  style: DrawingStyle,
  font: Font,
): string {
  const xy = (p: Point) => to(p).map(digits).join(' ')
  switch (e.kind) {
    case 'line':
      return `<path d="M${xy(e.from)}L${xy(e.to)}"/>`
    case 'polyline':
      return `<path d="M${e.points.map(xy).join('L')}${e.closed ? 'Z' : ''}"/>`
    case 'circle': {
      const [x, y] = to(e.center)
      return `<circle cx="${digits(x)}" cy="${digits(y)}" r="${digits(e.radius)}"/>`
    }
    case 'arc':
    case 'ellipse': {
      const ellipse =
        e.kind === 'ellipse' ? e : { ...e, kind: 'ellipse' as const, major: [e.radius, 0] as Point, ratio: 1 }
      const long = Math.hypot(...ellipse.major)
      const tilt = (-Math.atan2(ellipse.major[1], ellipse.major[0]) * 180) / Math.PI
      // In two halves: an arc that ends where it starts would vanish.
      const half = ellipse.start + sweepOf(ellipse) / 2
      const ends = [half, ellipse.start + sweepOf(ellipse)].map((t) => ellipsePoint(ellipse, t))
      const radii = `${digits(long)} ${digits(long * ellipse.ratio)} ${digits(tilt)} 0 0`
      return `<path d="M${xy(ellipsePoint(ellipse, ellipse.start))}${ends.map((p) => `A${radii} ${xy(p)}`).join('')}"/>`
    }
    case 'hatch': {
      const lines = hatchLines(e, style.hatchSpacing)
      return `<path d="${lines.map(([a, b]) => `M${xy(a)}L${xy(b)}`).join('')}"/>`
    }
    case 'arrow':
      return `<path fill="${colour}" stroke="none" d="M${arrowCorners(e).map(xy).join('L')}Z"/>`
    case 'text': {
      // Another font in the reader's place is pressed into the room that was kept.
      const [x, y] = to(textStart(font, e)).map(digits)
      const turned = e.rotation === 0 ? '' : ` transform="rotate(${digits((-e.rotation * 180) / Math.PI)} ${x} ${y})"`
      const room = digits(textWidth(font, e.text, e.height))
      const size = digits(e.height / font.capHeight)
      return `<text x="${x}" y="${y}" font-size="${size}" textLength="${room}" lengthAdjust="spacingAndGlyphs" fill="${colour}" stroke="none"${turned}>${escaped(e.text)}</text>`
    }
  }
}

/** At most four decimals of a millimetre, so that engines cannot differ. */
function digits(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`not a place on paper: ${value}`)
  return String(Math.round(value * 1e4) / 1e4 + 0)
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')
