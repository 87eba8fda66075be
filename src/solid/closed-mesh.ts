import { add, cross, dot, length, scale, subtract, type Vec3 } from '../geometry/vector.ts'
import type { Problem, Result } from '../input/problem.ts'
import { areaOf, type Polygon } from './polygon.ts'
import { boxOf, meanEdge } from './polyhedron.ts'

/** A closed, oriented triangle mesh: every edge is walked as often one way as the other. mm. */
export interface Mesh {
  readonly points: readonly Vec3[]
  /** Corners by index, anticlockwise seen from outside. */
  readonly triangles: readonly (readonly [number, number, number])[]
}

/**
 * Joins skin polygons into a closed mesh: corners nearer than the weld distance become one, corners that lie on a
 * neighbour's edge are put into it, what has collapsed is dropped, and the rest is cut into triangles.
 * The weld distance is four times the grid that the STL serializer rounds to, so that rounding can join nothing more.
 * Refuses (code `unsound-solid`) a skin that is still open.
 */
export function closedMesh(skin: readonly Polygon[], name: string): Result<Mesh> {
  if (skin.length === 0) return { ok: false, problems: [unsound(name, 'no metal at all')] }
  const weld = 4e-5 * meanEdge(boxOf(skin.flatMap((p) => p.corners)))
  const points: Vec3[] = []
  const nearest = welder(points, weld)
  let loops = skin.map((p) => withoutSpikes(p.corners.map(nearest))).filter((l) => l.length > 2)
  for (let round = 0; round < 4; round++) {
    const open = openEdges(loops)
    if (open.length === 0) break
    loops = insertCorners(loops, open, points, 3 * weld)
      .map(withoutSpikes)
      .filter((l) => l.length > 2)
  }
  const open = openEdges(loops)
  if (open.length > 0) return { ok: false, problems: [unsound(name, `${open.length} open edges`)] }
  return { ok: true, value: triangulated(loops, points, weld) }
}

const unsound = (name: string, found: string): Problem => ({
  code: 'unsound-solid',
  where: { file: name },
  found,
  allowed: 'a closed skin in which every edge joins two faces',
  remedy: 'change the chord tolerance slightly; please report the parameter set as a defect',
})

function welder(points: Vec3[], weld: number): (p: Vec3) => number {
  const grid = new Map<string, number[]>()
  return (p) => {
    const [a, b, c] = [Math.floor(p[0] / weld), Math.floor(p[1] / weld), Math.floor(p[2] / weld)]
    for (let i = a - 1; i <= a + 1; i++) {
      for (let j = b - 1; j <= b + 1; j++) {
        for (let k = c - 1; k <= c + 1; k++) {
          for (const index of grid.get(`${i},${j},${k}`) ?? []) {
            if (length(subtract(points[index]!, p)) < weld) return index
          }
        }
      }
    }
    const key = `${a},${b},${c}`
    grid.set(key, [...(grid.get(key) ?? []), points.length])
    points.push(p)
    return points.length - 1
  }
}

/** Drops repeated corners and stretches that run out and straight back. */
function withoutSpikes(loop: readonly number[]): number[] {
  const out = [...loop]
  for (let i = 0; out.length > 0 && i < out.length; ) {
    const n = out.length
    const next = out[(i + 1) % n]!
    if (out[i] === next || out[(i + n - 1) % n] === next) {
      out.splice(i, 1)
      i = Math.max(0, i - 2)
    } else i++
  }
  return out
}

type Edge = readonly [number, number]

/** Directed edges that are walked more often than their reverse. */
function openEdges(loops: readonly (readonly number[])[]): Edge[] {
  const balance = new Map<number, number>()
  const size = 1 + loops.reduce((most, l) => l.reduce((m, v) => Math.max(m, v), most), 0)
  for (const loop of loops) {
    loop.forEach((a, i) => {
      const b = loop[(i + 1) % loop.length]!
      const key = a < b ? a * size + b : b * size + a
      balance.set(key, (balance.get(key) ?? 0) + (a < b ? 1 : -1))
    })
  }
  const open: Edge[] = []
  for (const [key, count] of balance) {
    const a = Math.floor(key / size)
    const b = key % size
    if (count > 0) open.push([a, b])
    if (count < 0) open.push([b, a])
  }
  return open
}

