import type { Solid } from '../geometry/solid.ts'
import { lineWorkOf } from './edges-of.ts'
import { type Entity, pointOf, rangeOf, type ViewFrame } from './entity.ts'
import { merged } from './merge.ts'
import { offEntity, projected } from './project.ts'
import { fitted } from './tolerance.ts'
import { type Piece, type SeenStretch, seenStretches } from './visibility.ts'

/** The line work of a view, in the drawing plane, mm at 1:1. Nothing is drawn twice. */
export interface ViewLines {
  /** Corners and outlines that are seen. */
  readonly visible: readonly Entity[]
  /** Seen lines along which faces are tangent. */
  readonly smooth: readonly Entity[]
  /** Corners and outlines that are not seen. */
  readonly hidden: readonly Entity[]
}

/** A solid made ready for any number of views; `solid` in the scene's frame. */
export const pieceOf = (id: string, solid: Solid): Piece => ({ id, lines: lineWorkOf(solid) })

/** What is seen of the pieces, which may hide each other, along the view's z. */
export function viewOf(pieces: readonly Piece[], view: ViewFrame): ViewLines {
  const layers: Entity[][] = [[], [], []]
  const fits: Entity[][] = [[], [], []]
  for (const s of seenStretches(pieces, view)) {
    const layer = layerOf(s)
    if (layer === undefined) continue
    const to = s.curve.kind === 'meeting' ? fits : layers
    to[layer]!.push(...projected(view, s.curve, s.from, s.to, s.faces))
  }
  const [seen, tangent, unseen] = fits as [Entity[], Entity[], Entity[]]
  const shown = [...seen, ...tangent]
  const unlike = unseen.filter((e) => !coveredBy(e, shown))
  const [visible, smooth, hidden] = merged([
    [...layers[0]!, ...seen],
    [...layers[1]!, ...tangent],
    [...layers[2]!, ...unlike],
  ]) as [Entity[], Entity[], Entity[]]
  return { visible, smooth, hidden }
}

/** Whether fitted arcs of one and the same curve are there already: two fits of it need not have the same centres. */
function coveredBy(e: Entity, others: readonly Entity[]): boolean {
  const [from, to] = rangeOf(e)
  return Array.from({ length: 9 }, (_, i) => pointOf(e, from + ((to - from) * (i + 0.5)) / 9)).every((p) =>
    others.some((o) => offEntity(o, p) < 2.5 * fitted),
  )
}

function layerOf({ kind, visible }: SeenStretch): number | undefined {
  if (visible) return kind === 'smooth' ? 1 : 0
  return kind === 'smooth' ? undefined : 2
}
