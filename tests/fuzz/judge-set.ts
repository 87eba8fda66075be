import DxfParser from 'dxf-parser'
import type { CommonParameters, Design } from '../../src/families/family.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { type ReadDesign, readDesign } from '../../src/families/read-design.ts'
import { judged, remedied } from '../../src/families/variants.ts'
import { besideWork } from '../../src/package/beside-work.ts'
import { drawingFiles } from '../../src/package/drawing-files.ts'
import { loadFont } from '../../src/package/load-font.ts'
import { profileFile } from '../../src/package/profile-file.ts'
import { solidOf } from '../../src/part/part.ts'
import { reportOf } from '../../src/report/report.ts'
import { reportSchema } from '../../src/report/report-schema.ts'
import { meshOf } from '../../src/solid/mesh.ts'
import { stlOf } from '../../src/solid/stl.ts'
import { tables } from '../families/random-heads.ts'
import { manifoldOf } from '../outside/brep/triangles.ts'
import '../outside/brep/kernels.ts'

export interface Judgement {
  /** `legal`: a design; `refused`: problems in place of one. */
  readonly kind: 'legal' | 'refused'
  /** What is wrong with us, in words; empty where nothing is. */
  readonly faults: readonly string[]
}

/** `check`: findings and remedies. `solids`: meshes besides. `whole`: everything that `make` writes. */
export type Depth = 'check' | 'solids' | 'whole'

type Read = ReadDesign<CommonParameters, Design>

/** What must hold for any text that reads as a parameter set. Never throws: what is thrown is a fault. */
export function judgeSet(text: string, depth: Depth): Judgement {
  try {
    const found = readDesign(flyCutterHead, text, 'set.yaml', tables)
    if (!found.ok) {
      const wordless = found.problems.filter((p) => p.found === '' || p.allowed === '' || p.where.line === undefined)
      const faults = wordless.map((p) => `a problem without place or words: ${JSON.stringify(p)}`)
      return { kind: 'refused', faults: found.problems.length === 0 ? ['refused without a problem'] : faults }
    }
    const read = found.value as unknown as Read
    const faults = [...checkFaults(read), ...(depth === 'check' ? [] : solidFaults(read))]
    if (depth === 'whole') faults.push(...fileFaults(read))
    return { kind: 'legal', faults }
  } catch (error) {
    return {
      kind: 'legal',
      faults: [`thrown: ${error instanceof Error ? error.stack?.split('\n').slice(0, 4).join(' | ') : String(error)}`],
    }
  }
}

/** Findings have finite figures, remedies clear them, and a report can be made that its own schema takes. */
function checkFaults(read: Read): string[] {
  const { family, design } = read
  const findings = judged(family, design, true)
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

/** Every part is a closed mesh that another kernel takes, and has the volume that the report says. */
function solidFaults({ family, design }: Read): string[] {
  const tolerance = design.parameters.settings['chord-tolerance']
  const faults: string[] = []
  const bodies = [
    ...design.scene.parts.map(({ part }) => ({
      id: part.id,
      solid: solidOf(part),
      volume: design.volume(part.id).volume,
    })),
    ...family.mockUp(design).map((b) => ({ id: `mock-up ${b.id}`, solid: b.solid, volume: undefined })),
  ]
  for (const { id, solid, volume } of bodies) {
    const mesh = meshOf(solid, tolerance, id)
    if (!mesh.ok) {
      // Nothing left of a part is the design's fault, an open skin is ours.
      if (mesh.problems[0]!.found !== 'no metal at all') faults.push(`${id}: ${mesh.problems[0]!.found}`)
      continue
    }
    if (mesh.value.points.some((v) => !Number.isFinite(v))) faults.push(`${id}: a point that is no number`)
    const stl = stlOf([mesh.value], id, 'fuzz')
    if (!stl.ok) faults.push(`${id} as STL: ${stl.problems[0]!.found}`)
    const other = manifoldOf({ coordinates: [...mesh.value.points], corners: [...mesh.value.triangles] })
    const status = String(other.status())
    const theirs = other.volume()
    const area = other.surfaceArea()
    other.delete()
    if (!/NoError|^0$/.test(status)) faults.push(`${id}: manifold-3d says ${status}`)
    else if (volume !== undefined && Math.abs(theirs - volume) > 1.2 * tolerance * area + 1e-3) {
      faults.push(`${id}: ${theirs} mm³ by manifold-3d, ${volume} in the report`)
    }
  }
  return faults
}

/** Drawings can be composed, have no number that is none, and are read back by another parser. */
function fileFaults(read: Read): string[] {
  const faults: string[] = []
  const findings = judged(read.family, read.design, false)
  const drawn = drawingFiles(read, findings, 'a1b2c3d4', loadFont(), besideWork.pdf)
  if (!drawn.ok) faults.push(`drawings: ${drawn.problems[0]!.code} ${drawn.problems[0]!.found}`)
  const profiles = profileFile(read, findings, 'a1b2c3d4')
  if (!profiles.ok) faults.push(`profiles: ${profiles.problems[0]!.code} ${profiles.problems[0]!.found}`)
  const texts = [
    ...(drawn.ok ? [...drawn.value.files].filter(([name]) => name.endsWith('.dxf')) : []),
    ...(profiles.ok ? [['profiles.dxf', profiles.value] as const] : []),
  ]
  for (const [name, content] of texts) {
    const text = String(content)
    if (/\b(NaN|Infinity|undefined)\b/.test(text)) faults.push(`${name}: a number that is none`)
    const parsed = new (
      DxfParser as unknown as new () => { parseSync(t: string): { entities: unknown[] } }
    )().parseSync(text)
    if (parsed.entities.length === 0) faults.push(`${name}: nothing in it`)
  }
  return faults
}
