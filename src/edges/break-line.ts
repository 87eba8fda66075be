import { solidIntervals } from '../geometry/solid.ts'
import { along } from '../geometry/vector.ts'
import { borderOf, type Window } from './clip.ts'
import { middleOf, stretchesOf } from './clip-face.ts'
import type { Entity, Vec2, ViewFrame } from './entity.ts'
import { merged } from './merge.ts'
import type { ViewLines } from './view.ts'
import type { Piece } from './view-item.ts'

/**
 * Where a partial view breaks off: the stretches of its window's border that run over the parts, to be drawn as break
 * lines (ISO 128, thin and freehand or zigzag); off the parts the border stays open. `lines`: the whole view of them.
 */
export function breakLines(pieces: readonly Piece[], view: ViewFrame, lines: ViewLines, window: Window): Entity[] {
  const drawn = [...lines.visible, ...lines.smooth, ...lines.hidden]
  return borderOf(window).flatMap((border) => {
    const over = stretchesOf(border, drawn).filter((e) => isPart(pieces, view, middleOf(e)))
    return merged([over])[0]!
  })
}

function isPart(pieces: readonly Piece[], view: ViewFrame, [x, y]: Vec2): boolean {
  const origin = along(along(view.origin, view.x, x), view.y, y)
  return pieces.some(({ lines }) => solidIntervals(lines.skin.solid, { origin, direction: view.z }).length > 0)
}
