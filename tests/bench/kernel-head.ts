// The demo head's body by an independent mesh kernel, from its numbers alone: the yardstick of the bench.
import type { Manifold, ManifoldToplevel } from 'manifold-3d'

const flats = (radius: number, tolerance: number) => 4 * Math.ceil(Math.PI / Math.acos(1 - tolerance / radius) / 4)

/** Hexagon 46 across flats, 7° face at 41, slot, step, bore 20 × 24 with chamfer and vent, a row of M6 tap holes. */
export function kernelBody({ Manifold }: ManifoldToplevel, screws: number, tolerance: number): number {
  const made: Manifold[] = []
  const keep = (m: Manifold) => {
    made.push(m)
    return m
  }
  const round = (height: number, r0: number, r1: number, n: number) => keep(Manifold.cylinder(height, r0, r1, n))
  const inFace = (m: Manifold) => keep(keep(m.rotate([0, 7, 0])).translate([0, 0, -41]))
  const block = (size: [number, number, number], at: [number, number, number]) =>
    keep(keep(Manifold.cube(size)).translate(at))
  const bar = keep(round(45, 46 / Math.sqrt(3), 46 / Math.sqrt(3), 6).translate([0, 0, -45]))
  const bore = flats(11, tolerance)
  const cuts = [
    inFace(block([200, 200, 100], [-100, -100, -100])),
    inFace(block([200, 10.04, 109.5], [-100, -2.4, -100])),
    inFace(block([200, 100, 110.5], [-100, -111.4, -100])),
    keep(round(24, 10, 10, bore).translate([0, 0, -24])),
    keep(round(1, 10, 11, bore).translate([0, 0, -1])),
    keep(round(40, 1, 1, flats(1, tolerance)).translate([0, 0, -64])),
  ]
  for (let i = 0; i < screws; i++) {
    const hole = round(9.2, 2.5, 2.5, flats(2.5, tolerance))
    cuts.push(inFace(keep(keep(hole.rotate([90, 0, 0])).translate([12.26 - i * 6.2, -2.3, 6]))))
  }
  const cut = keep(Manifold.union(cuts))
  const body = keep(bar.subtract(cut))
  const count = body.getMesh().triVerts.length / 3
  for (const m of made) m.delete()
  return count
}
