import type { Entity, Point, Text } from '../entity.ts'
import { turnedPast } from '../entity-shape.ts'
import type { LayerName } from '../style.ts'
import type { PlacedDimension } from './placed-dimension.ts'
import type { Called, DimensionRequest } from './request.ts'
import type { Box, Quad } from './room.ts'
import { blockWidth, drawnLine, fits, type Paper, segmentsOf, stepped, take } from './sketch.ts'

export type FramedRequest = DimensionRequest & Extract<Called, { kind: 'note' }> & { readonly frame: 'box' | 'circle' }

export const isFramed = (r: DimensionRequest): r is FramedRequest => r.kind === 'note' && r.frame !== undefined

const directions = 48
const rings = 40

/** A letter or number in a box or circle outside the view, joined to its point by a straight line: datum and item marks. */
export function placeFramed(paper: Paper, request: FramedRequest, box: Box, scale: number): PlacedDimension {
  const { style, room } = paper
  const tip: Point = [request.to[0] * scale, request.to[1] * scale]
  const high = style.textHeight + 2 * style.textGap
  const wide = Math.max(high, blockWidth(paper, request.text) + 2 * style.textGap)
  const radius = Math.hypot(wide, high) / 2
  const half: Point = request.frame === 'circle' ? [radius, radius] : [wide / 2, high / 2]
  const middle: Point = [(box.low[0] + box.high[0]) / 2, (box.low[1] + box.high[1]) / 2]
  const wish = request.toward ?? Math.atan2(tip[1] - middle[1], tip[0] - middle[0])
  let best: { cost: number; placed: PlacedDimension } | undefined
  const tries = Array.from({ length: directions }, (_, i) => (2 * Math.PI * i) / directions)
    .flatMap((direction) => {
      const turn = Math.abs(turnedPast(wish - Math.PI, direction) - wish)
      return Array.from({ length: rings }, (_, ring) => {
        const margin = style.textHeight + half[1] + (ring * style.textHeight) / 2
        const long = leaving(box, margin, half, tip, direction)
        return { direction, long, cost: turn / (Math.PI / 12) + ring / 2 + long / (10 * style.textHeight) }
      })
    })
    .sort((a, b) => a.cost - b.cost)
  for (const { direction, long, cost } of tries) {
    if (best && best.cost <= cost) break
    const at = stepped(tip, direction, long)
    const foot = stepped(at, direction + Math.PI, reachOfFrame(request.frame, half, direction))
    const quad: Quad = [
      [at[0] - half[0], at[1] - half[1]],
      [at[0] + half[0], at[1] - half[1]],
      [at[0] + half[0], at[1] + half[1]],
      [at[0] - half[0], at[1] + half[1]],
    ]
    const lead = drawnLine(tip, foot)
    if (!fits(paper, request.id, [quad], segmentsOf([lead]))) continue
    const total = cost + segmentsOf([lead]).reduce((sum, [a, b]) => sum + room.crossings(a, b), 0)
    if (best && best.cost <= total) continue
    const frame: Entity<LayerName> =
      request.frame === 'circle'
        ? { kind: 'circle', layer: 'dimension', center: at, radius }
        : { kind: 'polyline', layer: 'dimension', points: quad, closed: true }
    const words: Text<LayerName> = {
      kind: 'text',
      layer: 'dimension',
      at,
      text: request.text.join(' '),
      height: style.textHeight,
      across: 'center',
      up: 'middle',
      rotation: 0,
    }
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
  if (!best) throw new RangeError(`no room for ${request.id}`)
  take(paper, request.id, best.placed.graphics)
  return best.placed
}

function tipOf({ style }: Paper, { tip: kind }: FramedRequest, tip: Point, direction: number): Entity<LayerName>[] {
  if (kind === 'dot') return [{ kind: 'circle', layer: 'dimension', center: tip, radius: style.arrowWidth / 2 }]
  // A datum triangle stands with its base on the datum and points away from it.
  const arrow =
    kind === 'triangle'
      ? { tip: stepped(tip, direction, style.arrowLength), direction, width: style.arrowLength }
      : { tip, direction: direction + Math.PI, width: style.arrowWidth }
  return [{ kind: 'arrow', layer: 'dimension', length: style.arrowLength, ...arrow }]
}

/** From the middle of the frame to its edge along a direction. */
function reachOfFrame(frame: 'box' | 'circle', half: Point, direction: number): number {
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
