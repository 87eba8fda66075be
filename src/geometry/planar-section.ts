import type { Cell } from './cell.ts'
import { type Frame, pointIn } from './frame.ts'
import {
  clipped,
  depthIn,
  type HalfPlane,
  overlap,
  type Point,
  type Polygon,
  rectangle,
  type Segment,
} from './polygon.ts'
import type { Solid } from './solid.ts'
import type { Surface } from './surface.ts'
import { add, cross, dot, length, scale, subtract, unit, type Vec3 } from './vector.ts'

/** What a plane shows of a solid it cuts, in the plane's own x and y, mm. */
export interface PlanarSection {
  /** Convex pieces: what there was, and what was taken out of it. */
  readonly stock: readonly Polygon[]
  readonly cuts: readonly Polygon[]
  /** Border of the metal that is left, in no order; pieces below 1e-6 mm are left out. */
  readonly edges: readonly Segment[]
}

/**
 * Section of a solid with the plane through the frame's origin along its x and y, for pictures: straight edges are exact,
 * a round one becomes a polygon round it that stands out by less than 0.1 % of its radius.
 */
export function planarSection(solid: Solid, frame: Frame): PlanarSection {
  const flat = (cells: readonly Cell[], around: Polygon) =>
    cells.map((cell) => cellSection(cell, frame, around)).filter((polygon) => polygon.length > 2)
  const stock = flat(solid.stock, rectangle([-far, -far], [far, far]))
  const [xs, ys] = [0, 1].map((k) => stock.flat().map((p) => p[k]!))
  if (!xs?.length || !ys?.length) return { stock: [], cuts: [], edges: [] }
  // A little more than the metal, so that no edge of this frame is one of a cut.
  const reach = rectangle([Math.min(...xs) - 1, Math.min(...ys) - 1], [Math.max(...xs) + 1, Math.max(...ys) + 1])
  const cuts = flat(solid.cuts, reach)
  const takenOut = stock.flatMap((s) => cuts.map((c) => overlap(c, s))).filter((polygon) => polygon.length > 2)
  return { stock, cuts: takenOut, edges: bordersOf(stock, cuts) }
}

const far = 1e4

/** What the plane shows of a convex cell, within `around`. */
function cellSection(cell: Cell, frame: Frame, around: Polygon): Polygon {
  let polygon = around
  for (const surface of cell.surfaces) {
    for (const half of halfPlanesOf(surface, frame)) {
      if (half === 'nothing') return []
      polygon = clipped(polygon, half)
      if (polygon.length === 0) return polygon
    }
  }
  return polygon
}

function halfPlanesOf(surface: Surface, frame: Frame): (HalfPlane | 'nothing')[] {
  if (surface.kind === 'plane') return halfPlane(surface.normal, surface.offset, frame)
  const place = surface.kind === 'cylinder' ? surface.point : surface.apex
  // Tangent planes all round; in the plane of the section itself a round face shows its generators, exactly.
  const directions = directionsRound(surface.axis, frame.z)
  if (surface.kind === 'cylinder') {
    const beside = dot(subtract(frame.origin, place), frame.z)
    if (Math.abs(dot(surface.axis, frame.z)) < 1e-12) {
      const half2 = surface.radius ** 2 - beside ** 2
      if (half2 <= 0) return ['nothing']
      const across = directions[0]!
      return [across, scale(across, -1)].flatMap((d) => halfPlane(d, dot(d, place) + Math.sqrt(half2), frame))
    }
    return directions.flatMap((d) => halfPlane(d, dot(d, place) + surface.radius, frame))
  }
  return directions.flatMap((d) => {
    const normal = add(d, scale(surface.axis, -surface.slope))
    return halfPlane(normal, dot(normal, place), frame)
  })
}

const around = 90

/** Unit vectors square to the axis, the first one and its opposite in the plane with normal `z` where that can be. */
function directionsRound(axis: Vec3, z: Vec3): Vec3[] {
  const side = cross(axis, z)
  const x = length(side) > 1e-9 ? unit(side) : unit(cross(axis, Math.abs(axis[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0]))
  const y = cross(axis, x)
  return Array.from({ length: around }, (_, i) => {
    const angle = (2 * Math.PI * i) / around
    return add(scale(x, Math.cos(angle)), scale(y, Math.sin(angle)))
  })
}

/** What normal·p ≤ offset leaves of the plane. */
function halfPlane(normal: Vec3, offset: number, frame: Frame): (HalfPlane | 'nothing')[] {
  const here: Point = [dot(normal, frame.x), dot(normal, frame.y)]
  const room = offset - dot(normal, frame.origin)
  if (Math.hypot(...here) > 1e-12) return [{ normal: here, offset: room }]
  return room > 0 ? [] : ['nothing']
}

/** Sides of all polygons, split where they cross, as far as there is metal on one side only. */
function bordersOf(stock: readonly Polygon[], cuts: readonly Polygon[]): Segment[] {
  const isMetal = (p: Point) => stock.some((s) => depthIn(s, p) > 0) && !cuts.some((c) => depthIn(c, p) > 0)
  const all = [...stock, ...cuts]
  const seen = new Set<string>()
  return all.flatMap((polygon) =>
    polygon.flatMap((from, i): Segment[] => {
      const to = polygon[(i + 1) % polygon.length]!
      const run: Point = [to[0] - from[0], to[1] - from[1]]
      const size = Math.hypot(...run)
      if (size < 1e-6) return []
      const at = (t: number): Point => [from[0] + t * run[0], from[1] + t * run[1]]
      const aside: Point = [(-run[1] / size) * 1e-4, (run[0] / size) * 1e-4]
      const pieces: Segment[] = []
      const stops = [0, 1, ...all.filter((p) => p !== polygon).flatMap((p) => crossings(p, from, run))].sort(
        (a, b) => a - b,
      )
      stops.forEach((start, k) => {
        const end = stops[k + 1]
        if (end === undefined || (end - start) * size < 1e-6) return
        const [x, y] = at((start + end) / 2)
        if (isMetal([x + aside[0], y + aside[1]]) === isMetal([x - aside[0], y - aside[1]])) return
        const piece: Segment = [at(start), at(end)]
        // A side that two polygons share is drawn once.
        const key = piece
          .map((p) => p.map((v) => Math.round(v * 1e5)).join())
          .sort()
          .join(' ')
        if (!seen.has(key)) pieces.push(piece)
        seen.add(key)
      })
      return pieces
    }),
  )
}

/** Where, from 0 to 1 along `run`, a line comes into a convex polygon and goes out of it. */
function crossings(polygon: Polygon, from: Point, run: Point): number[] {
  let [low, high] = [0, 1]
  for (let i = 0; i < polygon.length; i++) {
    const p = polygon[i]!
    const q = polygon[(i + 1) % polygon.length]!
    const normal: Point = [q[1] - p[1], p[0] - q[0]]
    const slope = normal[0] * run[0] + normal[1] * run[1]
    const depth = normal[0] * (p[0] - from[0]) + normal[1] * (p[1] - from[1])
    if (Math.abs(slope) < 1e-12) {
      if (depth < -1e-9) return []
    } else if (slope > 0) high = Math.min(high, depth / slope)
    else low = Math.max(low, depth / slope)
  }
  return low < high ? [low, high] : []
}

/** A point of space as the plane shows it to someone who looks against the frame's z. */
export function inPlane(frame: Frame, p: Vec3): Point {
  const [x, y] = pointIn(frame, p)
  return [x, y]
}
