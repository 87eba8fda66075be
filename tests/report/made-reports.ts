import type { AnyFamily, CommonParameters, Design } from '../../src/families/family.ts'
import type { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { type ReadDesign, readDesign } from '../../src/families/read-design.ts'
import { judged } from '../../src/families/variants.ts'
import { besideNobody } from '../../src/package/beside.ts'
import { drawingFiles } from '../../src/package/drawing-files.ts'
import { loadFont } from '../../src/package/load-font.ts'
import { packageFiles } from '../../src/package/package-files.ts'
import { revisionOf } from '../../src/package/revision.ts'
import { solidsJob } from '../../src/package/solids-job.ts'
import { htmlReport } from '../../src/report/html/html-report.ts'
import { reportOf } from '../../src/report/report.ts'
import type { Report } from '../../src/report/report-schema.ts'
import { tables, templateText } from '../families/random-heads.ts'

export interface MadeReport {
  readonly report: Report
  readonly html: string
}

type Change = [from: string, to: string]

type Template = 'parameters' | 'parameters-inch'
type Read = ReadDesign<CommonParameters, Design>

/** The report on a template's head, with whatever is to be different in its text. */
export const reportOn = (name: Template, ...changes: Change[]): MadeReport => made(readFrom(name, changes))

/** All files of the package on a template's head, and the page made for itself. */
export async function packageOn(
  name: Template,
): Promise<{ files: ReadonlyMap<string, Uint8Array | string>; html: string }> {
  const read = readFrom(name, [])
  const revision = revisionOf(read)
  const findings = judged(read.family, read.design, false)
  const files = await packageFiles(
    read,
    findings,
    revision,
    besideNobody,
    besideNobody.solids(solidsJob(read, revision)),
  )
  if (!files.ok) throw new Error(JSON.stringify(files.problems))
  const drawings = drawingFiles(read, findings, revision, loadFont(), besideNobody.pdf)
  if (!drawings.ok) throw new Error(JSON.stringify(drawings.problems))
  const report = reportOf(read, findings, revision)
  return { files: files.value, html: htmlReport(report, read.family.pictures(read.design), drawings.value.sheets) }
}

function readFrom(name: Template, changes: readonly Change[]): Read {
  let text = templateText(name)
  for (const [from, to] of changes) {
    if (!text.includes(from)) throw new Error(`nothing to change: ${from}`)
    text = text.replace(from, to)
  }
  const read = readDesign(flyCutterHead, text, name, tables)
  if (!read.ok) throw new Error(JSON.stringify(read.problems, undefined, 1))
  return read.value as unknown as Read
}

/** The report on a head that no file describes. */
export const reportOnDesign = (design: HeadDesign): MadeReport =>
  made({ family: flyCutterHead as unknown as AnyFamily, design, rows: [] })

/** The page without the views of the drawings, which are long and have tests of their own. */
function made(read: Read): MadeReport {
  const report = reportOf(read, judged(read.family, read.design, false), revisionOf(read))
  return { report, html: htmlReport(report, read.family.pictures(read.design), []) }
}

/** Heads of many kinds: both units, both hands, every section, steep and level faces, faults. */
export const sets: readonly [says: string, name: Template, ...changes: Change[]][] = [
  ['the metric template', 'parameters'],
  ['the inch template', 'parameters-inch'],
  ['a bore that opens into the slot', 'parameters', ['  depth: 24\n', '  depth: 33\n']],
  [
    'an anticlockwise tool',
    'parameters',
    ['rotation: clockwise', 'rotation: anticlockwise'],
    ['reverse: false', 'reverse: true'],
  ],
  ['round bar', 'parameters', ['shape: hexagon', 'shape: round']],
  ['a face of 30°', 'parameters', ['angle: 7 deg', 'angle: 30 deg'], ['depth-on-axis: 41', 'depth-on-axis: 55']],
  ['a level face', 'parameters', ['angle: 7 deg', 'angle: 0 deg']],
  [
    'a slot far ahead of the axis, stopped, work wider than can be drawn',
    'parameters',
    ['ahead-of-centre: 2.4', 'ahead-of-centre: 14'],
    ['runs: through', 'runs: stopped\n  beyond-axis: 20'],
    ['  width: 92', '  width: 400'],
    ['side: leading', 'side: trailing'],
  ],
  [
    'a through bore',
    'parameters',
    ['kind: blind\n  diameter: 20\n  depth: 24\n  bottom: flat\n  vent: hole', 'kind: through\n  diameter: 20'],
  ],
  [
    'a clearance fit in a mill that is too fast',
    'parameters',
    [
      'kind: matched                # bore first, measure it, turn the spigot to that bore',
      'kind: iso-286\n  code: H7/g6',
    ],
    ['[95, 180, 270, 430, 620, 940, 1400, 2200]', '{ slowest: 940, fastest: 2200 }'],
  ],
  [
    'a head that is screwed on',
    'parameters',
    [
      'kind: matched                # bore first, measure it, turn the spigot to that bore\n  assembly: heat',
      'kind: threaded\n  thread: M20',
    ],
  ],
  [
    'a grossly unbalanced tool at speed',
    'parameters',
    ['  overhang: 27 ', '  overhang: 60 '],
    ['  length: 78 ', '  length: 110 '],
    ['  material: aluminium\n  width', '  material: aluminium\n  cutting-speed: 900 m/min\n  width'],
  ],
]
