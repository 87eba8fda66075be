import { type Loop, type Step, sectionOf } from '../edges/section.ts'
import type { Cell } from '../geometry/cell.ts'
import type { Frame } from '../geometry/frame.ts'
import type { Surface } from '../geometry/surface.ts'
import { coincident } from '../geometry/tolerance.ts'
import { dot } from '../geometry/vector.ts'
import { ellipseArcs } from './ellipse-arcs.ts'
import type { Outline, ProfileEdge } from './profile.ts'

/**
 * Outlines of what the cells hold together in the plane z = 0 of the frame, from their own surfaces, mm in its x and y:
 * exact, but for ellipses, which become arcs within 0.005 mm. The cells must be bounded there.
 */
export function outlinesOf(cells: readonly Cell[], plane: Frame): Outline[] {
  // A face of theirs in that very plane would be one with the cut.
  const stock = cells.map((c) => ({ surfaces: c.surfaces.filter((s) => !liesIn(s, plane)) }))
  const { faces } = sectionOf([{ id: 'outline', solid: { stock, cuts: [] }, cut: true }], plane)
  return faces.flatMap((f) => f.loops.map(outlineOf))
}

const liesIn = (s: Surface, { origin, z }: Frame): boolean =>
  s.kind === 'plane' && dot(s.normal, z) > 1 - 1e-12 && Math.abs(s.offset - dot(s.normal, origin)) < coincident

const outlineOf = ({ steps }: Loop): Outline => steps.flatMap(edgesOf)

function edgesOf({ entity, reversed }: Step): ProfileEdge[] {
  if (entity.kind !== 'ellipse') return [entity]
  const arcs = ellipseArcs(entity)
  return reversed ? arcs.reverse() : arcs
}
