import type { Entity, Point } from '../entity.ts'
import type { LayerName } from '../style.ts'
import { NoRoom } from './no-room.ts'
import type { PlacedDimension } from './placed-dimension.ts'
import type { DimensionRequest, Ordinate } from './request.ts'
import type { Box } from './room.ts'
import type { SideFrame } from './rows.ts'
import { drawnLine, fits, middleOf, type Paper, quadOf, segmentsOf, stepped, take } from './sketch.ts'

export type OrdinateRequest = DimensionRequest & Ordinate

const mostSteps = 400

/**
 * Coordinates along one side: one line from each point out past the rows, its number at the end and in the line's
 * direction; where numbers would touch, the lines are jogged apart, least movement in all.
 */
export function placeOrdinates(
  paper: Paper,
  frame: SideFrame,
  requests: readonly OrdinateRequest[],
  box: Box,
  scale: number,
): PlacedDimension[] {
  if (requests.length === 0) return []
  const { style, font } = paper
  for (const { id } of requests) paper.room.release(id)
  const points = requests.map((r): Point => [r.point[0] * scale, r.point[1] * scale])
  const order = requests.map((_, i) => i).sort((a, b) => frame.u(points[a]!) - frame.u(points[b]!) || a - b)
  const spacing = Math.max(...requests.map((r) => r.text.length)) * style.lineSpacing + style.textGap
  const spread = spreadApart(
    order.map((i) => frame.u(points[i]!)),
    spacing,
  )
  const upright = frame.direction !== 0
  const outward = frame.direction + (frame.side === 'above' || frame.side === 'left' ? Math.PI / 2 : -Math.PI / 2)
  const rotation = upright ? 0 : Math.PI / 2
  const reversed = frame.side === 'left' || frame.side === 'below'
  for (let k = 0; k < mostSteps; k++) {
    const v = frame.edge(box) + style.firstRow / 2 + (k * style.rowSpacing) / 2
    const placed = order.map((i, rank): PlacedDimension => {
      const request = requests[i]!
      const point = points[i]!
      const [u, t] = [frame.u(point), spread[rank]!]
      const end = frame.point(t, v + 2 * style.textHeight)
      const lines: Entity<LayerName>[] = [
        drawnLine(stepped(point, outward, style.extensionGap), frame.point(u, v)),
        drawnLine(frame.point(u, v), frame.point(t, v + style.textHeight)),
        drawnLine(frame.point(t, v + style.textHeight), end),
      ]
      const words = request.text.map((text, line): Entity<LayerName> & { kind: 'text' } => ({
        kind: 'text',
        layer: 'dimension',
        at: stepped(
          stepped(end, outward, style.textGap),
          rotation + Math.PI / 2,
          ((request.text.length - 1) / 2 - line) * style.lineSpacing,
        ),
        text,
        height: style.textHeight,
        across: reversed ? 'right' : 'left',
        up: 'middle',
        rotation,
      }))
      const quads = words.map((w) => quadOf({ style, font, room: paper.room }, w))
      return { request, graphics: [...lines, ...words], linePoint: end, textPoint: middleOf(quads) }
    })
    const clear = placed.every(({ request, graphics }) => {
      const quads = graphics.filter((g) => g.kind === 'text').map((t) => quadOf(paper, t))
      return fits(paper, request.id, quads, segmentsOf(graphics))
    })
    if (!clear) continue
    for (const p of placed) take(paper, p.request.id, p.graphics)
    return order.map((_, i) => placed[order.indexOf(i)]!)
  }
  throw new NoRoom(`coordinates ${frame.side} the view`)
}

/** Rising numbers moved by least squares so that neighbours stand at least `spacing` apart, in the same order. */
export function spreadApart(values: readonly number[], spacing: number): number[] {
  // Less i·spacing, the wish is a sequence that never falls: pooled neighbours take their mean.
  const pools: { sum: number; count: number }[] = []
  for (const [i, value] of values.entries()) {
    pools.push({ sum: value - i * spacing, count: 1 })
    for (;;) {
      const [a, b] = [pools.at(-2), pools.at(-1)!]
      if (!a || a.sum / a.count <= b.sum / b.count) break
      pools.splice(-2, 2, { sum: a.sum + b.sum, count: a.count + b.count })
    }
  }
  return pools.flatMap((p) => Array<number>(p.count).fill(p.sum / p.count)).map((w, i) => w + i * spacing)
}
