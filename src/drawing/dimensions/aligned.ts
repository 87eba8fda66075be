import type { Point } from '../entity.ts'
import { arrowsInside, extensionLine, measuredLine, tailOf } from './measured-line.ts'
import { NoRoom } from './no-room.ts'
import type { PlacedDimension } from './placed-dimension.ts'
import type { Side } from './request.ts'
import type { LinearRequest } from './rows.ts'
import { blockWidth, fits, middleOf, type Paper, quadOf, segmentsOf, stepped, take, textBlock } from './sketch.ts'

const outward: Readonly<Record<Side, Point>> = { above: [0, 1], below: [0, -1], left: [-1, 0], right: [1, 0] }
const mostSteps = 240

/**
 * A straight dimension along a slope: the nearest place to its points, on the side asked for first, that is clear; on a
 * hatched face only where there is none beside it.
 */
export function placeAligned(paper: Paper, request: LinearRequest, middle: Point, scale: number): PlacedDimension {
  const placed = placeBeside(paper, request, middle, scale, false) ?? placeBeside(paper, request, middle, scale, true)
  if (!placed) throw new NoRoom(request.id)
  take(paper, request.id, placed.graphics)
  return placed
}

function placeBeside(
  paper: Paper,
  request: LinearRequest,
  middle: Point,
  scale: number,
  onHatch: boolean,
): PlacedDimension | undefined {
  const { style } = paper
  const points = [request.from, request.to].map((p): Point => [p[0] * scale, p[1] * scale]) as [Point, Point]
  // Read from below or from the right: writing runs between −90° (left out) and +90°.
  const forward =
    points[1][0] - points[0][0] > 1e-9 || (Math.abs(points[1][0] - points[0][0]) <= 1e-9 && points[1][1] > points[0][1])
  const [from, to] = forward ? points : [points[1], points[0]]
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const direction = Math.atan2(to[1] - from[1], to[0] - from[0])
  const width = blockWidth(paper, request.text)
  const need = width / 2 + style.textGap
  const tail = arrowsInside(paper, length) ? style.arrowLength / 2 : tailOf(paper)
  const normal: Point = [-Math.sin(direction), Math.cos(direction)]
  const wish =
    request.side === undefined
      ? ([(from[0] + to[0]) / 2 - middle[0], (from[1] + to[1]) / 2 - middle[1]] as const)
      : outward[request.side]
  const first = wish[0] * normal[0] + wish[1] * normal[1] >= 0 ? 1 : -1
  const inside = 2 * need <= length ? [length / 2, length - need, need] : []
  const places = [...inside, length + tail + need, -tail - need]
  for (let k = 0; k < mostSteps; k++) {
    // The other side is worth four steps further out on this one.
    for (const [side, step] of [
      [first, k],
      [-first, k - 4],
    ] as const) {
      if (step < 0) continue
      const offset = side * (style.firstRow / 2 + style.textHeight + (step * style.rowSpacing) / 3)
      for (const place of places) {
        const start = stepped(from, direction + Math.PI / 2, offset)
        const text = { middle: place, width }
        const lines = [
          ...extensionLine(paper, from, start),
          ...extensionLine(paper, to, stepped(start, direction, length)),
          ...measuredLine(paper, start, direction, length, text),
        ]
        const words = textBlock(paper, request.text, stepped(start, direction, place), direction, 'center')
        const quads = words.map((t) => quadOf(paper, t))
        if (!fits(paper, request.id, quads, segmentsOf(lines), onHatch)) continue
        const linePoint = stepped(start, direction, forward ? length : 0)
        return { request, graphics: [...lines, ...words], linePoint, textPoint: middleOf(quads) }
      }
    }
  }
  return undefined
}
