import type { Shape3D } from 'replicad'
import { chordTolerance } from './library-head.ts'
import { fromSkin } from './measure.ts'
import { type Stray, strays } from './skin-distance.ts'
import type { Triangles } from './triangles.ts'

/**
 * How far a flat may lie from the true skin, mm. On one round face it is the chord tolerance; where two round faces meet
 * square to each other their corner is off by both (√2 times), and a little more where they meet at a slant. Measured:
 * 1.43 times at most.
 */
export const farthestStray = 1.75 * chordTolerance

/** Chords of the judge's own mesh, and a little. */
const judgeFineness = 0.004

/**
 * How far the library's mesh strays from the judge's solid, and the solid from the mesh, mm. Meshes are compared first.
 * The B-rep kernel meshes a cone poorly beside its tip (by 0.07 mm on one set, and whatever tolerance is asked for), so
 * what seems far is measured again on the exact solid.
 */
export function straysBetween(
  made: Triangles,
  fine: Triangles,
  exact: Shape3D,
  samples?: number,
): { made: number; exact: number } {
  const ofMade = strays(made, fine, chordTolerance, samples)
  const ofJudge = strays(fine, made, chordTolerance, samples)
  return {
    made: Math.max(0, ...worst(ofMade.far).map(({ at }) => fromSkin(exact, at))),
    // A corner of the judge's mesh that is not on the judge's own solid tells nothing.
    exact: Math.max(
      0,
      ...worst(ofJudge.far)
        .filter(({ at }) => fromSkin(exact, at) < judgeFineness)
        .map(({ distance }) => distance),
    ),
  }
}

const worst = (far: readonly Stray[]) => far.toSorted((a, b) => b.distance - a.distance).slice(0, 40)
