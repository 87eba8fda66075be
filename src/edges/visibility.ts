import { cellDepth } from '../geometry/cell.ts'
import { add, along, dot, length, type Vec3 } from '../geometry/vector.ts'
import { crossings, fullTurn, isClosed, pointAt, tangentAt } from './curve.ts'
import { between, outwards, quadricsOf } from './edges-of.ts'
import { flattened, type Vec2, type ViewFrame } from './entity.ts'
import { isInTheWay } from './sight.ts'
import { outlinePlane, silhouettesOf } from './silhouette.ts'
import { airAround } from './skin.ts'
import { probe, through } from './tolerance.ts'
import { crossedBy, itemOf, overlap, type Piece, type PieceCurve, type ViewItem } from './view-item.ts'

export type { Piece } from './view-item.ts'

/** A stretch of an edge or outline, told apart by whether it is seen. */
export interface SeenStretch extends PieceCurve {
  readonly visible: boolean
}

/**
 * Every edge and outline of the pieces, cut where the view along z changes from seen to hidden: at outlines, where a
 * nearer edge crosses it, and where it goes into another part. Each stretch is then judged by one exact ray.
 */
export function seenStretches(pieces: readonly Piece[], view: ViewFrame): SeenStretch[] {
  const eye = view.z
  const items = pieces.flatMap((piece) => itemsOf(view, piece))
  // From left to right, so that all beyond an item's right end can be left out at once.
  const covering = items.filter((i) => i.covers).sort((a, b) => a.low[0] - b.low[0])
  const shadows = pieces.map((piece) => shadowOf(piece, items))
  return items.flatMap((item) => {
    if (Math.max(item.high[0] - item.low[0], item.high[1] - item.low[1]) < 1e-6) return []
    const ts: number[] = []
    for (const { surface } of item.faces) {
      const plane = item.curve.kind === 'line' ? undefined : outlinePlane(surface, eye)
      if (plane) ts.push(...crossings(item.curve, plane, item.from, item.to, item.samples))
    }
    for (const other of covering) {
      if (other.low[0] > item.high[0] + through) break
      for (const t of crossedBy(view, item, other, true)) ts.push(t)
    }
    const touching: Piece[] = []
    pieces.forEach((piece, i) => {
      if (piece === item.piece || !overlap(item, shadows[i]!)) return
      touching.push(piece)
      ts.push(...entries(item, piece))
    })
    const out: SeenStretch[] = []
    const { curve, faces, kind, piece } = item
    // Written out field by field: copying whole objects here took a third of the time of a view.
    let start: number | undefined
    let seen = false
    let end = item.from
    for (const [from, to] of between(curve, item.from, item.to, ts)) {
      const visible = isSeen(item, (from + to) / 2, eye, pieces, shadows, touching, view)
      if (start === undefined || visible !== seen) {
        if (start !== undefined) out.push({ piece, curve, faces, kind, from: start, to: end, visible: seen })
        start = from
        seen = visible
      }
      end = to
    }
    if (start !== undefined) out.push({ piece, curve, faces, kind, from: start, to: end, visible: seen })
    return closedUp(item, out)
  })
}

/** All edges and outlines of a piece in a view. */
export const itemsOf = (view: ViewFrame, piece: Piece): ViewItem[] => [
  ...piece.lines.edges.map(({ curve, from, to, faces, smooth }) =>
    itemOf(view, { piece, curve, from, to, faces, kind: smooth ? 'smooth' : 'edge' }),
  ),
  ...silhouettesOf(piece.lines.skin, view.z).map(({ curve, from, to, face }) =>
    itemOf(view, { piece, curve, from, to, faces: [face], kind: 'outline' }),
  ),
]

/** A closed curve cut at its start for no reason is put together again. */
function closedUp(item: ViewItem, stretches: SeenStretch[]): SeenStretch[] {
  const [first, last] = [stretches[0], stretches[stretches.length - 1]]
  if (!first || !last || !isClosed(item.curve) || last.to - first.from < fullTurn - 1e-9) return stretches
  if (first === last) return [{ ...first, from: item.from, to: item.from + fullTurn }]
  if (first.visible !== last.visible) return stretches
  return [{ ...last, to: first.to + fullTurn }, ...stretches.slice(1, -1)]
}

/** Where a piece is in the view, and how near it comes. */
interface Shadow {
  readonly low: Vec2
  readonly high: Vec2
  readonly nearest: number
}

function shadowOf(piece: Piece, items: readonly ViewItem[]): Shadow {
  const own = items.filter((i) => i.piece === piece)
  return {
    low: [Math.min(...own.map((i) => i.low[0])), Math.min(...own.map((i) => i.low[1]))],
    high: [Math.max(...own.map((i) => i.high[0])), Math.max(...own.map((i) => i.high[1]))],
    nearest: Math.max(...own.map((i) => i.nearest)),
  }
}

/** Parameters at which the item goes into or out of another part, or meets its skin. */
function entries(item: ViewItem, piece: Piece): number[] {
  const { skin } = piece.lines
  const ts: number[] = []
  quadricsOf(skin).forEach((q, sheet) => {
    for (const t of crossings(item.curve, q, item.from, item.to, item.samples)) {
      if (skin.touches(sheet, pointAt(item.curve, t))) ts.push(t)
    }
  })
  return ts
}

/** Whether the air at that place of the item sees the eye. */
function isSeen(
  item: ViewItem,
  t: number,
  eye: Vec3,
  pieces: readonly Piece[],
  shadows: readonly Shadow[],
  touching: readonly Piece[],
  view: ViewFrame,
): boolean {
  const p = pointAt(item.curve, t)
  const beside = touching.filter((k) => k.lines.skin.solid.stock.some((c) => cellDepth(c, p) > -through))
  const sees = (q: Vec3) => {
    const at = flattened(view, q)
    const depth = dot(eye, q)
    return !pieces.some(({ lines }, i) => {
      const s = shadows[i]!
      if (at[0] < s.low[0] || at[0] > s.high[0] || at[1] < s.low[1] || at[1] > s.high[1] || depth > s.nearest)
        return false
      return isInTheWay(lines.skin.solid, q, eye)
    })
  }
  if (beside.length === 0) {
    const [a, b] = item.faces.map((f) => outwards(f, p)) as [Vec3, Vec3 | undefined]
    const out = b ? add(a, b) : a
    const size = length(out)
    if (size > 1e-3) return sees(along(p, out, probe / size))
  }
  const skins = [item.piece, ...beside].map((k) => k.lines.skin)
  return airAround(skins, p, tangentAt(item.curve, t)).some((way) => sees(along(p, way, probe)))
}
