import { cellIntervals } from '../geometry/cell.ts'
import { type Interval, type Ray, subtractIntervals } from '../geometry/interval.ts'
import type { Solid } from '../geometry/solid.ts'
import { coincident } from '../geometry/tolerance.ts'
import type { Vec3 } from '../geometry/vector.ts'
import { through } from './tolerance.ts'

/**
 * Whether a solid has metal between a point and the eye, which is far off along the unit vector `eye`; what is within
 * 1e-6 mm of the point does not count. Asked some thousand times a view: nothing is sorted or united on the way.
 */
export function isInTheWay({ stock, cuts }: Solid, point: Vec3, eye: Vec3): boolean {
  const ray: Ray = { origin: point, direction: eye }
  const metal = ahead(stock, ray)
  return metal.length > 0 && subtractIntervals(metal, ahead(cuts, ray), coincident).some((i) => i.end > through)
}

function ahead(cells: Solid['stock'], ray: Ray): Interval[] {
  const out: Interval[] = []
  for (const cell of cells) for (const i of cellIntervals(cell, ray)) if (i.end > through) out.push(i)
  return out
}
