import type { CommonParameters, Design } from '../../src/families/family.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { type ReadDesign, readDesign } from '../../src/families/read-design.ts'
import { type JudgedFinding, judged, remedied } from '../../src/families/variants.ts'
import { reportOf } from '../../src/report/report.ts'
import { reportSchema } from '../../src/report/report-schema.ts'
import { tables } from '../families/random-heads.ts'
import { fileFaults } from './judge-files.ts'
import { solidFaults } from './judge-solids.ts'

export interface Judgement {
  /** `legal`: a design; `refused`: problems in place of one. */
  readonly kind: 'legal' | 'refused'
  /** What is wrong with us, in words; empty where nothing is. */
  readonly faults: readonly string[]
}

/** `check`: findings and remedies. `solids`: meshes and volumes besides. `whole`: everything that `make` writes. */
export type Depth = 'check' | 'solids' | 'whole'

type Read = ReadDesign<CommonParameters, Design>

/** What must hold for any text that reads as a parameter set. Never throws: what is thrown is a fault. */
export async function judgeSet(text: string, depth: Depth): Promise<Judgement> {
  try {
    const found = readDesign(flyCutterHead, text, 'set.yaml', tables)
    if (!found.ok) {
      const wordless = found.problems.filter((p) => p.found === '' || p.allowed === '' || p.where.line === undefined)
      const faults = wordless.map((p) => `a problem without place or words: ${JSON.stringify(p)}`)
      return { kind: 'refused', faults: found.problems.length === 0 ? ['refused without a problem'] : faults }
    }
    const read = found.value as unknown as Read
    const findings = judged(read.family, read.design, true)
    const faults = checkFaults(read, findings)
    if (depth !== 'check') faults.push(...solidFaults(read))
    if (depth === 'whole') faults.push(...(await fileFaults(text, read, findings)))
    return { kind: 'legal', faults }
  } catch (error) {
    return {
      kind: 'legal',
      faults: [`thrown: ${error instanceof Error ? error.stack?.split('\n').slice(0, 4).join(' | ') : String(error)}`],
    }
  }
}

/** Findings have finite figures, remedies clear them, and a report can be made that its own schema takes. */
function checkFaults(read: Read, findings: readonly JudgedFinding[]): string[] {
  const { family, design } = read
  const faults: string[] = []
  for (const f of findings) {
    for (const amount of [f.figure, f.limit]) {
      if (amount && !Number.isFinite(amount.value)) faults.push(`${f.id}: ${amount.value}`)
    }
    if (/NaN|Infinity|undefined|null/.test(f.text)) faults.push(`${f.id} says: ${f.text}`)
    if (!f.remedy) continue
    const { path, to } = f.remedy
    const cleared = remedied(family, design, f.remedy)
    if (!cleared.ok) faults.push(`${f.id}: remedy ${path} = ${to} cannot be built: ${cleared.problems[0]!.found}`)
    else {
      const after = judged(family, cleared.value, false)
      if (after.some((o) => o.id === f.id)) faults.push(`${f.id}: remedy ${path} = ${to} does not clear it`)
      const stops = findings.filter((o) => o.level === 'stop').map((o) => o.id)
      const brought = after.find((o) => o.level === 'stop' && !stops.includes(o.id))
      if (brought) faults.push(`${f.id}: remedy ${path} = ${to} brings ${brought.id}`)
    }
  }
  if (faults.length > 0) return faults
  const report = reportOf(read, findings, 'a1b2c3d4')
  const parsed = reportSchema.safeParse(JSON.parse(JSON.stringify(report)))
  if (!parsed.success)
    faults.push(`report: ${parsed.error.issues[0]?.path.join('.')} ${parsed.error.issues[0]?.message}`)
  return faults
}
