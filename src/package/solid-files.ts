import type { AnyFamily, Design } from '../families/family.ts'
import type { Result } from '../input/problem.ts'
import { solidOf } from '../part/part.ts'
import { handOnly } from '../report/cautions.ts'
import type { Mesh } from '../solid/closed-mesh.ts'
import { laidOut } from '../solid/laid-out.ts'
import { meshOf } from '../solid/mesh.ts'
import { facetsOf, stlFile } from '../solid/stl.ts'
import { threeMf } from '../solid/three-mf.ts'

/** Parts in the order of the scene; what comes after has the last one's. */
const colours = ['#8f979e', '#55616e', '#c8a24a', '#3b3f45'] as const
const colourOf = (index: number) => colours[Math.min(index, colours.length - 1)]!

/** STL of every part, of all in place and of the mock-up, and the last two with names and colours as 3MF. */
export function solidFiles(family: AnyFamily, design: Design, revision: string): Result<Map<string, Uint8Array>> {
  const files = new Map<string, Uint8Array>()
  const tolerance = design.parameters.settings['chord-tolerance']
  const { title } = design.parameters
  const meshes: { id: string; label: string; material: string; mesh: Mesh }[] = []
  for (const { part } of design.scene.parts) {
    const mesh = meshOf(solidOf(part), tolerance, part.id)
    if (!mesh.ok) return mesh
    meshes.push({ id: part.id, label: part.label, material: part.material, mesh: mesh.value })
  }
  const mockUp: { label: string; mesh: Mesh }[] = []
  const { scale } = design.parameters['mock-up']
  const bodies = family.mockUp(design)
  for (const { id, label, solid } of bodies) {
    const mesh = meshOf(solid, tolerance / Math.max(1, scale), `mock-up ${id}`)
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
  const print = facetsOf(printed, 'mock-up')
  if (!print.ok) return print
  files.set('mock-up.stl', stlFile([print.value], header('mock-up')))
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
