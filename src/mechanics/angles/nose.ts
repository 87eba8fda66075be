import { requireBelowRightAngle } from './angle-problem.ts'
import type { AnglesInUse } from './angles-in-use.ts'

/** The round between end edge and work-side edge, as seen in the reference plane. mm, from the sharp corner. */
export interface Nose {
  /** How much of each edge the round takes. */
  readonly edgeTaken: number
  /** Centre of the round: inwards and up from the sharp corner. */
  readonly centre: { readonly inwards: number; readonly up: number }
  /** How far the lowest point of the round stays above the sharp corner; undefined where the edge inside is lower still. */
  readonly lift: number | undefined
  /** How far the outermost point of the round stays inside the sharp corner's circle; undefined where the end edge above runs further out. */
  readonly setBack: number | undefined
}

/**
 * The nose of radius `radius` (mm, ≥ 0) that touches both edges. The sharp corner is where drawings and swing are
 * dimensioned to; after rounding the tool cuts `lift` higher, at the tip's radius less `centre.inwards`. Throws
 * RangeError for a negative radius or edges that leave no corner.
 */
export function noseOf(
  { cuttingEdgeAngle, minorCuttingEdgeAngle }: Pick<AnglesInUse, 'cuttingEdgeAngle' | 'minorCuttingEdgeAngle'>,
  radius: number,
): Nose {
  if (!(radius >= 0 && Number.isFinite(radius))) throw new RangeError(`nose radius: ${radius} mm must be 0 or more`)
  requireBelowRightAngle({ 'minor cutting edge angle': minorCuttingEdgeAngle })
  const corner = Math.PI - cuttingEdgeAngle - minorCuttingEdgeAngle
  if (!(corner > 0 && corner < Math.PI)) throw new RangeError(`corner of ${corner} rad between the edges`)
  const edgeTaken = radius / Math.tan(corner / 2)
  const [sin, cos] = [Math.sin(minorCuttingEdgeAngle), Math.cos(minorCuttingEdgeAngle)]
  const centre = { inwards: edgeTaken * cos - radius * sin, up: edgeTaken * sin + radius * cos }
  return {
    edgeTaken,
    centre,
    lift: minorCuttingEdgeAngle >= 0 ? Math.max(0, centre.up - radius) : undefined,
    setBack: cuttingEdgeAngle >= Math.PI / 2 ? Math.max(0, centre.inwards - radius) : undefined,
  }
}
