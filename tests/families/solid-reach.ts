import { cellDepth } from '../../src/geometry/cell.ts'
import { type Region, reach, regionOf } from '../../src/geometry/region.ts'
import type { Solid } from '../../src/geometry/solid.ts'
import type { Plane } from '../../src/geometry/surface.ts'
import { coincident } from '../../src/geometry/tolerance.ts'
import { negate, type Vec3 } from '../../src/geometry/vector.ts'

/**
 * How far the metal of a solid reaches along a unit direction, mm, and where; undefined for no metal at all. Exact
 * where only flat-sided cuts take the farthest point away: outside a cut means beyond one of its planes, so the
 * question splits into convex ones. A cut with a round side is left standing (the answer is then an upper bound).
 */
export function solidReach(solid: Solid, direction: Vec3): { distance: number; at: Vec3 } | undefined {
  const open: { region: Region; distance: number; at: Vec3 }[] = []
  const push = (surfaces: Region['surfaces'], near: Vec3) => {
    const region = regionOf([{ surfaces }], near)
    if (region) open.push({ region, ...reach(region, direction) })
  }
  for (const cell of solid.stock) push(cell.surfaces, [0, 0, 0])
  while (open.length > 0) {
    const best = open.reduce((a, b) => (b.distance > a.distance ? b : a))
    open.splice(open.indexOf(best), 1)
    const cut = solid.cuts.find(
      (c) => c.surfaces.every((s) => s.kind === 'plane') && cellDepth(c, best.at) > coincident,
    )
    if (!cut) return { distance: best.distance, at: best.at }
    for (const side of cut.surfaces as readonly Plane[]) {
      const beyond: Plane = { ...side, normal: negate(side.normal), offset: -side.offset }
      push([...best.region.surfaces, beyond], best.region.within)
    }
  }
  return undefined
}
