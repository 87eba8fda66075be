import { createHash } from 'node:crypto'
import { dxfFile } from '../drawing/dxf/dxf-file.ts'
import { sheetsDxf } from '../drawing/dxf/sheet-dxf.ts'
import { styleOf } from '../drawing/style.ts'
import type { CommonParameters, Design } from '../families/family.ts'
import type { ReadDesign } from '../families/read-design.ts'
import type { Result } from '../input/problem.ts'
import type { AsMade } from '../measured/as-made.ts'
import { type MeasuredValue, sizeName } from '../measured/measured-value.ts'
import { type AsMadeReport, asMadeReport } from '../report/as-made.ts'
import { asMadeHtml, asMadeMarkdown } from '../report/as-made-page.ts'
import { drawingsOf, sheetUnit } from './drawing-files.ts'
import { loadFont } from './load-font.ts'
import { asMadeJson } from './target.ts'

/** Mark of a tool as made: eight digits of the SHA-256 of the parameters' mark and every measured value. */
export function madeMark(revision: string, values: readonly MeasuredValue[]): string {
  const told = values.map((v) => `${sizeName(v)} ${v.value.toPrecision(12)}`).sort()
  return createHash('sha256')
    .update([revision, ...told].join('\n'))
    .digest('hex')
    .slice(0, 8)
}

/** The files on a tool as it was made, name → content: the report, and its drawing with the sizes it really has. */
export function asMadeFiles(
  read: ReadDesign<CommonParameters, Design>,
  made: AsMade<Design>,
  marks: { readonly revision: string; readonly asMade: string },
): Result<{ readonly files: Map<string, string>; readonly report: AsMadeReport }> {
  const report = asMadeReport(made, read.design.parameters, marks)
  const style = styleOf()
  const asBuilt = { ...read, design: made.design }
  const drawings = drawingsOf(
    asBuilt,
    [...made.findings.new, ...made.findings.stay],
    `${marks.asMade} as made`,
    style,
    loadFont(),
  )
  if (!drawings.ok) return drawings
  const body = drawings.value.find((d) => d.plan.id === 'body')
  if (!body) throw new Error('a family without a drawing of its body')
  const units = sheetUnit(read.design)
  const files = new Map([
    [asMadeJson, `${JSON.stringify(report, null, 2)}\n`],
    ['as-made.md', asMadeMarkdown(report)],
    ['as-made.html', asMadeHtml(report)],
    ['as-made.dxf', dxfFile(sheetsDxf(body.sheets, style, units))],
  ])
  return { ok: true, value: { files, report } }
}
