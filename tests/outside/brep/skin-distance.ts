import { seededRandom } from './seeded-random.ts'
import type { Triangles } from './triangles.ts'

export type Point = readonly [number, number, number]

/** Farther than this is not measured, mm. */
const farthest = 5

/** A place on a skin and how far it lies from another skin, mm. */
export interface Stray {
  readonly at: Point
  readonly distance: number
}

/**
 * Where the skin of one mesh lies farther than `beyond` mm from that of another, and how far all of it lies at most: for
 * its corners and for `samples` points spread evenly over its area. The volume between two skins hides a small hole that is out
 * of place; this does not.
 */
export function strays(
  from: Triangles,
  to: Triangles,
  beyond: number,
  samples = 2000,
): { readonly most: number; readonly far: Stray[] } {
  const tree = boxed(to)
  const all = pointsOn(from, samples).map((at) => ({ at, distance: Math.sqrt(nearest(tree, to, at, farthest ** 2)) }))
  return { most: all.reduce((most, s) => Math.max(most, s.distance), 0), far: all.filter((s) => s.distance > beyond) }
}

/** The corners, each once, and points by area. */
function pointsOn({ coordinates, corners }: Triangles, samples: number): Point[] {
  const random = seededRandom(7)
  const corner = (k: number): Point => {
    const o = 3 * corners[k]!
    return [coordinates[o]!, coordinates[o + 1]!, coordinates[o + 2]!]
  }
  const points = [...new Map(corners.map((_, k) => [corner(k).join(), corner(k)])).values()]
  const areas = Array.from({ length: corners.length / 3 }, (_, t) =>
    area(corner(3 * t), corner(3 * t + 1), corner(3 * t + 2)),
  )
  const each = areas.reduce((a, b) => a + b, 0) / samples
  let owed = 0
  areas.forEach((size, t) => {
    const [a, b, c] = [corner(3 * t), corner(3 * t + 1), corner(3 * t + 2)]
    for (owed += size; owed > each; owed -= each) {
      const [u, v] = [random(), random()]
      const [s, w] = u + v < 1 ? [u, v] : [1 - u, 1 - v]
      points.push([0, 1, 2].map((i) => a[i]! + (b[i]! - a[i]!) * s + (c[i]! - a[i]!) * w) as unknown as Point)
    }
  })
  return points
}

function area(a: Point, b: Point, c: Point): number {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]]
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]]
  return Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / 2
}

/** Boxes round boxes round a few triangles, the triangles by number. */
interface Boxes {
  /** Least x, y, z and greatest x, y, z. */
  readonly bounds: readonly [number, number, number, number, number, number]
  readonly triangles?: readonly number[]
  readonly halves?: readonly [Boxes, Boxes]
}

function boxed(mesh: Triangles, triangles = Array.from({ length: mesh.corners.length / 3 }, (_, t) => t)): Boxes {
  const bounds: [number, number, number, number, number, number] = [1e9, 1e9, 1e9, -1e9, -1e9, -1e9]
  for (const t of triangles) {
    for (let k = 3 * t; k < 3 * t + 3; k++) {
      for (const i of [0, 1, 2] as const) {
        const v = mesh.coordinates[3 * mesh.corners[k]! + i]!
        if (v < bounds[i]) bounds[i] = v
        if (v > bounds[(i + 3) as 3 | 4 | 5]) bounds[(i + 3) as 3 | 4 | 5] = v
      }
    }
  }
  if (triangles.length <= 6) return { bounds, triangles }
  const sizes = [bounds[3] - bounds[0], bounds[4] - bounds[1], bounds[5] - bounds[2]]
  const axis = sizes.indexOf(Math.max(...sizes))
  const middles = new Map(
    triangles.map((t) => [
      t,
      [0, 1, 2].reduce((sum, k) => sum + mesh.coordinates[3 * mesh.corners[3 * t + k]! + axis]!, 0),
    ]),
  )
  const sorted = triangles.toSorted((a, b) => middles.get(a)! - middles.get(b)!)
  const half = sorted.length >> 1
  return { bounds, halves: [boxed(mesh, sorted.slice(0, half)), boxed(mesh, sorted.slice(half))] }
}

/** Square of the distance to the nearest triangle, at most `best`. */
function nearest(boxes: Boxes, mesh: Triangles, p: Point, best: number): number {
  let least = best
  if (boxes.halves === undefined) {
    for (const t of boxes.triangles!) least = Math.min(least, toTriangle(mesh, t, p))
    return least
  }
  const first = toBox(boxes.halves[0], p)
  const second = toBox(boxes.halves[1], p)
  const nearer = first <= second ? 0 : 1
  if (Math.min(first, second) < least) least = nearest(boxes.halves[nearer], mesh, p, least)
  if (Math.max(first, second) < least) least = nearest(boxes.halves[nearer === 0 ? 1 : 0], mesh, p, least)
  return least
}

function toBox({ bounds }: Boxes, p: Point): number {
  const x = Math.max(bounds[0] - p[0], 0, p[0] - bounds[3])
  const y = Math.max(bounds[1] - p[1], 0, p[1] - bounds[4])
  const z = Math.max(bounds[2] - p[2], 0, p[2] - bounds[5])
  return x * x + y * y + z * z
}

/** Square of the distance to a triangle; in plain numbers, since it runs millions of times. */
function toTriangle({ coordinates, corners }: Triangles, t: number, p: Point): number {
  const a = 3 * corners[3 * t]!
  const b = 3 * corners[3 * t + 1]!
  const c = 3 * corners[3 * t + 2]!
  const ax = coordinates[a]! - p[0]
  const ay = coordinates[a + 1]! - p[1]
  const az = coordinates[a + 2]! - p[2]
  const bx = coordinates[b]! - p[0]
  const by = coordinates[b + 1]! - p[1]
  const bz = coordinates[b + 2]! - p[2]
  const cx = coordinates[c]! - p[0]
  const cy = coordinates[c + 1]! - p[1]
  const cz = coordinates[c + 2]! - p[2]
  const nx = (by - ay) * (cz - az) - (bz - az) * (cy - ay)
  const ny = (bz - az) * (cx - ax) - (bx - ax) * (cz - az)
  const nz = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
  const size = nx * nx + ny * ny + nz * nz
  // The point, here the origin, lies over the triangle when it is on the inner side of all three edges.
  const ab = (ay * bz - az * by) * nx + (az * bx - ax * bz) * ny + (ax * by - ay * bx) * nz
  const bc = (by * cz - bz * cy) * nx + (bz * cx - bx * cz) * ny + (bx * cy - by * cx) * nz
  const ca = (cy * az - cz * ay) * nx + (cz * ax - cx * az) * ny + (cx * ay - cy * ax) * nz
  if (size > 0 && ab >= 0 && bc >= 0 && ca >= 0) return (ax * nx + ay * ny + az * nz) ** 2 / size
  return Math.min(
    toEdge(ax, ay, az, bx - ax, by - ay, bz - az),
    toEdge(bx, by, bz, cx - bx, cy - by, cz - bz),
    toEdge(cx, cy, cz, ax - cx, ay - cy, az - cz),
  )
}

/** Square of the distance from the origin to the edge that starts at x, y, z and runs along u, v, w. */
function toEdge(x: number, y: number, z: number, u: number, v: number, w: number): number {
  const length = u * u + v * v + w * w
  const at = length > 0 ? Math.min(1, Math.max(0, -(x * u + y * v + z * w) / length)) : 0
  const dx = x + at * u
  const dy = y + at * v
  const dz = z + at * w
  return dx * dx + dy * dy + dz * dz
}
