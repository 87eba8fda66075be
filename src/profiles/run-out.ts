import { type Cell, cellOf } from '../geometry/cell.ts'
import type { Frame } from '../geometry/frame.ts'
import { reach, regionOf } from '../geometry/region.ts'
import { type Plane, plane } from '../geometry/surface.ts'
import { along, dot, negate, type Vec3 } from '../geometry/vector.ts'

/** The metal that a set-up cuts into, and how far outlines of open cuts run on past it. */
export interface Blank {
  readonly cells: readonly Cell[]
  /** Least run-out, mm. */
  readonly runOut: number
  /** The outline ends on a multiple of this, mm: a number that the trade would choose. */
  readonly step: number
}

/**
 * Sides of the room in which a cut `depth` mm deep (absent: right through) meets the blank, with the run-out all round;
 * none where it meets no metal. Bounds a cut that the part model leaves open.
 */
export function runOutSides({ cells, runOut, step }: Blank, frame: Frame, depth?: number): Plane[] {
  const { origin, x, y, z } = frame
  const layer = cellOf(
    plane('set-up', origin, z),
    ...(depth === undefined ? [] : [plane('depth', along(origin, z, -depth), negate(z))]),
  )
  const regions = cells.map((c) => regionOf([c, layer], origin)).filter((r) => r !== undefined)
  if (regions.length === 0) return []
  return [x, negate(x), y, negate(y)].map((way: Vec3) => {
    const farthest = Math.max(...regions.map((r) => reach(r, way).distance)) - dot(way, origin)
    // The search for the farthest point ends a hair short or beyond: never a whole step's difference.
    const out = step * Math.ceil((farthest + runOut) / step - 1e-3)
    return plane('run-out', along(origin, way, out), way)
  })
}

/** How high the blank stands above the plane, mm; 0 where it does not. */
export function blankAbove({ cells }: Pick<Blank, 'cells'>, { origin, z }: Frame): number {
  const regions = cells.map((c) => regionOf([c], origin)).filter((r) => r !== undefined)
  return Math.max(0, ...regions.map((r) => reach(r, z).distance - dot(z, origin)))
}
