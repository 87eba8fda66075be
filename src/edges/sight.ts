import { type Solid, solidIntervals } from '../geometry/solid.ts'
import type { Vec3 } from '../geometry/vector.ts'
import { through } from './tolerance.ts'

/** Whether a solid has metal between a point and the eye, which is far off along the unit vector `eye`. */
export function isInTheWay(solid: Solid, point: Vec3, eye: Vec3): boolean {
  const metal = solidIntervals(solid, { origin: point, direction: eye })
  return (metal[metal.length - 1]?.end ?? 0) > through
}
