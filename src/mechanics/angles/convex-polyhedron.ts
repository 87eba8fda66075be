import { cellVertices } from '../../geometry/cell-vertices.ts'
import { depthOf, type Plane } from '../../geometry/surface.ts'
import { coincident } from '../../geometry/tolerance.ts'
import { cross, distance, dot, subtract, type Vec3 } from '../../geometry/vector.ts'

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

export interface Content {
  readonly volume: number
  readonly moment: Vec3
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
function edgesBetween<Name extends string>(corners: readonly Corner<Name>[]): ConvexPolyhedron<Name>['edges'] {
  const on = new Map<Name, Corner<Name>[]>()
  for (const corner of corners) {
    for (const name of corner.between) {
      const known = on.get(name)
      if (known) known.push(corner)
      else on.set(name, [corner])
    }
  }
  const sides = [...on]
  const edges: (readonly [Corner<Name>, Corner<Name>])[] = []
  sides.forEach(([, ofOne], i) => {
    for (let j = i + 1; j < sides.length; j++) {
      const [other] = sides[j]!
      const shared = ofOne.filter(({ between }) => between.includes(other))
      const [first, second] = shared
      if (first === undefined || second === undefined) continue
      const edge = shared.length === 2 ? ([first, second] as const) : ends(shared, first)
      // Where a side touches the body along an edge only, that edge lies in three sides, and is still one.
      if (!edges.some(([p, q]) => p === edge[0] && q === edge[1])) edges.push(edge)
    }
  })
  return edges
}

function ends<Name extends string>(shared: readonly Corner<Name>[], first: Corner<Name>): [Corner<Name>, Corner<Name>] {
  const run = subtract(furthest(shared, first.at).at, first.at)
  const ordered = shared.toSorted((p, q) => dot(run, p.at) - dot(run, q.at))
  return [ordered[0]!, ordered.at(-1)!]
}

function furthest<Name extends string>(corners: readonly Corner<Name>[], from: Vec3): Corner<Name> {
  return corners.reduce((best, next) => (distance(next.at, from) > distance(best.at, from) ? next : best))
}

/** Volume, mm³, and first moment, mm⁴, of the body: pyramids over its faces, each cut into triangles from one corner. */
export function contentOf<Name extends string>({ corners, edges }: ConvexPolyhedron<Name>): Content {
  const [top] = corners
  const first = new Map<Name, Vec3>()
  for (const { at, between } of corners) for (const name of between) if (!first.has(name)) first.set(name, at)
  let volume = 0
  const moment = [0, 0, 0]
  for (const [p, q] of edges) {
    for (const name of p.between) {
      const apex = first.get(name)!
      if (!q.between.includes(name) || top === undefined) continue
      const sides = [apex, p.at, q.at].map((at) => subtract(at, top.at)) as [Vec3, Vec3, Vec3]
      const piece = Math.abs(dot(sides[0], cross(sides[1], sides[2]))) / 6
      volume += piece
      for (let k = 0; k < 3; k++) moment[k]! += piece * (top.at[k]! + (sides[0][k]! + sides[1][k]! + sides[2][k]!) / 4)
    }
  }
  return { volume, moment: [moment[0]!, moment[1]!, moment[2]!] }
}

/** Planes whose normals differ by less part by less than 1e-6 mm over the 100 mm that a bit is long. */
function isSamePlane(a: Plane, b: Plane): boolean {
  return distance(a.normal, b.normal) < 1e-8 && Math.abs(a.offset - b.offset) < coincident
}
