import type { CommonParameters, Design } from '../families/family.ts'
import type { ReadDesign } from '../families/read-design.ts'
import type { JudgedFinding } from '../families/variants.ts'
import type { Result } from '../input/problem.ts'
import { askedLines, inspectionSheet } from '../measured/inspection-sheet.ts'
import { htmlReport } from '../report/html/html-report.ts'
import { markdownReport } from '../report/markdown.ts'
import { reportOf } from '../report/report.ts'
import { setUpCsv } from '../route/set-up-csv.ts'
import { drawingFiles } from './drawing-files.ts'
import { loadFont } from './load-font.ts'
import { profileFile } from './profile-file.ts'
import { solidFiles } from './solid-files.ts'

/** Every file of a package, name → content. The same design gives the same bytes. */
export function packageFiles(
  read: ReadDesign<CommonParameters, Design>,
  findings: readonly JudgedFinding[],
  revision: string,
): Result<Map<string, Uint8Array | string>> {
  const solids = solidFiles(read, revision)
  if (!solids.ok) return solids
  const files = new Map<string, Uint8Array | string>(solids.value)
  const drawings = drawingFiles(read, findings, revision, loadFont())
  if (!drawings.ok) return drawings
  for (const [name, content] of drawings.value.files) files.set(name, content)
  const profiles = profileFile(read, findings, revision)
  if (!profiles.ok) return profiles
  files.set('profiles.dxf', profiles.value)
  files.set(
    'inspection.csv',
    inspectionSheet(askedLines(read.family.measuring(read.design)), revision, read.design.units),
  )
  files.set('setup.csv', setUpCsv(read.family.route(read.design), read.family.setUps(read.design), revision))
  const report = reportOf(read, findings, revision)
  files.set('report.json', `${JSON.stringify(report, null, 2)}\n`)
  files.set('report.md', markdownReport(report))
  files.set('report.html', htmlReport(report, read.family.pictures(read.design), drawings.value.sheets))
  return { ok: true, value: files }
}
