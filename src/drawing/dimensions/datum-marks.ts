import type { Entity, Point } from '../entity.ts'
import type { LayerName } from '../style.ts'
import { datumTriangle, type FramedRequest, letterAt, placeFramed, reachOfFrame } from './framed.ts'
import { NoRoom } from './no-room.ts'
import type { PlacedDimension } from './placed-dimension.ts'
import type { DatumBase } from './request.ts'
import type { Box } from './room.ts'
import { drawnLine, fits, type Paper, segmentsOf, stepped, take } from './sketch.ts'

/** A datum whose triangle stands on a line, and one that hangs on the dimension of what it is the datum of (ISO 5459). */
export type DatumOnLine = FramedRequest & { readonly base: DatumBase }
export type DatumOnDimension = FramedRequest & { readonly on: string }

/** How far a centre line runs past its outline anyhow, mm on paper: from there the datum mark carries it on. */
export const centreOverrun = 3
/** How far out along a centre line the mark may stand, mm on paper. */
const farthest = 60

interface Place {
  readonly foot: Point
  /** Away from the datum. */
  readonly direction: number
  readonly cost: number
  /** What the centre line is carried on by. */
  readonly carried: readonly Entity<LayerName>[]
}

/** Along its line as near to where it starts (an edge: to its middle) as there is room, the letter close to the line. */
export function placeOnLine(paper: Paper, request: DatumOnLine, scale: number): PlacedDimension {
  const { style } = paper
  const { along, length, side } = request.base
  const start: Point = [request.to[0] * scale, request.to[1] * scale]
  const step = style.textHeight / 2
  const sides = side === undefined ? [1, -1] : [side]
  const place = (s: number, cost: number, carried: readonly Entity<LayerName>[]): Place[] =>
    sides.map((way, i) => ({
      foot: stepped(start, along, s),
      direction: along + (way * Math.PI) / 2,
      carried,
      cost: cost + i,
    }))
  const places: Place[] = []
  if (length === undefined) {
    const from = stepped(start, along, centreOverrun)
    for (let s = centreOverrun + style.arrowLength / 2; s <= farthest; s += step) {
      const to = stepped(start, along, s + style.arrowLength)
      places.push(...place(s, s / step, [{ kind: 'line', layer: 'centre', from, to }]))
    }
  } else {
    const long = length * scale
    for (let s = style.arrowLength; s <= long - style.arrowLength; s += step) {
      places.push(...place(s, Math.abs(s - long / 2) / step, []))
    }
    // Beside a short edge: on what it is carried on by.
    for (let s = style.arrowLength; s <= farthest; s += step) {
      for (const [end, way] of [
        [long, 1],
        [0, -1],
      ] as const) {
        const carried = drawnLine(
          stepped(start, along, end + way * style.extensionGap),
          stepped(start, along, end + way * (s + style.arrowLength)),
        )
        places.push(...place(end + way * s, 20 + (long / 2 + s) / step, [carried]))
      }
    }
  }
  const best = bestOf(paper, request, places)
  if (!best) throw new NoRoom(request.id)
  take(paper, request.id, best.graphics)
  return best
}

/** Under the shelf of the dimension; where there is no room, on the outline that its leader points to. */
export function placeOnDimension(
  paper: Paper,
  request: DatumOnDimension,
  host: PlacedDimension,
  box: Box,
  scale: number,
): PlacedDimension {
  const [from, to] = host.shelf ?? [host.linePoint, host.linePoint]
  const places = Array.from({ length: 9 }, (_, i): Place => {
    const foot: Point = [from[0] + ((to[0] - from[0]) * (i + 1)) / 10, from[1]]
    return { foot, direction: -Math.PI / 2, carried: [], cost: Math.abs(i - 4) / 2 }
  })
  const best = host.shelf && bestOf(paper, request, places)
  if (!best) {
    const tip: Point = [host.linePoint[0] / scale, host.linePoint[1] / scale]
    return placeFramed(paper, { ...request, to: tip }, box, scale)
  }
  take(paper, request.id, best.graphics)
  return best
}

function bestOf(paper: Paper, request: FramedRequest, places: readonly Place[]): PlacedDimension | undefined {
  const { style, room } = paper
  const stems = [0.5, 1, 2, 3, 5, 8].map((k) => k * style.textHeight)
  const tries = places
    .flatMap((place) => stems.map((stem, k) => ({ ...place, stem, cost: place.cost + 2 * k })))
    .sort((a, b) => a.cost - b.cost)
  let best: { readonly cost: number; readonly placed: PlacedDimension } | undefined
  for (const { foot, direction, carried, stem, cost } of tries) {
    if (best && best.cost <= cost) break
    const { half } = letterAt(paper, request, foot)
    const lead = style.arrowLength + stem
    const at = stepped(foot, direction, lead + reachOfFrame(request.frame, half, direction))
    const { frame, words, quad } = letterAt(paper, request, at)
    const stick = drawnLine(stepped(foot, direction, style.arrowLength), stepped(foot, direction, lead))
    const lines = [...carried, datumTriangle(paper, foot, direction), stick]
    if (!fits(paper, request.id, [quad], segmentsOf(lines))) continue
    const [left, right] = [-1, 1].map((k) => stepped(foot, direction + Math.PI / 2, (k * style.arrowLength) / 2))
    const crossed = room.linesIn([
      stepped(left!, direction, 0.2),
      stepped(right!, direction, 0.2),
      stepped(right!, direction, lead),
      stepped(left!, direction, lead),
    ])
    const total = cost + 4 * crossed
    if (best && best.cost <= total) continue
    best = {
      cost: total,
      placed: { request, graphics: [...lines, frame, words], linePoint: foot, textPoint: at, leader: direction },
    }
  }
  return best?.placed
}
