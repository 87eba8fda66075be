import { outwardAt, type Surface } from './surface.ts'
import { along, type Vec3 } from './vector.ts'
import { worstMissed } from './worst-missed.ts'

/** How deep the point should lie, mm, tried in turn: a point far inside is the better start for any search. */
const aims = [4, 1, 0.25] as const

/**
 * A point at least an eighth of a millimetre inside all surfaces, looked for from `near` by a few steps, each from the
 * worst-missed surface straight inwards. Quick for bodies of the size of a tool's; undefined says nothing.
 */
export function innerPoint(surfaces: readonly Surface[], near: Vec3): Vec3 | undefined {
  for (const aim of aims) {
    let p = near
    for (let step = 0; step < 8; step++) {
      const { surface, depth } = worstMissed(p, surfaces)
      if (depth >= aim / 2) return p
      p = along(p, outwardAt(surface, p), depth - aim)
    }
  }
  return undefined
}
