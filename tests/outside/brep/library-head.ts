import { balanceOf } from '../../../src/families/fly-cutter-head/engineering/balance.ts'
import { flyCutterHead } from '../../../src/families/fly-cutter-head/family.ts'
import { readDesign } from '../../../src/families/read-design.ts'
import { pointFrom } from '../../../src/geometry/frame.ts'
import type { Result } from '../../../src/input/problem.ts'
import { loadTables } from '../../../src/package/load-tables.ts'
import { solidOf } from '../../../src/part/part.ts'
import type { PlacedPart } from '../../../src/part/scene.ts'
import type { Mesh } from '../../../src/solid/closed-mesh.ts'
import { meshOf } from '../../../src/solid/mesh.ts'
import { readStl, stlOf } from '../../../src/solid/stl.ts'
import type { Volume } from '../../../src/solid/volume.ts'
import type { NamedSet } from './parameter-sets.ts'
import type { Triangles } from './triangles.ts'

/** The default of the settings, in mm, which every set keeps. */
export const chordTolerance = 0.02

const tables = value(loadTables())

/** What the product makes of a set: the side that is judged. */
export function libraryHead({ name, text }: NamedSet) {
  const { design } = value(readDesign(flyCutterHead, text, name, tables))
  const { parts } = design.scene
  const placed = (id: string): PlacedPart => {
    const found = parts.find(({ part }) => part.id === id)
    if (found === undefined) throw new Error(`no part ${id} among ${parts.map(({ part }) => part.id).join(', ')}`)
    return found
  }
  const meshed = (id: string) => value(meshOf(solidOf(placed(id).part), chordTolerance, id))
  return {
    ids: parts.map(({ part }) => part.id),
    mesh: (id: string): Triangles => trianglesOf(meshed(id), placed(id)),
    /** The part as its STL file holds it, read back. */
    stl: (id: string): Triangles => {
      const facets = readStl(value(stlOf([meshed(id)], id, id)))
      return { coordinates: facets.flat(2), corners: facets.flatMap((_, i) => [3 * i, 3 * i + 1, 3 * i + 2]) }
    },
    /** As the report has it: of the true round-faced part, in the body frame. */
    volume: (id: string): Volume => {
      const { volume, centroid } = design.volume(id)
      return { volume, centroid: pointFrom(placed(id).at, centroid) }
    },
    /** Static unbalance about the spindle axis, kg·mm, as the balance figures have it. */
    unbalance: () => balanceOf(design).at.unbalance,
    density: (id: string): number => design.materialOf(placed(id).part).density,
    overhang: design.layout.bit.overhang,
    swing: design.swing,
  }
}

function trianglesOf(mesh: Mesh, { at }: PlacedPart): Triangles {
  const coordinates: number[] = []
  for (let i = 0; i < mesh.points.length; i += 3) {
    coordinates.push(...pointFrom(at, [mesh.points[i]!, mesh.points[i + 1]!, mesh.points[i + 2]!]))
  }
  return { coordinates, corners: [...mesh.triangles] }
}

function value<T>(result: Result<T>): T {
  if (result.ok) return result.value
  throw new Error(result.problems.map((p) => `${p.code} ${JSON.stringify(p)}`).join('\n'))
}
