import { pieceOf } from '../../../edges/view.ts'
import type { Piece } from '../../../edges/visibility.ts'
import type { Solid } from '../../../geometry/solid.ts'
import { plane, type Surface } from '../../../geometry/surface.ts'
import { solidOf } from '../../../part/part.ts'
import type { HeadDesign } from '../design.ts'
import { pieceOfPart } from './views.ts'

/**
 * The head as its sheet draws it. A tapped bore is modelled at the thread's major diameter: drawn, its wall is the hole
 * that is drilled for the tap, and its chamfer runs down to that.
 */
export function bodyAsDrawn(design: HeadDesign): Solid {
  const solid = solidOf(design.part('body'))
  const thread = design.layout.spigotThread
  if (!thread) return solid
  const { chamfer } = design.parameters.bore
  const deeper = (thread.majorDiameter - thread.tapDrill) / 2
  const drawn = (s: Surface): Surface => {
    if (s.kind === 'cylinder' && s.name === 'bore wall') return { ...s, radius: thread.tapDrill / 2 }
    if (s.name === 'bore chamfer foot') return plane(s.name, [0, 0, -chamfer - deeper], [0, 0, -1])
    return s
  }
  return { ...solid, cuts: solid.cuts.map((c) => ({ ...c, surfaces: c.surfaces.map(drawn) })) }
}

/** Its edges, worked out once for all views. */
export const drawnPiece = (design: HeadDesign): Piece =>
  design.layout.spigotThread
    ? design.once('edges of the head as drawn', () => pieceOf('body', bodyAsDrawn(design)))
    : pieceOfPart(design, 'body')
