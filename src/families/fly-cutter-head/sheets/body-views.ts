import type { DimensionRequest } from '../../../drawing/dimensions/request.ts'
import type { Point } from '../../../drawing/entity.ts'
import type { DrawingStyle } from '../../../drawing/style.ts'
import type { ViewFrame } from '../../../edges/entity.ts'
import { pointFrom } from '../../../geometry/frame.ts'
import type { Vec3 } from '../../../geometry/vector.ts'
import type { HeadDesign } from '../design.ts'
import { faceFrame } from '../frames.ts'
import { acrossSlot, halfLengthAt } from '../section.ts'
import { Sizes } from './sizes.ts'
import { type HeadViews, headViews, onView } from './views.ts'

/** Everything that the views of the head are drawn from. */
export interface Body {
  readonly design: HeadDesign
  readonly style: DrawingStyle
  readonly sizes: Sizes
  readonly views: HeadViews
  /** A point of the face frame in a view. */
  readonly inFace: (view: ViewFrame, p: Vec3) => Point
}

export function bodyIn(design: HeadDesign, style: DrawingStyle): Body {
  const face = faceFrame(design.layout.faceAngle, design.layout.depthOnAxis)
  return {
    design,
    style,
    sizes: new Sizes(design, 'body'),
    views: headViews(design),
    inFace: (view, p) => onView(view, pointFrom(face, p)),
  }
}

/** Letters of the views: A, B, C and O are datums, and I and Q are taken for figures. */
export const letters = {
  axisSection: 'D',
  screwSection: 'E',
  face: 'F',
  slotSection: 'G',
  chamfer: 'H',
  slotEnd: 'J',
  screwHole: 'K',
} as const

export const [right, up, left, down] = [0, Math.PI / 2, Math.PI, -Math.PI / 2]

/** The triangle of a datum on an edge from `from` to `to`, or where `to` is left out on the centre line that ends there. */
export function datumOn(
  view: string,
  letter: 'A' | 'B' | 'C',
  from: Point,
  where: { readonly to: Point; readonly side: 1 | -1 } | { readonly along: number; readonly side?: 1 | -1 },
): DimensionRequest {
  const base =
    'to' in where
      ? {
          along: Math.atan2(where.to[1] - from[1], where.to[0] - from[0]),
          length: Math.hypot(where.to[0] - from[0], where.to[1] - from[1]),
          side: where.side,
        }
      : where
  return {
    kind: 'note',
    id: `datum-${letter}@${view}`,
    text: [letter],
    value: 0,
    to: from,
    frame: 'box',
    tip: 'triangle',
    base,
  }
}

/** A datum seen otherwise: a point, a face seen square, the outline of a bore. */
export const datumAt = (
  view: string,
  letter: 'A' | 'B' | 'O',
  to: Point,
  toward: number,
  tip: 'triangle' | 'dot' | 'origin',
): DimensionRequest => ({
  kind: 'note',
  id: `datum-${letter}@${view}`,
  text: [letter],
  value: 0,
  to,
  toward,
  frame: 'box',
  tip,
})

/** The datum of the dimension that it hangs on. */
export const datumOf = (view: string, letter: 'B', dimension: string, to: Point): DimensionRequest => ({
  ...datumAt(view, letter, to, down, 'triangle'),
  kind: 'note',
  to,
  frame: 'box',
  on: dimension,
})

/** Half of the bar along Y, mm. */
export const halfWide = ({ parameters: { stock } }: Pick<HeadDesign, 'parameters'>): number => acrossSlot(stock) / 2

/** Whether the bar has flats square to Y, which the jaws hold; flat-to-flat leaves corners there. */
export const flatsFaceY = (stock: HeadDesign['parameters']['stock']): boolean =>
  stock.shape === 'square' || (stock.shape === 'hexagon' && stock['slot-runs'] === 'point-to-point')

/** x in F, both ways from the middle, at which the angled face ends at a y, mm. */
export const faceEndAt = ({ parameters, layout }: HeadDesign, y: number): number =>
  halfLengthAt(parameters.stock, Math.min(Math.abs(y), halfWide({ parameters }) - 1e-9)) / Math.cos(layout.faceAngle)

/** Whether the slot lies over the spindle axis, so that a section through the axis shows its floor. */
export const slotOnAxis = ({ layout: { slot } }: HeadDesign): boolean => slot.leading * slot.trailing <= 0
