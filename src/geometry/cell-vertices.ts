import type { Cell } from './cell.ts'
import { depthOf, type Plane } from './surface.ts'
import { coincident } from './tolerance.ts'
import type { Vec3 } from './vector.ts'

/** Corners of a bounded cell with flat sides only (corners shared by more than three sides appear more than once). */
export function cellVertices(cell: Cell): Vec3[] {
  const planes = cell.surfaces.map((s): Plane => {
    if (s.kind !== 'plane') throw new RangeError(`cellVertices: ${s.name} is not flat`)
    return s
  })
  const corners: Vec3[] = []
  // Every three sides cross somewhere, most of them outside: no vectors are made before a corner is one.
  for (let i = 0; i < planes.length; i++) {
    const a = planes[i]!
    const [ax, ay, az] = a.normal
    for (let j = i + 1; j < planes.length; j++) {
      const b = planes[j]!
      const [bx, by, bz] = b.normal
      const abx = ay * bz - az * by
      const aby = az * bx - ax * bz
      const abz = ax * by - ay * bx
      for (let k = j + 1; k < planes.length; k++) {
        const c = planes[k]!
        const [cx, cy, cz] = c.normal
        const volume = abx * cx + aby * cy + abz * cz
        if (Math.abs(volume) < 1e-12) continue
        const p: Vec3 = [
          ((by * cz - bz * cy) * a.offset + (cy * az - cz * ay) * b.offset + abx * c.offset) / volume,
          ((bz * cx - bx * cz) * a.offset + (cz * ax - cx * az) * b.offset + aby * c.offset) / volume,
          ((bx * cy - by * cx) * a.offset + (cx * ay - cy * ax) * b.offset + abz * c.offset) / volume,
        ]
        if (isInsideAll(planes, p)) corners.push(p)
      }
    }
  }
  return corners
}

function isInsideAll(planes: readonly Plane[], p: Vec3): boolean {
  for (const side of planes) if (!(depthOf(side, p) > -coincident)) return false
  return true
}
