import { dxfFile } from '../drawing/dxf/dxf-file.ts'
import { sheetsDxf } from '../drawing/dxf/sheet-dxf.ts'
import type { Font } from '../drawing/font/font.ts'
import { composeSheets, type Drawing } from '../drawing/plan/compose.ts'
import { type DrawingStyle, styleOf } from '../drawing/style.ts'
import { viewSvg } from '../drawing/svg/svg.ts'
import type { CommonParameters, Design } from '../families/family.ts'
import type { ReadDesign } from '../families/read-design.ts'
import type { JudgedFinding } from '../families/variants.ts'
import type { Result } from '../input/problem.ts'
import { inspectionPlan } from '../measured/inspection-plan.ts'
import { askedLines } from '../measured/inspection-sheet.ts'
import type { Units } from '../quantity/kind.ts'
import { handTurned } from '../report/cautions.ts'
import type { DrawnSheet } from '../report/html/html-report.ts'
import type { PdfJob } from './beside-work.ts'

/** General tolerance of every sheet. */
const generalTolerance = 'ISO 2768-m'

/** Unit of a bare figure on the sheets. */
export function sheetUnit({ parameters, units }: Design): Units {
  const shown = parameters.drawing['shown-in']
  return shown === 'mm' || shown === 'in' ? shown : units
}

/** Parts that have a DXF file of their own. */
const dxfDrawings: readonly string[] = ['body', 'arbor', 'assembly']

/** The sheets of a design, each drawing on as many as it needs. */
export function drawingsOf(
  { family, design }: ReadDesign<CommonParameters, Design>,
  findings: readonly JudgedFinding[],
  revision: string,
  style: DrawingStyle,
  font: Font,
): Result<Drawing[]> {
  const { parameters: p } = design
  const shown = p.drawing['shown-in']
  const units = shown === 'file-units' ? design.units : shown
  const stops = findings.filter((f) => f.level === 'stop')
  return composeSheets(
    [...family.sheets(design, style), inspectionPlan(askedLines(family.measuring(design)), sheetUnit(design))],
    p.drawing.sheet,
    {
      title: p.title,
      drawingNumber: p['drawing-number'] ?? '–',
      units: units === 'both' ? `${design.units} [${design.units === 'mm' ? 'in' : 'mm'}]` : units,
      generalTolerance,
      revision,
      projection: p.drawing.projection === 'first-angle' ? 'first angle' : 'third angle',
      below: handTurned,
      ...(stops.length > 0 && { stop: stops.map((f) => f.text).join(' ') }),
    },
    style,
    font,
  )
}

/** The drawing files of a package, and the views for its report. */
export interface DrawingFiles<Pdf> {
  /** DXF, name → content. */
  readonly files: ReadonlyMap<string, string>
  /** drawings.pdf, or the promise of it where another thread is at it. */
  readonly pdf: Pdf
  readonly sheets: readonly DrawnSheet[]
}

export function drawingFiles<Pdf>(
  read: ReadDesign<CommonParameters, Design>,
  findings: readonly JudgedFinding[],
  revision: string,
  font: Font,
  pdfOf: (job: PdfJob) => Pdf,
): Result<DrawingFiles<Pdf>> {
  const style = styleOf()
  const drawings = drawingsOf(read, findings, revision, style, font)
  if (!drawings.ok) return drawings
  const { design } = read
  const units = sheetUnit(design)
  const facts = { title: design.parameters.title, subject: `revision ${revision}` }
  const pdf = pdfOf({ sheets: drawings.value.flatMap((d) => d.sheets), facts })
  const files = new Map<string, string>()
  for (const { plan, sheets } of drawings.value) {
    if (dxfDrawings.includes(plan.id)) files.set(`${plan.id}.dxf`, dxfFile(sheetsDxf(sheets, style, units)))
  }
  const sheets = drawings.value.map(({ plan, sheets }) => ({
    title: plan.part,
    views: sheets.flatMap((s) => s.views.map((v) => viewSvg(v, `${plan.part}, ${v.id}`, style, font))),
  }))
  return { ok: true, value: { files, pdf, sheets } }
}
