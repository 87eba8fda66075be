import type { Point } from '../entity.ts'
import { arrowsInside, extensionLine, extentOf, measuredLine, type TextPlace, tailOf } from './measured-line.ts'
import { NoRoom } from './no-room.ts'
import type { PlacedDimension } from './placed-dimension.ts'
import type { DimensionRequest, Linear, Side } from './request.ts'
import type { Box } from './room.ts'
import { blockWidth, fits, middleOf, type Paper, quadOf, segmentsOf, take, textBlock } from './sketch.ts'

/** A side of the view as a frame of its own: u along it (x or y), v outward from the view's origin. */
export interface SideFrame {
  readonly side: Side
  readonly u: (p: Point) => number
  readonly v: (p: Point) => number
  readonly point: (u: number, v: number) => Point
  /** Direction of growing u, rad, which is also the direction of writing. */
  readonly direction: number
  /** Where the view ends on this side. */
  readonly edge: (box: Box) => number
}

export function sideFrame(side: Side): SideFrame {
  const sign = side === 'above' || side === 'right' ? 1 : -1
  const upright = side === 'left' || side === 'right'
  const [along, out] = upright ? ([1, 0] as const) : ([0, 1] as const)
  return {
    side,
    u: (p) => p[along],
    v: (p) => sign * p[out],
    point: (u, v) => (upright ? [sign * v, u] : [u, sign * v]),
    direction: upright ? Math.PI / 2 : 0,
    edge: (box) => (sign > 0 ? box.high[out] : -box.low[out]),
  }
}

export type LinearRequest = DimensionRequest & Linear

/** The side for a dimension that asks for none: the nearer one. */
export function sideOf(request: LinearRequest, box: Box, scale: number): Side {
  if (request.side !== undefined) return request.side
  const k = request.direction === 'horizontal' ? 1 : 0
  const middle = (scale * (request.from[k] + request.to[k])) / 2
  const high = middle > (box.low[k] + box.high[k]) / 2
  if (k === 1) return high ? 'above' : 'below'
  return high ? 'right' : 'left'
}

/** A row along one side: which stretches of it are taken. */
interface Row {
  readonly v: number
  readonly taken: (readonly [number, number])[]
}

/** More rows than this on a side mean that something else is wrong. */
const mostRows = 400

/**
 * Rows of dimensions along one side of the view, small ones inside, at steady spacing. `waiting`: where lines of further
 * dimensions (u) will leave the view on this side, which no text may block.
 */
export function placeRows(
  paper: Paper,
  frame: SideFrame,
  requests: readonly LinearRequest[],
  box: Box,
  scale: number,
  waiting: readonly number[],
): PlacedDimension[] {
  const { style } = paper
  const ends = (r: LinearRequest) => {
    const [a, b] = [r.from, r.to].map((p): Point => [p[0] * scale, p[1] * scale]) as [Point, Point]
    return frame.u(a) <= frame.u(b) ? ([a, b] as const) : ([b, a] as const)
  }
  const sorted = [...requests].sort((p, q) => p.value - q.value || frame.u(ends(p)[0]) - frame.u(ends(q)[0]))
  const rows: Row[] = []
  return sorted.map((request, i) => {
    const [from, to] = ends(request)
    const [low, high] = [frame.u(from), frame.u(to)]
    const later = sorted.slice(i + 1).flatMap((r) => ends(r).map(frame.u))
    const blocked = [...waiting, ...later]
    for (let r = 0; r < mostRows; r++) {
      rows[r] ??= { v: frame.edge(box) + style.firstRow + r * style.rowSpacing, taken: [] }
      const row = rows[r]!
      for (const text of textPlaces(paper, request, low, high, blocked)) {
        const [a, b] = extentOf(paper, high - low, text)
        const stretch = [low + a, low + b] as const
        if (row.taken.some(([c, d]) => c < stretch[1] - 1e-6 && stretch[0] < d - 1e-6)) continue
        const start = frame.point(low, row.v)
        const lines = [
          ...extensionLine(paper, from, start),
          ...extensionLine(paper, to, frame.point(high, row.v)),
          ...measuredLine(paper, start, frame.direction, high - low, text),
        ]
        const at = frame.point(low + text.middle, row.v)
        const words = textBlock(paper, request.text, at, frame.direction, 'center')
        const quads = words.map((t) => quadOf(paper, t))
        if (!fits(paper, request.id, quads, segmentsOf(lines))) continue
        const graphics = [...lines, ...words]
        take(paper, request.id, graphics)
        row.taken.push(stretch)
        return { request, graphics, linePoint: frame.point(high, row.v), textPoint: middleOf(quads) }
      }
    }
    throw new NoRoom(request.id)
  })
}

/** Places for the text along its line, best first: in the middle, elsewhere inside, outside. */
function textPlaces(
  paper: Paper,
  request: LinearRequest,
  low: number,
  high: number,
  blocked: readonly number[],
): TextPlace[] {
  const { textGap, arrowLength } = paper.style
  const length = high - low
  const width = blockWidth(paper, request.text)
  const need = width / 2 + textGap
  const tail = arrowsInside(paper, length) ? arrowLength / 2 : tailOf(paper)
  const stops = [...new Set(blocked.map((u) => u - low))].sort((a, b) => a - b)
  const free = (middle: number) => stops.every((s) => Math.abs(s - middle) >= need - 1e-9)
  const inside = (middle: number) => middle - need >= -1e-9 && middle + need <= length + 1e-9
  const nearStops = stops.flatMap((s) => [s - need, s + need])
  const within = [length / 2, ...nearStops].filter((m) => inside(m) && free(m))
  const out = [-tail - need, length + tail + need]
  const beyond = [...out, ...nearStops].filter((m) => (m <= out[0]! + 1e-9 || m >= out[1]! - 1e-9) && free(m))
  const nearest = (a: number, b: number) => Math.abs(a - length / 2) - Math.abs(b - length / 2) || b - a
  return [...within.sort(nearest), ...beyond.sort(nearest)].map((middle) => ({ middle, width }))
}
