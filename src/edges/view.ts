import type { Solid } from '../geometry/solid.ts'
import { lineWorkOf } from './edges-of.ts'
import type { Entity, ViewFrame } from './entity.ts'
import { merged } from './merge.ts'
import { projected } from './project.ts'
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
  for (const s of seenStretches(pieces, view)) {
    const layer = layerOf(s)
    if (layer !== undefined) layers[layer]!.push(...projected(view, s.curve, s.from, s.to, s.faces))
  }
  const [visible, smooth, hidden] = merged(layers) as [Entity[], Entity[], Entity[]]
  return { visible, smooth, hidden }
}

function layerOf({ kind, visible }: SeenStretch): number | undefined {
  if (visible) return kind === 'smooth' ? 1 : 0
  return kind === 'smooth' ? undefined : 2
}
