import type { Solid } from '../geometry/solid.ts'
import type { Result } from '../input/problem.ts'
import { boundaryOf } from './boundary.ts'
import { closedMesh, type Mesh } from './closed-mesh.ts'

/**
 * Closed triangle mesh of a solid, no flat further than `chordTolerance` (mm, > 0) from its round face. `name` stands
 * in the problem (`unsound-solid`) when the skin cannot be closed.
 *
 * Faces just as far apart as counts as touching are taken one way at one corner and the other way at the next: the
 * skin then stays open, and is made again with another measure of touching, or with slightly finer flats.
 */
export function meshOf(solid: Solid, chordTolerance: number, name: string): Result<Mesh> {
  const mesh = (share: number, touch?: number) =>
    closedMesh(boundaryOf(solid, { kind: 'chord', tolerance: share * chordTolerance }, touch), name)
  const first = mesh(1)
  if (first.ok) return first
  for (const [share, touch] of retries) {
    const again = mesh(share, touch)
    if (again.ok) return again
  }
  return first
}

const retries = [
  [1, 4e-6],
  [1, 2.5e-7],
  [1, 2e-5],
  [0.9, 1e-6],
  [0.8, 4e-6],
] as const
