import type { Problem, Result } from '../input/problem.ts'
import type { Polygon } from './polygon.ts'
import { boxOf, meanEdge } from './polyhedron.ts'
import { welder } from './weld.ts'

/** A closed, oriented triangle mesh: every edge is walked as often one way as the other. */
export interface Mesh {
  /** Three coordinates a point, mm. */
  readonly points: Float64Array
  /** Three corners a triangle, by index of the point, anticlockwise seen from outside. */
  readonly triangles: Uint32Array
}

type Loop = number[]

/**
 * Joins skin polygons into a closed mesh. Corners nearer than the weld distance become one, corners that lie on a
 * neighbour's edge are put into it, and the rest is cut into triangles. Corners are known to about 1e-6 mm over the
 * sine of the angle at which faces meet, so a fine weld mostly does; a coarser or finer one is tried where it does not.
 * Then corners too near each other for the STL serializer's grid are made one, which keeps a closed mesh closed.
 * Refuses (code `unsound-solid`) a skin that is still open.
 */
export function closedMesh(skin: readonly Polygon[], name: string): Result<Mesh> {
  if (skin.length === 0) return { ok: false, problems: [unsound(name, 'no metal at all')] }
  let open = 0
  for (const weld of [2e-5, 6e-6, 6e-5, 2e-6, 2e-4]) {
    const joined = joinedLoops(skin, weld)
    open = joined.open
    if (open > 0) continue
    const apart = 4e-5 * meanEdge(boxOf(skin.flatMap((p) => p.corners)))
    return { ok: true, value: withoutSpecks(triangulated(joined.loops, joined.coordinates, weld), apart) }
  }
  return { ok: false, problems: [unsound(name, `${open} open edges`)] }
}

function joinedLoops(skin: readonly Polygon[], weld: number) {
  const { coordinates, index } = welder(weld)
  let loops: Loop[] = []
  for (const polygon of skin) {
    const loop = withoutSpikes(polygon.corners.map((p) => index(p[0], p[1], p[2])))
    if (loop.length > 2) loops.push(loop)
  }
  const size = coordinates.length / 3
  let open = openEdges(loops, size)
  for (let round = 0; round < 4 && open.length > 0; round++) {
    loops = insertCorners(loops, open, coordinates, 3 * weld)
    open = openEdges(loops, size)
  }
  return { loops, coordinates, open: open.length }
}

/**
 * Makes points nearer than `apart` one (four times the serializer's grid, so that rounding can join nothing more),
 * drops the triangles that this leaves without a corner, and pairs that lie back to back.
 */
function withoutSpecks({ points, triangles }: Mesh, apart: number): Mesh {
  const { coordinates, index } = welder(apart)
  const merged = Array.from({ length: points.length / 3 }, (_, i) =>
    index(points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!),
  )
  if (coordinates.length === points.length) return { points, triangles }
  // By three corners in rising order: how often they lie that way more than the other. A third facet on a pair that lies
  // back to back must not go with it.
  const net = new Map<string, { readonly corners: readonly [number, number, number]; count: number }>()
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => merged[triangles[t + k]!]!) as [number, number, number]
    if (a === b || b === c || c === a) continue
    const [low, middle, high] = [a, b, c].sort((p, q) => p - q) as [number, number, number]
    // Rising order turned round keeps its way; two corners exchanged turn it over.
    const way = (low === a && middle === b) || (low === b && middle === c) || (low === c && middle === a) ? 1 : -1
    const key = `${low},${middle},${high}`
    const known = net.get(key)
    if (known) known.count += way
    else net.set(key, { corners: [low, middle, high], count: way })
  }
  const kept = [...net.values()].flatMap(({ corners: [low, middle, high], count }) =>
    Array.from({ length: Math.abs(count) }, () => (count > 0 ? [low, middle, high] : [low, high, middle])),
  )
  return { points: Float64Array.from(coordinates), triangles: Uint32Array.from(kept.flat()) }
}

const unsound = (name: string, found: string): Problem => ({
  code: 'unsound-solid',
  where: { file: name },
  found,
  allowed: 'a closed skin in which every edge joins two faces',
  remedy: 'change the chord tolerance slightly; please report the parameter set as a defect',
})

/** Drops repeated corners and stretches that run out and straight back. */
function withoutSpikes(loop: Loop): Loop {
  for (let i = 0; loop.length > 0 && i < loop.length; ) {
    const n = loop.length
    const next = loop[i + 1 < n ? i + 1 : 0]!
    if (loop[i] === next || loop[i > 0 ? i - 1 : n - 1] === next) {
      loop.splice(i, 1)
      i = Math.max(0, i - 2)
    } else i++
  }
  return loop
}

/** Directed edges, as from · size + to, that are walked more often than their reverse. */
function openEdges(loops: readonly Loop[], size: number): number[] {
  const balance = new Map<number, number>()
  for (const loop of loops) {
    let a = loop[loop.length - 1]!
    for (const b of loop) {
      const key = a < b ? a * size + b : b * size + a
      const count = (balance.get(key) ?? 0) + (a < b ? 1 : -1)
      if (count === 0) balance.delete(key)
      else balance.set(key, count)
      a = b
    }
  }
  return [...balance].map(([key, count]) => (count > 0 ? key : (key % size) * size + Math.floor(key / size)))
}

