import type { Solid } from '../geometry/solid.ts'
import type { Result } from '../input/problem.ts'
import { boundaryOf } from './boundary.ts'
import { closedMesh, type Mesh } from './closed-mesh.ts'

/**
 * Closed triangle mesh of a solid, no flat further than `chordTolerance` (mm, > 0) from its round face. `name` stands
 * in the problem (`unsound-solid`) when the skin cannot be closed, not even with slightly finer flats.
 */
export function meshOf(solid: Solid, chordTolerance: number, name: string): Result<Mesh> {
  const mesh = (share: number) =>
    closedMesh(boundaryOf(solid, { kind: 'chord', tolerance: share * chordTolerance }), name)
  const first = mesh(1)
  for (const share of first.ok ? [] : [0.9, 0.8, 0.7]) {
    const finer = mesh(share)
    if (finer.ok) return finer
  }
  return first
}
