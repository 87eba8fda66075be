import type { Solid } from '../geometry/solid.ts'
import type { Result } from '../input/problem.ts'
import { boundaryOf } from './boundary.ts'
import { closedMesh, type Mesh } from './closed-mesh.ts'

/**
 * Closed triangle mesh of a solid, no flat further than `chordTolerance` (mm, > 0) from its round face. `name` stands
 * in the problem (`unsound-solid`) when the skin cannot be closed.
 */
export const meshOf = (solid: Solid, chordTolerance: number, name: string): Result<Mesh> =>
  closedMesh(boundaryOf(solid, { kind: 'chord', tolerance: chordTolerance }), name)
