import type { Entity, Point } from '../entity.ts'
import type { LayerName } from '../style.ts'
import { arrowsInside, tailOf } from './measured-line.ts'
import { NoRoom } from './no-room.ts'
import type { PlacedDimension } from './placed-dimension.ts'
import type { Angular, DimensionRequest } from './request.ts'
import { overlap } from './room.ts'
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

export type AngularRequest = DimensionRequest & Angular

interface Candidate {
  readonly cost: number
  readonly placed: PlacedDimension
}

const mostRadii = 160
/** What a text costs that no end of the arc leads to, in steps of the radius. */
const aside = 12

/**
 * An angle by an arc about its vertex: the least radius at which arc and text are clear, crossing few lines; on a hatched
 * face only where there is no place beside it.
 */
export function placeAngle(paper: Paper, request: AngularRequest, scale: number): PlacedDimension {
  const placed = bestAngle(paper, request, scale, false) ?? bestAngle(paper, request, scale, true)
  if (!placed) throw new NoRoom(request.id)
  take(paper, request.id, placed.graphics)
  return placed
}

function bestAngle(
  paper: Paper,
  request: AngularRequest,
  scale: number,
  onHatch: boolean,
): PlacedDimension | undefined {
  const { style, room } = paper
  const at = (p: Point): Point => [p[0] * scale, p[1] * scale]
  const [vertex, from, to] = [at(request.vertex), at(request.from), at(request.to)]
  const ray = (p: Point) => Math.atan2(p[1] - vertex[1], p[0] - vertex[0])
  const reach = (p: Point) => Math.hypot(p[0] - vertex[0], p[1] - vertex[1])
  const start = ray(from)
  const end = start + request.value
  const half = blockWidth(paper, request.text) / 2
  const tall = (style.lineSpacing * (request.text.length - 1)) / 2 + style.textHeight / 2
  let best: Candidate | undefined
  for (let k = 0; k < mostRadii; k++) {
    const radius = style.firstRow + (k * style.rowSpacing) / 2
    if (best && best.cost <= k) break
    const inside = arrowsInside(paper, radius * request.value)
    const tail = inside ? 0 : tailOf(paper) / radius
    const arc: Entity<LayerName> = {
      kind: 'arc',
      layer: 'dimension',
      center: vertex,
      radius,
      start: start - tail,
      end: end + tail,
    }
    const turn = inside ? -Math.PI / 2 : Math.PI / 2
    // An arrow is a chord of the arc: turned by half of what the arc turns over its length.
    const lean = style.arrowLength / radius / 2
    const sign = inside ? 1 : -1
    const rays = [
      [start, reach(from)],
      [end, reach(to)],
    ] as const
    const lines: Entity<LayerName>[] = [
      arc,
      arrowAt(paper, stepped(vertex, start, radius), start + turn + sign * lean),
      arrowAt(paper, stepped(vertex, end, radius), end - turn - sign * lean),
      ...rays
        .filter(([, r]) => r + style.extensionGap < radius)
        .map(([a, r]) =>
          drawnLine(stepped(vertex, a, r + style.extensionGap), stepped(vertex, a, radius + style.extensionBeyond)),
        ),
    ]
    const segments = segmentsOf(lines)
    const crossed = segments.reduce((sum, [a, b]) => sum + room.crossings(a, b), 0)
    // Beyond an end of the arc the text clears it along the tangent.
    const beyond = (at: number, way: 1 | -1) => {
      const from = at + way * tail
      const need = Math.abs(Math.sin(from)) * half + Math.abs(Math.cos(from)) * tall + 2 * style.textGap
      return from + (way * need) / radius
    }
    // Beside the middle, where a centre line runs through it.
    const off = (half + 2 * style.textGap) / (radius + tall)
    for (const [extra, angle, place] of [
      [0, (start + end) / 2, 'outside'],
      ...(2 * off < end - start
        ? ([
            [1, (start + end) / 2 + off, 'outside'],
            [1, (start + end) / 2 - off, 'outside'],
          ] as const)
        : []),
      // In line with the arc, so that its tail leads to the text; outside it only where there is no such place near.
      [2, beyond(end, 1), 'in line'],
      [2, beyond(start, -1), 'in line'],
      [aside, beyond(end, 1), 'outside'],
      [aside, beyond(start, -1), 'outside'],
    ] as const) {
      const out = Math.abs(Math.cos(angle)) * half + Math.abs(Math.sin(angle)) * tall + 1.5 * style.textGap
      const middle = stepped(vertex, angle, place === 'outside' ? radius + out : radius)
      const words = textBlock(paper, request.text, [middle[0], middle[1] - tall - style.textGap], 0, 'center')
      const quads = words.map((t) => quadOf(paper, t))
      if (quads.some((q) => segments.some((s) => overlap(q, s)))) continue
      if (!fits(paper, request.id, quads, segments, onHatch)) continue
      const cost = k + 3 * crossed + extra
      if (best && best.cost <= cost) continue
      const placed = {
        request,
        graphics: [...lines, ...words],
        linePoint: stepped(vertex, (start + end) / 2, radius),
        textPoint: middleOf(quads),
      }
      best = { cost, placed }
    }
  }
  return best?.placed
}
