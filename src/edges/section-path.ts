import { type Cell, cellOf } from '../geometry/cell.ts'
import { type Plane, plane } from '../geometry/surface.ts'
import { along, dot, negate, type Vec3 } from '../geometry/vector.ts'
import type { Vec2, ViewFrame } from './entity.ts'

/**
 * The way a cutting plane takes through the parts, drawn as one plane (ISO 128, sections in parallel planes; from
 * memory): square to the view everywhere, and stepping from one depth to another along a direction of the sheet.
 */
export interface SectionPath {
  /** Unit vector of the drawing plane along which it steps. */
  readonly direction: Vec2
  /** How much nearer to the eye than the view's origin it runs before the first step, mm; Infinity: cuts nothing there. */
  readonly depth: number
  /** Ascending. `at`: how far along the direction, from the view's origin, mm; `depth`: as above, from there on. */
  readonly steps: readonly { readonly at: number; readonly depth: number }[]
}

/** The plane z = 0 of the view, all the way. */
export const straightPath: SectionPath = { direction: [1, 0], depth: 0, steps: [] }

/** A stretch of the path on which the depth stays the same. */
export interface Flight {
  readonly from: number
  readonly to: number
  readonly depth: number
}

/** Throws RangeError where the steps do not ascend or the direction is no unit vector. */
export function flightsOf({ direction, depth, steps }: SectionPath): Flight[] {
  if (Math.abs(Math.hypot(...direction) - 1) > 1e-9) throw new RangeError(`section path: direction ${direction}`)
  const flights: Flight[] = []
  let [from, here] = [Number.NEGATIVE_INFINITY, depth]
  for (const step of steps) {
    if (!(step.at > from)) throw new RangeError(`section path: a step at ${step.at} after one at ${from}`)
    flights.push({ from, to: step.at, depth: here })
    from = step.at
    here = step.depth
  }
  flights.push({ from, to: Number.POSITIVE_INFINITY, depth: here })
  return flights
}

/** The path's direction in space. */
export const pathDirection = (view: ViewFrame, { direction: [x, y] }: SectionPath): Vec3 => [
  x * view.x[0] + y * view.y[0],
  x * view.x[1] + y * view.y[1],
  x * view.x[2] + y * view.y[2],
]

/** How far along the path's direction a point lies from the view's origin, mm. */
export const placeOnPath = (view: ViewFrame, path: SectionPath, p: Vec3): number => {
  const d = pathDirection(view, path)
  return dot(d, p) - dot(d, view.origin)
}

/** The cutting plane of a flight; its inside is the eye's side. */
export const cuttingPlane = (view: ViewFrame, { depth }: Flight): Plane =>
  plane(cutting, along(view.origin, view.z, depth), negate(view.z))

const cutting = 'cutting plane'
const stepping = 'step of the cutting plane'

export const isStep = ({ name }: { readonly name: string }): boolean => name === stepping

/**
 * What is taken away: all that is nearer to the eye than the path (`front`), or all that is farther, and whatever it
 * does not cut (`back`). A cell for each flight.
 */
export function knivesOf(view: ViewFrame, path: SectionPath, away: 'front' | 'back'): Cell[] {
  const d = pathDirection(view, path)
  return flightsOf(path).flatMap((flight) => {
    const { from, to, depth } = flight
    const ends = [
      ...(from > Number.NEGATIVE_INFINITY ? [plane(stepping, along(view.origin, d, from), negate(d))] : []),
      ...(to < Number.POSITIVE_INFINITY ? [plane(stepping, along(view.origin, d, to), d)] : []),
    ]
    if (depth === Number.POSITIVE_INFINITY) return away === 'front' ? [] : [cellOf(...ends)]
    const blade = cuttingPlane(view, flight)
    return [cellOf(away === 'front' ? blade : plane(cutting, along(view.origin, view.z, depth), view.z), ...ends)]
  })
}
