import type { Cell } from './cell.ts'
import { depthOf, type Plane } from './surface.ts'
import { coincident } from './tolerance.ts'
import { add, cross, dot, scale, type Vec3 } from './vector.ts'

/** Corners of a bounded cell with flat sides only (corners shared by more than three sides appear more than once). */
export function cellVertices(cell: Cell): Vec3[] {
  const planes = cell.surfaces.map((s): Plane => {
    if (s.kind !== 'plane') throw new RangeError(`cellVertices: ${s.name} is not flat`)
    return s
  })
  const corners: Vec3[] = []
  planes.forEach((a, i) => {
    planes.slice(i + 1).forEach((b, j) => {
      const ab = cross(a.normal, b.normal)
      for (const c of planes.slice(i + j + 2)) {
        const volume = dot(ab, c.normal)
        if (Math.abs(volume) < 1e-12) continue
        const p = scale(
          add(
            add(scale(cross(b.normal, c.normal), a.offset), scale(cross(c.normal, a.normal), b.offset)),
            scale(ab, c.offset),
          ),
          1 / volume,
        )
        // Most crossings lie outside the first few sides already.
        if (planes.every((side) => depthOf(side, p) > -coincident)) corners.push(p)
      }
    })
  })
  return corners
}
