import type { CommonParameters, Design } from '../families/family.ts'
import type { ReadDesign } from '../families/read-design.ts'
import type { JudgedFinding } from '../families/variants.ts'
import type { Result } from '../input/problem.ts'
import { askedLines, inspectionSheet } from '../measured/inspection-sheet.ts'
import { htmlReport } from '../report/html/html-report.ts'
import { markdownReport } from '../report/markdown.ts'
import { reportOf } from '../report/report.ts'
import { setUpCsv } from '../route/set-up-csv.ts'
import type { Beside } from './beside.ts'
import { drawingFiles } from './drawing-files.ts'
import { loadFont } from './load-font.ts'
import { profileFile } from './profile-file.ts'

/**
 * Every file of a package, name → content. The same design gives the same bytes, whoever works `beside`; its `solids` may be
 * at work already.
 */
export async function packageFiles(
  read: ReadDesign<CommonParameters, Design>,
  findings: readonly JudgedFinding[],
  revision: string,
  beside: Beside,
  solids: ReturnType<Beside['solids']>,
): Promise<Result<Map<string, Uint8Array | string>>> {
  const { family, design } = read
  const drawings = drawingFiles(read, findings, revision, loadFont(), beside.pdf)
  if (!drawings.ok) return drawings
  const profiles = profileFile(read, findings, revision)
  if (!profiles.ok) return profiles
  const report = reportOf(read, findings, revision)
  const texts: [string, string][] = [
    ...drawings.value.files,
    ['profiles.dxf', profiles.value],
    ['inspection.csv', inspectionSheet(askedLines(family.measuring(design)), revision, design.units)],
    ['setup.csv', setUpCsv(family.route(design), family.setUps(design), revision)],
    ['report.json', `${JSON.stringify(report, null, 2)}\n`],
    ['report.md', markdownReport(report)],
    ['report.html', htmlReport(report, family.pictures(design), drawings.value.sheets)],
  ]
  const solid = await solids
  if (!solid.ok) return solid
  const pdf = await drawings.value.pdf
  return { ok: true, value: new Map<string, Uint8Array | string>([...solid.value, ['drawings.pdf', pdf], ...texts]) }
}
