import { dxfFile } from '../drawing/dxf/dxf-file.ts'
import { sheetDxf } from '../drawing/dxf/sheet-dxf.ts'
import type { Font } from '../drawing/font/font.ts'
import { sheetsPdf } from '../drawing/pdf/sheets-pdf.ts'
import { composeSheets, type Drawing } from '../drawing/plan/compose.ts'
import { type DrawingStyle, styleOf } from '../drawing/style.ts'
import type { CommonParameters, Design } from '../families/family.ts'
import type { ReadDesign } from '../families/read-design.ts'
import type { JudgedFinding } from '../families/variants.ts'
import type { Result } from '../input/problem.ts'

/** General tolerance of every sheet. */
const generalTolerance = 'ISO 2768-m'

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
    family.sheets(design, style),
    p.drawing.sheet,
    {
      title: p.title,
      drawingNumber: p['drawing-number'] ?? '–',
      units: units === 'both' ? `${design.units} [${design.units === 'mm' ? 'in' : 'mm'}]` : units,
      generalTolerance,
      revision,
      projection: p.drawing.projection === 'first-angle' ? 'first angle' : 'third angle',
      ...(stops.length > 0 && { stop: stops.map((f) => f.text).join(' ') }),
    },
    style,
    font,
  )
}

/** The drawing files of a package. */
export function drawingFiles(
  read: ReadDesign<CommonParameters, Design>,
  findings: readonly JudgedFinding[],
  revision: string,
  font: Font,
): Result<Map<string, Uint8Array | string>> {
  const style = styleOf()
  const drawings = drawingsOf(read, findings, revision, style, font)
  if (!drawings.ok) return drawings
  const { design } = read
  const shown = design.parameters.drawing['shown-in']
  const units = shown === 'mm' || shown === 'in' ? shown : design.units
  const files = new Map<string, Uint8Array | string>()
  for (const { plan, sheets } of drawings.value) {
    if (!dxfDrawings.includes(plan.id)) continue
    files.set(`${plan.id}.dxf`, dxfFile(sheetDxf(sheets[0]!, style, units)))
  }
  const facts = { title: design.parameters.title, subject: `revision ${revision}` }
  files.set(
    'drawings.pdf',
    sheetsPdf(
      drawings.value.flatMap((d) => d.sheets),
      facts,
      style,
      font,
    ),
  )
  return { ok: true, value: files }
}
