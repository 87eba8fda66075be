import type { Vec3 } from '../../../geometry/vector.ts'
import type { ConvexPolyhedron } from '../../../mechanics/angles/convex-polyhedron.ts'
import type { BitFace } from '../../../mechanics/angles/ground-bit.ts'

/** Where a facet meets a plane that is parallel to a side of the blank: bit's own frame at the tip, mm. */
export type Trace = readonly [Vec3, Vec3]

/** A plane across the ground part, and what of the facets is seen in it. */
export interface CutThrough {
  /** Coordinate of the plane along its axis. */
  readonly at: number
  readonly traces: ReadonlyMap<BitFace, Trace>
}

/** How many planes are tried between both ends of the ground part. */
const planes = 24

/**
 * Of planes square to an axis (0 along the bit, 1 in the direction of motion, 2 towards the work) the one in which the
 * shortest trace of the facets wanted is longest; undefined where none shows them all at `shortest` mm or more.
 */
export function clearestCut(
  ground: ConvexPolyhedron<BitFace>,
  axis: 0 | 1 | 2,
  facets: readonly BitFace[],
  shortest: number,
): CutThrough | undefined {
  const along = ground.corners.map(({ at }) => at[axis])
  const [low, high] = [Math.min(...along), Math.max(...along)]
  let best: CutThrough | undefined
  let most = shortest
  for (let k = 1; k < planes; k++) {
    const at = low + ((high - low) * k) / planes
    const traces = tracesAt(ground, axis, at)
    const least = Math.min(...facets.map((name) => lengthOf(traces.get(name))))
    if (least > most + 1e-9) {
      most = least
      best = { at, traces }
    }
  }
  return best
}

/** What every face of the ground part leaves in a plane square to the axis. */
function tracesAt(ground: ConvexPolyhedron<BitFace>, axis: 0 | 1 | 2, at: number): Map<BitFace, Trace> {
  const points = new Map<BitFace, Vec3[]>()
  for (const [p, q] of ground.edges) {
    const t = (at - p.at[axis]) / (q.at[axis] - p.at[axis])
    if (!(t > 0 && t < 1)) continue
    const point = [0, 1, 2].map((k) => p.at[k]! + t * (q.at[k]! - p.at[k]!)) as [number, number, number]
    for (const name of p.between) {
      if (q.between.includes(name)) points.set(name, [...(points.get(name) ?? []), point])
    }
  }
  return new Map([...points].flatMap(([name, [a, b]]) => (a && b ? [[name, [a, b]]] : [])))
}

const lengthOf = (trace: Trace | undefined): number =>
  trace ? Math.hypot(trace[1][0] - trace[0][0], trace[1][1] - trace[0][1], trace[1][2] - trace[0][2]) : 0
