import type { Entity, Point, Text } from '../entity.ts'
import { turnedPast } from '../entity-shape.ts'
import type { LayerName } from '../style.ts'
import { NoRoom } from './no-room.ts'
import { originRadius, originSign } from './origin-sign.ts'
import type { PlacedDimension } from './placed-dimension.ts'
import type { Called, DimensionRequest } from './request.ts'
import type { Box, Quad } from './room.ts'
import { arrowAt, blockWidth, drawnLine, fits, type Paper, segmentsOf, stepped, take } from './sketch.ts'

export type FramedRequest = DimensionRequest & Extract<Called, { kind: 'note' }> & { readonly frame: 'box' | 'circle' }

export const isFramed = (r: DimensionRequest): r is FramedRequest => r.kind === 'note' && r.frame !== undefined

const directions = 48
const rings = 16

/** A letter or number in a box or circle outside the view, joined to its point by a straight line: datum and item marks. */
export function placeFramed(paper: Paper, request: FramedRequest, box: Box, scale: number): PlacedDimension {
  const { style, room } = paper
  const tip: Point = [request.to[0] * scale, request.to[1] * scale]
  const half = halfOfFrame(paper, request)
  const middle: Point = [(box.low[0] + box.high[0]) / 2, (box.low[1] + box.high[1]) / 2]
  const wish = request.toward ?? Math.atan2(tip[1] - middle[1], tip[0] - middle[0])
  let best: { cost: number; placed: PlacedDimension } | undefined
  const tries = Array.from({ length: directions }, (_, i) => (2 * Math.PI * i) / directions)
    .flatMap((direction) => {
      const turn = Math.abs(turnedPast(wish - Math.PI, direction) - wish)
      // Leaders along the axes are taken for edges and centre lines, unless that is what was asked for.
      const square = turn > 0.1 && Math.abs(Math.sin(2 * direction)) < 0.3 ? 6 : 0
      return Array.from({ length: rings }, (_, ring) => {
        const margin = style.textHeight + half[1] + (ring * style.textHeight) / 2
        const long = leaving(box, margin, half, tip, direction)
        return { direction, long, cost: square + turn / (Math.PI / 12) + ring / 2 + long / (10 * style.textHeight) }
      })
    })
    .sort((a, b) => a.cost - b.cost)
  const rim = request.tip === 'origin' ? originRadius(style) : 0
  for (const { direction, long, cost } of tries) {
    if (best && best.cost <= cost) break
    const at = stepped(tip, direction, long)
    const { frame, words, quad } = letterAt(paper, request, at)
    const foot = stepped(at, direction + Math.PI, reachOfFrame(request.frame, half, direction))
    const lead = drawnLine(stepped(tip, direction, rim), foot)
    if (!fits(paper, request.id, [quad], segmentsOf([lead]))) continue
    const total = cost + segmentsOf([lead]).reduce((sum, [a, b]) => sum + room.crossings(a, b), 0)
    if (best && best.cost <= total) continue
    best = {
      cost: total,
      placed: {
        request,
        graphics: [lead, ...tipOf(paper, request, tip, direction), frame, words],
        linePoint: tip,
        textPoint: at,
        leader: direction,
      },
    }
  }
  if (!best) throw new NoRoom(request.id)
  take(paper, request.id, best.placed.graphics)
  return best.placed
}

/** Half of the frame round a letter or number: along x and y, mm. */
function halfOfFrame(paper: Paper, request: FramedRequest): Point {
  const { style } = paper
  const high = style.textHeight + 2 * style.textGap
  const wide = Math.max(high, blockWidth(paper, request.text) + 2 * style.textGap)
  const radius = Math.hypot(wide, high) / 2
  return request.frame === 'circle' ? [radius, radius] : [wide / 2, high / 2]
}

/** A letter or number in its frame, the middle of it at `at`; `quad` is the room that it takes. */
export function letterAt(paper: Paper, request: FramedRequest, at: Point) {
  const half = halfOfFrame(paper, request)
  const quad: Quad = [
    [at[0] - half[0], at[1] - half[1]],
    [at[0] + half[0], at[1] - half[1]],
    [at[0] + half[0], at[1] + half[1]],
    [at[0] - half[0], at[1] + half[1]],
  ]
  const frame: Entity<LayerName> =
    request.frame === 'circle'
      ? { kind: 'circle', layer: 'dimension', center: at, radius: half[0] }
      : { kind: 'polyline', layer: 'dimension', points: quad, closed: true }
  const words: Text<LayerName> = {
    kind: 'text',
    layer: 'dimension',
    at,
    text: request.text.join(' '),
    height: paper.style.textHeight,
    across: 'center',
    up: 'middle',
    rotation: 0,
  }
  return { frame, words, quad, half }
}

/** A datum triangle stands with its base at `foot` and points along `direction`, away from the datum. */
export const datumTriangle = ({ style }: Paper, foot: Point, direction: number): Entity<LayerName> => ({
  kind: 'arrow',
  layer: 'dimension',
  tip: stepped(foot, direction, style.arrowLength),
  direction,
  length: style.arrowLength,
  width: style.arrowLength,
})

function tipOf(paper: Paper, { tip: kind }: FramedRequest, tip: Point, direction: number): Entity<LayerName>[] {
  const { style } = paper
  if (kind === 'dot') return [{ kind: 'circle', layer: 'dimension', center: tip, radius: style.arrowWidth / 2 }]
  if (kind === 'origin') return originSign(tip, style)
  if (kind === 'triangle') return [datumTriangle(paper, tip, direction)]
  return [arrowAt(paper, tip, direction + Math.PI)]
}

/** From the middle of the frame to its edge along a direction. */
export function reachOfFrame(frame: 'box' | 'circle', half: Point, direction: number): number {
  if (frame === 'circle') return half[0]
  const [c, s] = [Math.abs(Math.cos(direction)), Math.abs(Math.sin(direction))]
  return Math.min(c > 1e-9 ? half[0] / c : Infinity, s > 1e-9 ? half[1] / s : Infinity)
}

/** How far along a ray a frame of that size clears the box made larger by `margin`. */
function leaving(box: Box, margin: number, half: Point, tip: Point, direction: number): number {
  const step: Point = [Math.cos(direction), Math.sin(direction)]
  let far = Infinity
  for (const k of [0, 1] as const) {
    const room = margin - half[1] + half[k]
    const wall = step[k] > 0 ? box.high[k] + room : box.low[k] - room
    if (Math.abs(step[k]) > 1e-9) far = Math.min(far, (wall - tip[k]) / step[k])
  }
  return Math.max(far, margin)
}
