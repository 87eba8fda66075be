import type { Solid } from '../geometry/solid.ts'
import type { Result } from '../input/problem.ts'
import { handOnly } from '../report/cautions.ts'
import type { Mesh } from '../solid/closed-mesh.ts'
import { laidOut } from '../solid/laid-out.ts'
import { meshOf } from '../solid/mesh.ts'
import { facetsOf, stlFile, stlOf } from '../solid/stl.ts'
import { threeMf } from '../solid/three-mf.ts'
import type { SolidsJob } from './solids-job.ts'

/** Parts in the order of the scene; what comes after has the last one's. */
const colours = ['#8f979e', '#55616e', '#c8a24a', '#3b3f45'] as const
const colourOf = (index: number) => colours[Math.min(index, colours.length - 1)]!

/** STL of every part, of all in place and of the mock-up, and the last two with names and colours as 3MF. */
export function solidFiles(job: SolidsJob): Result<Map<string, Uint8Array>> {
  const { chordTolerance, scale, title, revision, mockUp: bodies } = job
  const files = new Map<string, Uint8Array>()
  const known: { readonly solid: Solid; readonly tolerance: number; readonly mesh: Mesh }[] = []
  /** Arbor and bit of the mock-up are mostly those of the tool. */
  const meshed = (solid: Solid, tolerance: number, name: string): Result<Mesh> => {
    const before = known.find((k) => k.tolerance === tolerance && sameCells(k.solid, solid))
    if (before) return { ok: true, value: before.mesh }
    const mesh = meshOf(solid, tolerance, name)
    if (mesh.ok) known.push({ solid, tolerance, mesh: mesh.value })
    return mesh
  }
  const meshes: { id: string; label: string; material: string; mesh: Mesh }[] = []
  for (const { solid, ...part } of job.parts) {
    const mesh = meshed(solid, chordTolerance, part.id)
    if (!mesh.ok) return mesh
    meshes.push({ ...part, mesh: mesh.value })
  }
  const mockUp: { label: string; mesh: Mesh }[] = []
  for (const { id, label, solid } of bodies) {
    const mesh = meshed(solid, chordTolerance / Math.max(1, scale), `mock-up ${id}`)
    if (!mesh.ok) return mesh
    mockUp.push({ label, mesh: mesh.value })
  }
  const printed = laidOut(
    bodies.map(({ up }, i) => ({ up, mesh: mockUp[i]!.mesh })),
    scale,
  )
  const header = (name: string) => `cutterwright ${name} in mm, revision ${revision}`
  const facets: Uint8Array[] = []
  for (const { id, mesh } of meshes) {
    const body = facetsOf([mesh], id)
    if (!body.ok) return body
    facets.push(body.value)
    if (!id.startsWith('screw-')) files.set(`${id}.stl`, stlFile([body.value], header(id)))
  }
  files.set('assembly.stl', stlFile(facets, header('assembly')))
  const print = stlOf(printed, 'mock-up', header('mock-up'))
  if (!print.ok) return print
  files.set('mock-up.stl', print.value)
  const inPlace = meshes.map(({ label, material, mesh }, i) => ({ name: label, mesh, material, colour: colourOf(i) }))
  files.set('assembly.3mf', threeMf(inPlace, { title, description: `in mm, revision ${revision}` }))
  const toPrint = printed.map((mesh, i) => ({
    name: `${mockUp[i]!.label}, mock-up`,
    mesh,
    material: 'to be printed',
    colour: colourOf(i),
  }))
  const enlarged = scale === 1 ? '' : ` at ${scale} of its size`
  files.set(
    'mock-up.3mf',
    threeMf(toPrint, {
      title: `${title}, mock-up`,
      description: `in mm${enlarged}, revision ${revision}. ${handOnly}`,
    }),
  )
  return { ok: true, value: files }
}

const sameCells = (a: Solid, b: Solid): boolean => sameList(a.stock, b.stock) && sameList(a.cuts, b.cuts)
const sameList = <T>(a: readonly T[], b: readonly T[]): boolean =>
  a.length === b.length && a.every((item, i) => item === b[i])
