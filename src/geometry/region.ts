import type { Cell } from './cell.ts'
import { type Program, solveConvex } from './convex-program.ts'
import { innerPoint } from './inner-point.ts'
import { depthOf, type Surface } from './surface.ts'
import { touching } from './tolerance.ts'
import { add, cross, dot, length, scale, squareTo, subtract, unit, type Vec3 } from './vector.ts'

/** The common part of some cells, known not to be empty: convex, with one point well inside. */
export interface Region {
  readonly surfaces: readonly Surface[]
  readonly within: Vec3
}

/**
 * The common part of `cells`, or undefined where they share no more than a touch (nothing deeper than 1e-7 mm).
 * `near`: a point to start looking from, anywhere, mm.
 */
export function regionOf(cells: readonly Cell[], near: Vec3): Region | undefined {
  const surfaces = cells.flatMap((c) => c.surfaces)
  const within = innerPoint(surfaces, near)
  if (within) return { surfaces, within }
  // A far wall, so that an unbounded region still has a deepest point.
  const held = [...surfaces, farWall(near, [0, 0, 1]), farWall(near, [1, 0, 0])]
  const { x } = solveConvex({ holds: [held], goal: 'depth' }, near, (v, gap) => {
    const above = v[3]!
    return above < 0 ? gap < -above : above > gap || gap < 1e-9
  })
  return x[3]! < -1e-7 ? { surfaces, within: [x[0]!, x[1]!, x[2]!] } : undefined
}

const farWall = (point: Vec3, axis: Vec3): Surface => ({
  kind: 'cylinder',
  name: 'far wall',
  point,
  axis,
  radius: 1e4,
})

/**
 * Largest value of `direction`·p over the region (direction a unit vector, so mm) and the point where it is reached.
 * With `atLeast` the search gives up, and returns undefined, as soon as it is sure that the value is smaller.
 */
export function reach(region: Region, direction: Vec3): { distance: number; at: Vec3 }
export function reach(region: Region, direction: Vec3, atLeast: number): { distance: number; at: Vec3 } | undefined
export function reach(
  region: Region,
  direction: Vec3,
  atLeast = -Infinity,
): { distance: number; at: Vec3 } | undefined {
  let short = false
  const { x } = solveConvex({ holds: [region.surfaces], goal: 'reach', direction }, region.within, (v, gap) => {
    short = direction[0] * v[0]! + direction[1] * v[1]! + direction[2] * v[2]! + gap < atLeast
    return short || gap < 1e-10
  })
  if (short) return undefined
  const at: Vec3 = [x[0]!, x[1]!, x[2]!]
  return { distance: direction[0] * at[0] + direction[1] * at[1] + direction[2] * at[2], at }
}

export interface Separation {
  /** mm; 0 to 1e-5 where the regions touch or overlap. */
  readonly distance: number
  /** Nearest point of the first region and of the second. */
  readonly from: Vec3
  readonly to: Vec3
}

/**
 * Least distance between two regions to 1e-9 mm. With `atMost` the search gives up, and returns undefined, as soon as
 * it is sure that the distance is larger.
 */
export function separation(a: Region, b: Region, atMost = Infinity): Separation | undefined {
  let beyond = false
  const program: Program = { holds: [a.surfaces, b.surfaces], goal: 'least-distance' }
  const { x } = solveConvex(program, [...a.within, ...b.within], (v, gap) => {
    const d2 = (v[0]! - v[3]!) ** 2 + (v[1]! - v[4]!) ** 2 + (v[2]! - v[5]!) ** 2
    beyond = d2 - 2 * gap > atMost * atMost
    // The gap bounds ½·distance²: 1e-9 mm of distance. Two points this near settle that the regions touch.
    return beyond || gap < 1e-9 * Math.sqrt(d2) || d2 < touching * touching
  })
  if (beyond) return undefined
  return {
    distance: Math.hypot(x[0]! - x[3]!, x[1]! - x[4]!, x[2]! - x[5]!),
    from: [x[0]!, x[1]!, x[2]!],
    to: [x[3]!, x[4]!, x[5]!],
  }
}

/**
 * Least depth of the region below `surface` (mm, negative where it comes out) and the point where it is reached.
 * Below a round surface this is the maximum of a convex function: it lies at the rim and there may be several, so the
 * search climbs from `starts` directions round the axis. With `atMost`, undefined where it is sure to be deeper.
 */
export function leastDepth(region: Region, surface: Surface, starts?: number): { depth: number; at: Vec3 }
export function leastDepth(
  region: Region,
  surface: Surface,
  starts: number | undefined,
  atMost: number,
): { depth: number; at: Vec3 } | undefined
export function leastDepth(
  region: Region,
  surface: Surface,
  starts = 8,
  atMost = Infinity,
): { depth: number; at: Vec3 } | undefined {
  if (surface.kind === 'plane') {
    const found = reach(region, surface.normal, surface.offset - atMost)
    return found && { depth: surface.offset - found.distance, at: found.at }
  }
  const place = surface.kind === 'cylinder' ? surface.point : surface.apex
  const fall = surface.kind === 'cylinder' ? 0 : surface.slope
  const x = squareTo(surface.axis)
  const y = cross(surface.axis, x)
  let best = { depth: Infinity, at: region.within }
  for (let i = 0; i < starts; i++) {
    const angle = (2 * Math.PI * i) / starts
    let out = add(scale(x, Math.cos(angle)), scale(y, Math.sin(angle)))
    let last = Infinity
    for (let round = 0; round < 60; round++) {
      const { at } = reach(region, unit(subtract(out, scale(surface.axis, fall))))
      const depth = depthOf(surface, at)
      if (depth < best.depth) best = { depth, at }
      if (depth > last - 1e-10) break
      last = depth
      const v = subtract(at, place)
      const square = subtract(v, scale(surface.axis, dot(v, surface.axis)))
      if (length(square) < 1e-9) break
      out = unit(square)
    }
  }
  return best
}

/** Largest distance from the line through `point` along the unit vector `axis` over the region, mm, and where. */
export function largestRadius(region: Region, point: Vec3, axis: Vec3, starts = 8): { radius: number; at: Vec3 } {
  const thin = { kind: 'cylinder', name: 'axis', point, axis, radius: 1 } as const
  const { depth, at } = leastDepth(region, thin, starts)
  return { radius: 1 - depth, at }
}
