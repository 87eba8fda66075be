import type { Curve, Entity, Point } from '../entity.ts'
import { arrowCorners, ellipsePoint, sweepOf } from '../entity-shape.ts'
import type { Font } from '../font/font.ts'
import { textStart } from '../font/text-box.ts'
import { hatchLines } from '../hatch-lines.ts'
import { type Sheet, sheetOnPaper } from '../sheet/sheet.ts'
import { type DrawingStyle, dashesOf, type LayerName } from '../style.ts'
import { type PdfFacts, type PdfPage, pdfFile } from './pdf-writer.ts'

/**
 * The sheets as one PDF: vector, one page a sheet at its true size, the font embedded. Lines lie within 0.001 mm of where
 * the sheet has them; the same sheets give the same bytes. Throws RangeError on numbers that are not finite and on signs
 * that the font lacks.
 */
export function sheetsPdf(sheets: readonly Sheet[], facts: PdfFacts, style: DrawingStyle, font: Font): Uint8Array {
  return pdfFile(
    facts,
    font.bytes,
    sheets.map((sheet) => ({
      width: sheet.size.width,
      height: sheet.size.height,
      draw: (page: PdfPage) => {
        for (const entity of sheetOnPaper(sheet)) drawEntity(page, entity, style, font)
      },
    })),
  )
}

function drawEntity(page: PdfPage, e: Entity<LayerName>, style: DrawingStyle, font: Font): void {
  const { width, colour, lineType } = style.layers[e.layer]
  if (e.kind === 'text') {
    const [x, y] = textStart(font, e)
    page.text(e.text, x, y, e.height / font.capHeight, e.rotation, colour)
    return
  }
  if (e.kind === 'arrow') {
    path(page, arrowCorners(e))
    page.close()
    page.fill(colour)
    return
  }
  page.line(width, colour, dashesOf(lineType, width))
  switch (e.kind) {
    case 'hatch':
      for (const line of hatchLines(e, style.hatchSpacing)) path(page, line)
      break
    case 'polyline':
      path(page, e.points)
      if (e.closed) page.close()
      break
    case 'line':
      path(page, [e.from, e.to])
      break
    default:
      roundPath(page, e)
  }
  page.stroke()
}

function path(page: PdfPage, points: readonly Point[]): void {
  points.forEach(([x, y], i) => {
    if (i === 0) page.move(x, y)
    else page.draw(x, y)
  })
}

/** Pieces of a turn that a cubic replaces: an eighth of a turn leaves the circle by 4e-6 of its radius. */
const pieceOfTurn = Math.PI / 4

function roundPath(page: PdfPage, curve: Exclude<Curve<string>, { kind: 'line' }>): void {
  const whole = curve.kind === 'circle'
  const sweep = whole ? 2 * Math.PI : sweepOf(curve)
  const start = whole ? 0 : curve.start
  const count = Math.max(1, Math.ceil(sweep / pieceOfTurn - 1e-9))
  const step = sweep / count
  const reach = (4 / 3) * Math.tan(step / 4)
  const ellipse =
    curve.kind === 'ellipse'
      ? curve
      : { ...curve, kind: 'ellipse' as const, major: [curve.radius, 0] as Point, ratio: 1, start: 0, end: 0 }
  const slope = (t: number): Point => {
    const [c, s] = [Math.cos(t) * ellipse.ratio, Math.sin(t)]
    const [mx, my] = ellipse.major
    return [-s * mx - c * my, -s * my + c * mx]
  }
  const first = ellipsePoint(ellipse, start)
  page.move(first[0], first[1])
  for (let i = 0; i < count; i++) {
    const [t, u] = [start + i * step, start + (i + 1) * step]
    const [p, q, dp, dq] = [ellipsePoint(ellipse, t), ellipsePoint(ellipse, u), slope(t), slope(u)]
    page.curve(p[0] + reach * dp[0], p[1] + reach * dp[1], q[0] - reach * dq[0], q[1] - reach * dq[1], q[0], q[1])
  }
  if (Math.abs(sweep - 2 * Math.PI) < 1e-12) page.close()
}
