import { cellVertices } from '../../geometry/cell-vertices.ts'
import { depthOf, type Plane } from '../../geometry/surface.ts'
import { coincident } from '../../geometry/tolerance.ts'
import { distance, dot, subtract, type Vec3 } from '../../geometry/vector.ts'

/** A flat side by a name of the caller's. */
export interface Side<Name extends string> extends Plane {
  readonly name: Name
}

export interface Corner<Name extends string> {
  readonly at: Vec3
  /** The sides that meet here. */
  readonly between: readonly Name[]
}

/** What is inside some flat sides, by its corners and the straight edges between them. */
export interface ConvexPolyhedron<Name extends string> {
  readonly corners: readonly Corner<Name>[]
  readonly edges: readonly (readonly [Corner<Name>, Corner<Name>])[]
}

/**
 * Corners and edges of the bounded body inside all sides, exact to rounding; corners nearer than 1e-6 mm are one. Of
 * sides that lie in one plane the first keeps its name.
 */
export function polyhedronInside<Name extends string>(sides: readonly Side<Name>[]): ConvexPolyhedron<Name> {
  const walls = sides.filter((side, at) => !sides.slice(0, at).some((earlier) => isSamePlane(earlier, side)))
  const corners: Corner<Name>[] = []
  for (const at of cellVertices({ surfaces: walls })) {
    if (corners.some((corner) => distance(corner.at, at) < coincident)) continue
    corners.push({
      at,
      between: walls.filter((side) => Math.abs(depthOf(side, at)) <= coincident).map((side) => side.name),
    })
  }
  return { corners, edges: edgesBetween(corners) }
}

/** Every two sides share one line at most: of the corners on both, the two furthest apart bound the edge. */
function edgesBetween<Name extends string>(corners: readonly Corner<Name>[]): [Corner<Name>, Corner<Name>][] {
  const names = [...new Set(corners.flatMap((corner) => corner.between))]
  const edges: [Corner<Name>, Corner<Name>][] = []
  names.forEach((one, i) => {
    for (const other of names.slice(i + 1)) {
      const shared = corners.filter(({ between }) => between.includes(one) && between.includes(other))
      const [first] = shared
      if (first === undefined || shared.length < 2) continue
      const run = subtract(furthest(shared, first.at).at, first.at)
      const ordered = shared.toSorted((p, q) => dot(run, p.at) - dot(run, q.at))
      edges.push([ordered[0]!, ordered.at(-1)!])
    }
  })
  return edges
}

function furthest<Name extends string>(corners: readonly Corner<Name>[], from: Vec3): Corner<Name> {
  return corners.reduce((best, next) => (distance(next.at, from) > distance(best.at, from) ? next : best))
}

/** Planes whose normals differ by less part by less than 1e-6 mm over the 100 mm that a bit is long. */
function isSamePlane(a: Plane, b: Plane): boolean {
  return distance(a.normal, b.normal) < 1e-8 && Math.abs(a.offset - b.offset) < coincident
}
