import type { Manifold } from 'manifold-3d'
import type { Solid } from '../../src/geometry/solid.ts'
import type { Cone, Cylinder } from '../../src/geometry/surface.ts'
import { add, along, cross, dot, negate, unit, type Vec3 } from '../../src/geometry/vector.ts'
import { type Facet, type Facetting, facetsOf } from '../../src/solid/facets.ts'
import { meshKernel } from '../outside/brep/kernels.ts'

/** How far a cell without an end goes on, mm: beyond anything on a mill's table. */
const reach = 5000

/**
 * A solid made a second time from its cells, by the mesh kernel alone: it cuts each cell out of its own cylinders and cones,
 * unites the stock and takes off the cuts. Only how many flats a round face has, and where the first one lies, is asked of
 * the library, so that the two can be compared closely. To be deleted by whoever asks.
 */
export function solidOfCells(solid: Solid, facetting: Facetting): Manifold {
  const { Manifold } = meshKernel
  const facets = facetsOf(solid, facetting)
  const made: Manifold[] = []
  const united = (cells: Solid['cuts']): Manifold => {
    const bodies = cells.map((cell) => cellBody(facets.get(cell)!, facetting))
    made.push(...bodies)
    const all = Manifold.union(bodies)
    made.push(all)
    return all
  }
  try {
    return united(solid.stock).subtract(united(solid.cuts))
  } finally {
    for (const m of made) m.delete()
  }
}

function cellBody(facets: readonly Facet[], facetting: Facetting): Manifold {
  const { Manifold } = meshKernel
  const surfaces = [...new Set(facets.map((f) => f.surface))]
  const rounds = surfaces.flatMap((s) =>
    s.kind === 'plane' ? [] : [roundBody(s, directionsOf(s, facets), facetting.kind === 'equal-area')],
  )
  let body = rounds.length > 0 ? Manifold.intersection(rounds) : Manifold.cube(2 * reach, true)
  for (const r of rounds) r.delete()
  for (const s of surfaces) {
    if (s.kind !== 'plane') continue
    const trimmed = body.trimByPlane([...negate(s.normal)] as [number, number, number], -s.offset)
    body.delete()
    body = trimmed
  }
  return body
}

/** Where the flats of a surface look, square to its axis. */
const directionsOf = (s: Cylinder | Cone, facets: readonly Facet[]): Vec3[] =>
  facets
    .filter((f) => f.surface === s)
    .map(({ plane: { normal } }) => unit(along(normal, s.axis, -dot(normal, s.axis))))

/** Corners lie on the round face, or as far outside that the flats have its area. */
function roundBody(s: Cylinder | Cone, flats: readonly Vec3[], equalArea: boolean): Manifold {
  const count = flats.length
  const turn = (2 * Math.PI) / count
  const grow = equalArea ? Math.sqrt(turn / Math.sin(turn)) : 1
  const corner = unit(add(flats[0]!, flats[count - 1]!))
  const { Manifold } = meshKernel
  const [body, from, z] =
    s.kind === 'cylinder'
      ? [Manifold.cylinder(2 * reach, s.radius * grow, s.radius * grow, count), along(s.point, s.axis, -reach), s.axis]
      : [Manifold.cylinder(reach, reach * s.slope * grow, 0, count), along(s.apex, s.axis, reach), negate(s.axis)]
  const y = cross(z, corner)
  const placed = body.transform([...corner, 0, ...y, 0, ...z, 0, ...from, 1])
  body.delete()
  return placed
}