/** Puts corners of open edges into the open edges that they lie on. */
function insertCorners(
  loops: readonly Loop[],
  open: readonly number[],
  at: readonly number[],
  reachOut: number,
): Loop[] {
  const size = at.length / 3
  const loose = [...new Set(open.flatMap((edge) => [Math.floor(edge / size), edge % size]))].sort(
    (a, b) => at[3 * a]! - at[3 * b]! || a - b,
  )
  const xs = loose.map((i) => at[3 * i]!)
  const onEdge = new Map<number, Loop>()
  for (const edge of open) {
    const [a, b] = [Math.floor(edge / size), edge % size]
    const between = cornersOn(a, b, at, loose, xs, reachOut)
    if (between.length === 0) continue
    onEdge.set(a * size + b, between)
    onEdge.set(b * size + a, between.toReversed())
  }
  const out: Loop[] = []
  for (const loop of loops) {
    let touched: Loop | undefined
    loop.forEach((a, i) => {
      const b = loop[i + 1 < loop.length ? i + 1 : 0]!
      const between = onEdge.get(a * size + b)
      if (between && !touched) touched = loop.slice(0, i)
      touched?.push(a, ...(between ?? []))
    })
    const mended = touched ? withoutSpikes(touched) : loop
    if (mended.length > 2) out.push(mended)
  }
  return out
}

/** Loose corners on the stretch between two points, in order. */
function cornersOn(
  from: number,
  to: number,
  at: readonly number[],
  loose: readonly number[],
  xs: readonly number[],
  reachOut: number,
): Loop {
  const [px, py, pz] = [at[3 * from]!, at[3 * from + 1]!, at[3 * from + 2]!]
  let [ux, uy, uz] = [at[3 * to]! - px, at[3 * to + 1]! - py, at[3 * to + 2]! - pz]
  const l = Math.hypot(ux, uy, uz)
  ;[ux, uy, uz] = [ux / l, uy / l, uz / l]
  const low = Math.min(px, at[3 * to]!) - reachOut
  const high = Math.max(px, at[3 * to]!) + reachOut
  const found: { index: number; along: number }[] = []
  for (let i = firstAtLeast(xs, low); i < xs.length && xs[i]! <= high; i++) {
    const index = loose[i]!
    if (index === from || index === to) continue
    const [vx, vy, vz] = [at[3 * index]! - px, at[3 * index + 1]! - py, at[3 * index + 2]! - pz]
    const along = vx * ux + vy * uy + vz * uz
    if (along <= 0 || along >= l) continue
    const off = (vx - along * ux) ** 2 + (vy - along * uy) ** 2 + (vz - along * uz) ** 2
    if (off < reachOut * reachOut) found.push({ index, along })
  }
  return found.sort((a, b) => a.along - b.along).map((f) => f.index)
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

function triangulated(loops: readonly Loop[], coordinates: readonly number[], weld: number): Mesh {
  const points = [...coordinates]
  const triangles: number[] = []
  for (const loop of loops) {
    const n = loop.length
    if (n === 3) {
      triangles.push(loop[0]!, loop[1]!, loop[2]!)
      continue
    }
    const apex = fanCorner(loop, points, weld)
    if (apex >= 0) {
      for (let i = 1; i + 1 < n; i++) {
        triangles.push(loop[apex]!, loop[(apex + i) % n]!, loop[(apex + i + 1) % n]!)
      }
      continue
    }
    // Corners in a straight run: no corner sees them all without a flat triangle, the middle does.
    const middle = points.length / 3
    for (let k = 0; k < 3; k++) points.push(loop.reduce((sum, i) => sum + points[3 * i + k]!, 0) / n)
    loop.forEach((a, i) => {
      triangles.push(middle, a, loop[i + 1 < n ? i + 1 : 0]!)
    })
  }
  return { points: Float64Array.from(points), triangles: Uint32Array.from(triangles) }
}

/** A corner from which every triangle of the fan has some height, or −1. */
function fanCorner(loop: Loop, at: readonly number[], weld: number): number {
  const n = loop.length
  for (let apex = 0; apex < Math.min(n, 6); apex++) {
    let good = true
    for (let i = 1; i + 1 < n && good; i++) {
      good = height(loop[apex]!, loop[(apex + i) % n]!, loop[(apex + i + 1) % n]!, at) > 4 * weld
    }
    if (good) return apex
  }
  return -1
}

/** Least height of a triangle, mm. */
function height(a: number, b: number, c: number, at: readonly number[]): number {
  const [ax, ay, az] = [at[3 * a]!, at[3 * a + 1]!, at[3 * a + 2]!]
  const [ux, uy, uz] = [at[3 * b]! - ax, at[3 * b + 1]! - ay, at[3 * b + 2]! - az]
  const [vx, vy, vz] = [at[3 * c]! - ax, at[3 * c + 1]! - ay, at[3 * c + 2]! - az]
  const area = Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx)
  const longest = Math.max(Math.hypot(ux, uy, uz), Math.hypot(vx, vy, vz), Math.hypot(vx - ux, vy - uy, vz - uz))
  return longest > 0 ? area / longest : 0
}
