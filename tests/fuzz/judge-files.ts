import { strFromU8, unzipSync } from 'fflate'
import type { DxfDocument } from '../../src/drawing/dxf/dxf-document.ts'
import { sheetsDxf } from '../../src/drawing/dxf/sheet-dxf.ts'
import { profilesDxf } from '../../src/drawing/profiles.ts'
import { styleOf } from '../../src/drawing/style.ts'
import type { CommonParameters, Design } from '../../src/families/family.ts'
import type { ReadDesign } from '../../src/families/read-design.ts'
import type { JudgedFinding } from '../../src/families/variants.ts'
import { besideNobody } from '../../src/package/beside.ts'
import { drawingsOf, sheetUnit } from '../../src/package/drawing-files.ts'
import { loadFont } from '../../src/package/load-font.ts'
import { packageFiles } from '../../src/package/package-files.ts'
import { revisionOf } from '../../src/package/revision.ts'
import { solidsJob } from '../../src/package/solids-job.ts'
import { reportSchema } from '../../src/report/report-schema.ts'
import { agreementFaults } from './judge-agreement.ts'
import { dxfFaults } from './judge-dxf.ts'

type Read = ReadDesign<CommonParameters, Design>
type Content = Uint8Array | string

/** Everything that `make` writes is made, has no number that is none, is read by others, and says what `check` prints. */
export async function fileFaults(text: string, read: Read, findings: readonly JudgedFinding[]): Promise<string[]> {
  const revision = revisionOf(read)
  const solids = besideNobody.solids(solidsJob(read, revision))
  const made = await packageFiles(read, findings, revision, besideNobody, solids)
  if (!made.ok) {
    const nothingLeft = made.problems.every((p) => p.found === 'no metal at all')
    return nothingLeft ? [] : made.problems.map((p) => `make: ${p.code} ${p.found}`)
  }
  const files = made.value
  const faults = expected.filter((name) => !files.has(name)).map((name) => `no ${name}`)
  for (const [name, content] of files) faults.push(...contentFaults(name, content).map((f) => `${name}: ${f}`))
  for (const [name, document] of documents(read, findings, revision)) {
    faults.push(...dxfFaults(String(files.get(name)), document).map((f) => `${name}: ${f}`))
  }
  const report = reportSchema.safeParse(JSON.parse(String(files.get('report.json'))))
  if (report.success) faults.push(...(await agreementFaults(text, read, findings, report.data)))
  else faults.push(`report.json: ${report.error.issues[0]?.path.join('.')} ${report.error.issues[0]?.message}`)
  return faults
}

/** What the README lists, but for the list of contents itself. */
const expected = [
  ...['drawings.pdf', 'body.dxf', 'arbor.dxf', 'assembly.dxf', 'profiles.dxf'],
  ...['body.stl', 'arbor.stl', 'bit.stl', 'assembly.stl', 'assembly.3mf', 'mock-up.stl', 'mock-up.3mf'],
  ...['setup.csv', 'inspection.csv', 'report.html', 'report.md', 'report.json'],
]

/** What no file of a package may hold, whatever it is for. */
export function contentFaults(name: string, content: Content): string[] {
  if (content.length === 0) return ['empty']
  if (typeof content === 'string') return wordFaults(name, content)
  if (name.endsWith('.stl')) return stlFaults(content)
  if (name.endsWith('.3mf')) {
    return Object.entries(unzipSync(content)).flatMap(([entry, bytes]) => wordFaults(entry, strFromU8(bytes)))
  }
  if (name.endsWith('.pdf'))
    return /^%PDF-[\s\S]*%%EOF\s*$/.test(Buffer.from(content).toString('latin1')) ? [] : ['no PDF']
  return ['neither text nor of a known kind']
}

/** What JavaScript writes for what is not there. A null is a value in JSON. */
function wordFaults(name: string, text: string): string[] {
  const found = /NaN|Infinity|undefined|\[object /.exec(text)
  const isNull = !name.endsWith('.json') && /\bnull\b/.test(text)
  const around = found ? text.slice(Math.max(0, found.index - 30), found.index + 30).replaceAll('\n', ' ') : 'null'
  return found || isNull ? [`a number that is none: ${around}`] : []
}

/** A binary STL: a head of 80 bytes, the number of triangles, and fifty bytes for each, twelve numbers first. */
function stlFaults(bytes: Uint8Array): string[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const triangles = view.getUint32(80, true)
  if (triangles === 0 || bytes.length !== 84 + 50 * triangles)
    return [`${triangles} triangles in ${bytes.length} bytes`]
  for (let t = 0; t < triangles; t++) {
    for (let i = 0; i < 12; i++) {
      if (!Number.isFinite(view.getFloat32(84 + 50 * t + 4 * i, true))) return ['a number that is none']
    }
  }
  return []
}

/** What the DXF files were written from, composed once more. */
function documents(read: Read, findings: readonly JudgedFinding[], revision: string): [string, DxfDocument][] {
  const { family, design } = read
  const [style, units] = [styleOf(), sheetUnit(design)]
  const drawings = drawingsOf(read, findings, revision, style, loadFont())
  const stops = findings.filter((f) => f.level === 'stop').map((f) => f.text)
  const profiles = profilesDxf(family.profiles(design), units, { comments: [], stops })
  const drawn = drawings.ok ? drawings.value.filter(({ plan }) => expected.includes(`${plan.id}.dxf`)) : []
  return [
    ...drawn.map(({ plan, sheets }): [string, DxfDocument] => [`${plan.id}.dxf`, sheetsDxf(sheets, style, units)]),
    ...(profiles.ok ? [['profiles.dxf', profiles.value] as [string, DxfDocument]] : []),
  ]
}
