import type { Point } from '../../../drawing/entity.ts'
import { flattened, type ViewFrame } from '../../../edges/entity.ts'
import { pieceOf } from '../../../edges/view.ts'
import type { Piece } from '../../../edges/visibility.ts'
import { pointFrom } from '../../../geometry/frame.ts'
import { cross, negate, scale, type Vec3 } from '../../../geometry/vector.ts'
import { solidOf } from '../../../part/part.ts'
import type { HeadDesign } from '../design.ts'
import { faceFrame } from '../frames.ts'

/**
 * Ways of looking at the head. All of them stand so that the side view looks at the step: its x is the bit side where the
 * step lies towards −Y, and the other way round where it lies towards +Y.
 */
export interface HeadViews {
  /** +1 where the bit side is on the right in the side view, −1 where it is on the left. */
  readonly bitSide: 1 | -1
  readonly side: ViewFrame
  readonly below: ViewFrame
  readonly above: ViewFrame
  /** Square to the angled face, from outside; its origin is the tilted one. */
  readonly face: ViewFrame
  /** Along the slope from the bit side at `x` of the face frame, square to slot and step; up is into the metal. */
  across(x: number): ViewFrame
  readonly pictorial: ViewFrame
}

export function headViews({ layout: l }: HeadDesign): HeadViews {
  const bitSide = l.step.towards === -1 ? 1 : -1
  const x: Vec3 = [bitSide, 0, 0]
  const facing = (z: Vec3, right: Vec3, origin: Vec3 = [0, 0, 0]): ViewFrame => ({
    origin,
    x: right,
    y: cross(z, right),
    z,
  })
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const eye = unit([0.55 * bitSide, -0.7 * bitSide, -0.62])
  return {
    bitSide,
    side: facing([0, l.step.towards, 0], x),
    below: facing([0, 0, -1], x),
    above: facing([0, 0, 1], x),
    face: facing(negate(face.z), scale(face.x, bitSide), face.origin),
    across: (at) => ({ origin: pointFrom(face, [at, 0, 0]), x: face.y, y: face.z, z: face.x }),
    pictorial: facing(eye, unit(cross([0, 0, 1], eye))),
  }
}

const unit = (v: Vec3): Vec3 => scale(v, 1 / Math.hypot(...v))

/** A part's edges, worked out once for all views. */
export const pieceOfPart = (design: HeadDesign, id: string): Piece =>
  design.once(`edges of ${id}`, () => pieceOf(id, solidOf(design.part(id))))

/** A point of the body frame, and one of the face frame, in a view. */
export const onView = (view: ViewFrame, p: Vec3): Point => flattened(view, p)
