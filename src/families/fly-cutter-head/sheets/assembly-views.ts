import type { DimensionRequest } from '../../../drawing/dimensions/request.ts'
import type { Point } from '../../../drawing/entity.ts'
import type { DrawingStyle } from '../../../drawing/style.ts'
import type { ViewFrame } from '../../../edges/entity.ts'
import type { Piece } from '../../../edges/visibility.ts'
import { pointFrom } from '../../../geometry/frame.ts'
import type { Vec3 } from '../../../geometry/vector.ts'
import { assemblyDimensions } from '../assembly-dimensions.ts'
import type { HeadDesign } from '../design.ts'
import { faceFrame } from '../frames.ts'
import { type ListedPart, partsList } from '../parts-list.ts'
import { Sizes } from './sizes.ts'
import { type HeadViews, headViews, onView, pieceOfPart } from './views.ts'

/** Everything that the views of the tool put together are drawn from. */
export interface Assembly {
  readonly design: HeadDesign
  readonly style: DrawingStyle
  readonly sizes: Sizes
  readonly views: HeadViews
  readonly items: readonly ListedPart[]
  /** All parts in place. */
  readonly pieces: readonly Piece[]
  /** A point of the face frame in a view. */
  readonly inFace: (view: ViewFrame, p: Vec3) => Point
}

export function assemblyIn(design: HeadDesign, style: DrawingStyle): Assembly {
  const face = faceFrame(design.layout.faceAngle, design.layout.depthOnAxis)
  return {
    design,
    style,
    sizes: new Sizes(design, assemblyDimensions(design)),
    views: headViews(design),
    items: partsList(design),
    pieces: design.scene.parts.map(({ part }) => pieceOfPart(design, part.id)),
    inFace: (view, p) => onView(view, pointFrom(face, p)),
  }
}

/** Letters of the section and of its detail: none that the sheets of the head or of the bit use. */
export const [sectionLetter, pinLetter] = ['N', 'T'] as const

/** The item's number in a circle, a dot on the part; none where the list has no such part. */
export function itemMark(
  { items }: Assembly,
  id: ListedPart['id'],
  view: string,
  to: Point,
  toward: number,
): DimensionRequest[] {
  const listed = items.find((row) => row.id === id)
  if (!listed) return []
  const text = [String(listed.item)]
  return [{ kind: 'note', id: `item-${listed.item}@${view}`, text, value: 0, to, toward, frame: 'circle', tip: 'dot' }]
}
