import type { Box } from '../dimensions/room.ts'
import type { Entity, Point } from '../entity.ts'
import type { DrawingStyle, LayerName } from '../style.ts'
import type { SheetSize } from './sheet-size.ts'

/** The frame of a sheet and the marks at the middles of its sides (ISO 5457). */
export function sheetFrame(size: SheetSize): Entity<LayerName>[] {
  const { left, right, top, bottom } = frameSides(size)
  const [x, y] = [size.width / 2, size.height / 2]
  const line = (from: Point, to: Point): Entity<LayerName> => ({ kind: 'line', layer: 'frame', from, to })
  const [inward, outward] = [3, 4]
  return [
    {
      kind: 'polyline',
      layer: 'frame',
      points: [
        [left, bottom],
        [right, bottom],
        [right, top],
        [left, top],
      ],
      closed: true,
    },
    line([x, top - inward], [x, top + outward]),
    line([x, bottom + inward], [x, bottom - outward]),
    line([left + inward, y], [left - outward, y]),
    line([right - inward, y], [right + outward, y]),
  ]
}

/** The room for views: inside the frame and above the title block, mm on paper. */
export function drawingArea(size: SheetSize, blockHeight: number, style: DrawingStyle): Box {
  const { left, right, top, bottom } = frameSides(size)
  const gap = 2 * style.textHeight
  return { low: [left + gap, bottom + blockHeight + gap], high: [right - gap, top - gap] }
}

function frameSides({ width, height, margins }: SheetSize) {
  return { left: margins.left, right: width - margins.right, top: height - margins.top, bottom: margins.bottom }
}
