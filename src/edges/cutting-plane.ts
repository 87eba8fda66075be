import { type Cell, cellOf } from '../geometry/cell.ts'
import { type Plane, plane } from '../geometry/surface.ts'
import { negate } from '../geometry/vector.ts'
import type { ViewFrame } from './entity.ts'

const cutting = 'cutting plane'

/** The plane in which a section cuts, z = 0 of the view; its inside is the eye's side. */
export const cuttingPlane = ({ origin, z }: ViewFrame): Plane => plane(cutting, origin, negate(z))

/** What is taken away: all that is nearer to the eye than the plane (`front`), or all that is farther (`back`). */
export const knifeOf = (view: ViewFrame, away: 'front' | 'back'): Cell =>
  cellOf(away === 'front' ? cuttingPlane(view) : plane(cutting, view.origin, view.z))
