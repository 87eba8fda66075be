import type { Region } from './region.ts'
import { outwardAt } from './surface.ts'
import { coincident } from './tolerance.ts'
import { along, type Vec3 } from './vector.ts'
import { worstMissed } from './worst-missed.ts'

/**
 * A point of both regions (each surface met to 1e-6 mm), looked for by a few steps from the middle of one straight to
 * the worst-missed surface of the other. Quick where bodies meet face to face or run through each other; undefined says
 * nothing.
 */
export function sharedPoint(a: Region, b: Region): Vec3 | undefined {
  return stepsFrom(a.within, a, b) ?? stepsFrom(b.within, a, b)
}

function stepsFrom(start: Vec3, a: Region, b: Region): Vec3 | undefined {
  let p = start
  for (let step = 0; step < 3; step++) {
    const miss = worstMissed(p, a.surfaces, b.surfaces)
    if (miss.depth > -coincident) return p
    p = along(p, outwardAt(miss.surface, p), miss.depth)
  }
  return worstMissed(p, a.surfaces, b.surfaces).depth > -coincident ? p : undefined
}
