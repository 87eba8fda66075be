import type { Entity, Point } from '../entity.ts'
import { turnedPast } from '../entity-shape.ts'
import type { LayerName } from '../style.ts'
import { NoRoom } from './no-room.ts'
import type { PlacedDimension } from './placed-dimension.ts'
import type { Called, Diametric, DimensionRequest, Radial } from './request.ts'
import { type Box, overlap } from './room.ts'
import {
  arrowAt,
  blockWidth,
  drawnLine,
  fits,
  middleOf,
  type Paper,
  quadOf,
  segmentsOf,
  stepped,
  take,
  textBlock,
} from './sketch.ts'

export type LeaderRequest = DimensionRequest & (Called | Diametric | Radial)

/** Directions tried, and rings outside the view on which a text may stand. */
const directions = 72
const nearRings: readonly [number, number] = [0, 12]
const farRings: readonly [number, number] = [12, 60]

interface Start {
  readonly tip: Point
  readonly direction: number
  /** Where a leader that is hemmed in turns off, and which way. */
  readonly bend?: { readonly at: Point; readonly direction: number }
}

/**
 * A text outside the view at the end of a leader with a shelf: in the direction wished for, near the view, crossing few
 * lines and no text. A leader to a circle points at its centre; where text bars its way it turns off once.
 */
export function placeLeader(paper: Paper, request: LeaderRequest, box: Box, scale: number): PlacedDimension {
  const starts = startsOf(request, scale)
  const best =
    bestLeader(paper, request, box, nearRings, starts) ??
    bestLeader(paper, request, box, farRings, starts) ??
    bestLeader(
      paper,
      request,
      box,
      [0, 60],
      starts.flatMap((s) => bent(s, 1.5 * paper.style.arrowLength)),
    )
  if (!best) throw new NoRoom(request.id)
  take(paper, request.id, best.graphics)
  return best
}

const bent = (start: Start, after: number): Start[] =>
  Array.from({ length: directions / 3 }, (_, i) => ({
    ...start,
    bend: { at: stepped(start.tip, start.direction, after), direction: (6 * Math.PI * (i + 0.5)) / directions },
  }))

function bestLeader(
  paper: Paper,
  request: LeaderRequest,
  box: Box,
  [firstRing, endRing]: readonly [number, number],
  starts: readonly Start[],
): PlacedDimension | undefined {
  const { style, room } = paper
  const middle: Point = [(box.low[0] + box.high[0]) / 2, (box.low[1] + box.high[1]) / 2]
  const tip = starts[0]!.tip
  const centred = Math.hypot(tip[0] - middle[0], tip[1] - middle[1]) < 1e-9
  const wish = request.toward ?? (centred ? Math.PI / 4 : Math.atan2(tip[1] - middle[1], tip[0] - middle[0]))
  const width = blockWidth(paper, request.text)
  const wishes = starts
    .flatMap((start) => {
      const last = start.bend ?? { at: start.tip, direction: start.direction }
      const turn = Math.abs(turnedPast(wish - Math.PI, last.direction) - wish)
      // Leaders along the axes are taken for edges and centre lines.
      const square = Math.abs(Math.sin(2 * last.direction)) < 0.3 ? 2 : 0
      return Array.from({ length: endRing - firstRing }, (_, i) => {
        const ring = firstRing + i
        const margin = style.firstRow / 2 + (ring * style.rowSpacing) / 2
        const elbow = exitFrom(box, margin, last.at, last.direction)
        const long = Math.hypot(elbow[0] - last.at[0], elbow[1] - last.at[1])
        return { start, last, elbow, cost: turn / (Math.PI / 12) + square + ring + long / (10 * style.textHeight) }
      })
    })
    .sort((a, b) => a.cost - b.cost)
  let best: { cost: number; placed: PlacedDimension } | undefined
  for (const { start, last, elbow, cost } of wishes) {
    if (best && best.cost <= cost) break
    const right = Math.cos(last.direction) >= 0
    const shelf: Point = [elbow[0] + (right ? 1 : -1) * (width + 2 * style.textGap), elbow[1]]
    const lines: Entity<LayerName>[] = [
      ...(start.bend ? [drawnLine(start.tip, start.bend.at)] : []),
      drawnLine(last.at, elbow),
      drawnLine(elbow, shelf),
      arrowAt(paper, start.tip, start.direction + Math.PI),
    ]
    const left: Point = [Math.min(elbow[0], shelf[0]) + style.textGap, elbow[1]]
    const words = textBlock(paper, request.text, left, 0, 'left')
    const quads = words.map((t) => quadOf(paper, t))
    const segments = segmentsOf(lines)
    if (quads.some((q) => segments.some((s) => overlap(q, s)))) continue
    if (!fits(paper, request.id, quads, segments)) continue
    // A shelf along another line would be read as part of it.
    const [x0, x1] = [Math.min(elbow[0], shelf[0]), Math.max(elbow[0], shelf[0])]
    const [y0, y1] = [elbow[1] - style.textGap, elbow[1] + style.textGap]
    const along = room.linesIn([
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ])
    const total = cost + 2 * along + segments.reduce((sum, [a, b]) => sum + room.crossings(a, b), 0)
    if (best && best.cost <= total) continue
    const placed: PlacedDimension = {
      request,
      graphics: [...lines, ...words],
      linePoint: start.tip,
      textPoint: middleOf(quads),
      leader: start.direction,
      shelf: [elbow, shelf],
    }
    best = { cost: total, placed }
  }
  return best?.placed
}

function startsOf(request: LeaderRequest, scale: number): Start[] {
  const turns = Array.from({ length: directions }, (_, i) => (2 * Math.PI * (i + 0.5)) / directions)
  const on = (p: Point): Point => [p[0] * scale, p[1] * scale]
  switch (request.kind) {
    case 'diameter':
      return turns.map((direction) => ({
        direction,
        tip: stepped(on(request.center), direction, request.radius * scale),
      }))
    case 'radius': {
      const sweep = turnedPast(request.start, request.end) - request.start
      const within = Array.from({ length: 9 }, (_, i) => request.start + (sweep * (i + 0.5)) / 9)
      return within.map((direction) => ({
        direction,
        tip: stepped(on(request.center), direction, request.radius * scale),
      }))
    }
    case 'chamfer': {
      const [a, b] = [on(request.from), on(request.to)]
      const tip: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
      return turns.map((direction) => ({ direction, tip }))
    }
    default:
      return turns.map((direction) => ({ direction, tip: on(request.to) }))
  }
}

/** Where a ray leaves the box made larger by `margin`; its own tip where it starts outside. */
function exitFrom(box: Box, margin: number, tip: Point, direction: number): Point {
  const step: Point = [Math.cos(direction), Math.sin(direction)]
  let far = Infinity
  for (const k of [0, 1] as const) {
    const wall = step[k] > 0 ? box.high[k] + margin : box.low[k] - margin
    if (Math.abs(step[k]) > 1e-9) far = Math.min(far, (wall - tip[k]) / step[k])
  }
  return stepped(tip, direction, Math.max(far, margin))
}
