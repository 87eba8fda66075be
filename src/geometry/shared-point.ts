import type { Region } from './region.ts'
import { depthOf, outwardAt, type Surface } from './surface.ts'
import { coincident } from './tolerance.ts'
import { along, type Vec3 } from './vector.ts'

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
    const miss = worst(p, a, b)
    if (miss.depth > -coincident) return p
    p = along(p, outwardAt(miss.surface, p), miss.depth)
  }
  return worst(p, a, b).depth > -coincident ? p : undefined
}

function worst(p: Vec3, a: Region, b: Region): { surface: Surface; depth: number } {
  let surface = a.surfaces[0]!
  let depth = Infinity
  for (const list of [a.surfaces, b.surfaces]) {
    for (const s of list) {
      const d = depthOf(s, p)
      if (d < depth) {
        depth = d
        surface = s
      }
    }
  }
  return { surface, depth }
}