/** Puts corners of open edges into the open edges that they lie on. */
function insertCorners(
  loops: readonly (readonly number[])[],
  open: readonly Edge[],
  points: readonly Vec3[],
  reachOut: number,
): number[][] {
  const loose = [...new Set(open.flat())].sort((a, b) => points[a]![0] - points[b]![0])
  const xs = loose.map((i) => points[i]![0])
  const onEdge = new Map<string, number[]>()
  for (const [a, b] of open) {
    for (const key of [`${a}>${b}`, `${b}>${a}`]) {
      if (onEdge.has(key)) continue
      const [from, to] = key.split('>').map(Number) as [number, number]
      onEdge.set(key, cornersOn(from, to, points, loose, xs, reachOut))
    }
  }
  return loops.map((loop) => loop.flatMap((a, i) => [a, ...(onEdge.get(`${a}>${loop[(i + 1) % loop.length]!}`) ?? [])]))
}

function cornersOn(
  from: number,
  to: number,
  points: readonly Vec3[],
  loose: readonly number[],
  xs: readonly number[],
  reachOut: number,
): number[] {
  const p = points[from]!
  const run = subtract(points[to]!, p)
  const l = length(run)
  const u = scale(run, 1 / l)
  const low = Math.min(p[0], points[to]![0]) - reachOut
  const high = Math.max(p[0], points[to]![0]) + reachOut
  const found: { index: number; at: number }[] = []
  for (let i = firstAtLeast(xs, low); i < xs.length && xs[i]! <= high; i++) {
    const index = loose[i]!
    if (index === from || index === to) continue
    const v = subtract(points[index]!, p)
    const at = dot(v, u)
    if (at <= 0 || at >= l) continue
    if (length(subtract(v, scale(u, at))) < reachOut) found.push({ index, at })
  }
  return found.sort((a, b) => a.at - b.at).map((f) => f.index)
}

function firstAtLeast(sorted: readonly number[], value: number): number {
  let low = 0
  let high = sorted.length
  while (low < high) {
    const mid = (low + high) >> 1
    if (sorted[mid]! < value) low = mid + 1
    else high = mid
  }
  return low
}

function triangulated(loops: readonly (readonly number[])[], points: readonly Vec3[], weld: number): Mesh {
  const all = [...points]
  const triangles: [number, number, number][] = []
  for (const loop of loops) {
    if (loop.length === 3) {
      triangles.push([loop[0]!, loop[1]!, loop[2]!])
      continue
    }
    const apex = fanCorner(loop, points, weld)
    if (apex >= 0) {
      for (let i = 1; i + 1 < loop.length; i++) {
        triangles.push([loop[apex]!, loop[(apex + i) % loop.length]!, loop[(apex + i + 1) % loop.length]!])
      }
      continue
    }
    // Corners in a straight run: no corner sees them all without a flat triangle, the middle does.
    all.push(scale(loop.map((i) => points[i]!).reduce(add), 1 / loop.length))
    loop.forEach((a, i) => {
      triangles.push([all.length - 1, a, loop[(i + 1) % loop.length]!])
    })
  }
  return { points: all, triangles }
}

/** A corner from which every triangle of the fan has some height, or −1. */
function fanCorner(loop: readonly number[], points: readonly Vec3[], weld: number): number {
  const n = loop.length
  const area = areaOf(loop.map((i) => points[i]!))
  if (area < weld * weld) return -1
  for (let apex = 0; apex < Math.min(n, 6); apex++) {
    let good = true
    for (let i = 1; i + 1 < n && good; i++) {
      const a = points[loop[apex]!]!
      const ab = subtract(points[loop[(apex + i) % n]!]!, a)
      const ac = subtract(points[loop[(apex + i + 1) % n]!]!, a)
      const longest = Math.max(length(ab), length(ac), length(subtract(ac, ab)))
      good = length(cross(ab, ac)) > 4 * weld * longest
    }
    if (good) return apex
  }
  return -1
}
