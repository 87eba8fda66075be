import type { Manifold } from 'manifold-3d'
import type { CommonParameters, Design } from '../../src/families/family.ts'
import type { ReadDesign } from '../../src/families/read-design.ts'
import type { Solid } from '../../src/geometry/solid.ts'
import { solidOf } from '../../src/part/part.ts'
import type { Mesh } from '../../src/solid/closed-mesh.ts'
import { meshOf } from '../../src/solid/mesh.ts'
import { stlOf } from '../../src/solid/stl.ts'
import { apart, manifoldOf } from '../outside/brep/triangles.ts'
import { solidOfCells } from './cells-solid.ts'

/**
 * How far two meshes of the same flats may lie apart, mm: what only one of them has, spread over the skin. Faces nearer than
 * 2e-5 mm count as touching in one of our retries; mostly it is 1e-6.
 */
const sameSkin = 3e-5

/** Our retries take slightly finer flats. */
const finenesses = [1, 0.9, 0.8] as const

/**
 * How far a volume in the report may be off, as a share, from flats of the circle's own area: few of them mostly do, and where
 * faces are cut to slivers many more. The library promises 1.5e-5.
 */
const sameVolume = [
  [16, 1e-4],
  [96, 3e-5],
] as const

/** Every part is a closed mesh of what its cells enclose, and has the volume that the report says. */
export function solidFaults({ family, design }: ReadDesign<CommonParameters, Design>): string[] {
  const tolerance = design.parameters.settings['chord-tolerance']
  const parts = design.scene.parts.map(({ part }) => ({
    id: part.id,
    solid: solidOf(part),
    volume: design.volume(part.id).volume,
  }))
  const mockUp = family.mockUp(design).map(({ id, solid }) => ({ id: `mock-up ${id}`, solid, volume: undefined }))
  // Arbor and bit of the mock-up are mostly those of the tool.
  const known = new Set(parts.map(({ solid }) => facesOf(solid)))
  const bodies = [...parts, ...mockUp.filter(({ solid }) => !known.has(facesOf(solid)))]
  return bodies.flatMap(({ id, solid, volume }) => {
    const mesh = meshOf(solid, tolerance, id)
    if (mesh.ok) return [...meshFaults(mesh.value, solid, tolerance), ...volumeFaults(solid, volume)].map(named(id))
    // Nothing left of a part is the design's fault, an open skin is ours.
    const { found } = mesh.problems[0]!
    return found === 'no metal at all' ? [] : [`${id}: ${found}`]
  })
}

const named = (id: string) => (fault: string) => `${id}: ${fault}`
const facesOf = (solid: Solid): string => JSON.stringify(solid)

/** The mesh can be written, another kernel takes it, and it encloses what the cells do, made into a solid by that kernel. */
export function meshFaults(mesh: Mesh, solid: Solid, tolerance: number): string[] {
  if (mesh.points.some((v) => !Number.isFinite(v))) return ['a point that is no number']
  const stl = stlOf([mesh], 'part', 'fuzz')
  if (!stl.ok) return [`as STL: ${stl.problems[0]!.found}`]
  const ours = manifoldOf({ coordinates: [...mesh.points], corners: [...mesh.triangles] })
  try {
    const status = String(ours.status())
    if (!/NoError|^0$/.test(status)) return [`manifold-3d says ${status}`]
    let least = Infinity
    for (const share of finenesses) {
      const theirs = solidOfCells(solid, { kind: 'chord', tolerance: share * tolerance })
      // Where metal of a hundredth of a micrometre is left, one of the two ways loses its footing.
      least = Math.min(least, Math.abs(apart(ours, theirs)))
      if (least >= sameSkin) least = Math.min(least, onlyIn(ours, theirs) + onlyIn(theirs, ours))
      theirs.delete()
      if (least < sameSkin) return []
    }
    return [`the mesh lies ${least} mm from its cells`]
  } finally {
    ours.delete()
  }
}

/** Metal of the first that the second has not, spread over its skin, mm. */
function onlyIn(one: Manifold, other: Manifold): number {
  const rest = one.subtract(other)
  const deep = rest.volume() / one.surfaceArea()
  rest.delete()
  return deep
}

/** The volume (mm³) that the report says is that of the cells; undefined: it says none. */
export function volumeFaults(solid: Solid, volume: number | undefined): string[] {
  if (volume === undefined) return []
  let found = 0
  for (const [flats, share] of sameVolume) {
    const theirs = solidOfCells(solid, { kind: 'equal-area', flats })
    found = theirs.volume()
    theirs.delete()
    if (Math.abs(found - volume) < share * found + 1e-3) return []
  }
  return [`${found} mm³ by manifold-3d, ${volume} in the report`]
}
