import type { CommonParameters, Design } from '../families/family.ts'
import type { ReadDesign } from '../families/read-design.ts'
import type { JudgedFinding } from '../families/variants.ts'
import type { Result } from '../input/problem.ts'
import { solidOf } from '../part/part.ts'
import { htmlReport } from '../report/html/html-report.ts'
import { markdownReport } from '../report/markdown.ts'
import { reportOf } from '../report/report.ts'
import type { Mesh } from '../solid/closed-mesh.ts'
import { meshOf } from '../solid/mesh.ts'
import { stlOf } from '../solid/stl.ts'

/** Every file of a package, name → content. The same design gives the same bytes. */
export function packageFiles(
  read: ReadDesign<CommonParameters, Design>,
  findings: readonly JudgedFinding[],
  revision: string,
): Result<Map<string, Uint8Array | string>> {
  const { design } = read
  const files = new Map<string, Uint8Array | string>()
  const meshes: { id: string; mesh: Mesh }[] = []
  for (const { part } of design.scene.parts) {
    const mesh = meshOf(solidOf(part), design.parameters.settings['chord-tolerance'], part.id)
    if (!mesh.ok) return mesh
    meshes.push({ id: part.id, mesh: mesh.value })
  }
  const bodies: [string, readonly Mesh[]][] = [
    ...meshes.filter(({ id }) => !id.startsWith('screw-')).map(({ id, mesh }): [string, Mesh[]] => [id, [mesh]]),
    ['assembly', meshes.map(({ mesh }) => mesh)],
  ]
  for (const [name, parts] of bodies) {
    const stl = stlOf(parts, name, `cutterwright ${name} in mm, revision ${revision}`)
    if (!stl.ok) return stl
    files.set(`${name}.stl`, stl.value)
  }
  const report = reportOf(read, findings, revision)
  files.set('report.json', `${JSON.stringify(report, null, 2)}\n`)
  files.set('report.md', markdownReport(report))
  files.set('report.html', htmlReport(report, read.family.pictures(design)))
  return { ok: true, value: files }
}
