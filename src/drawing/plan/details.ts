import { clipped } from '../../edges/clip.ts'
import type { Entity as Edge } from '../../edges/entity.ts'
import type { DimensionRequest } from '../dimensions/request.ts'
import { boxOf } from '../dimensions/room.ts'
import { hatchLoops, segmentsOf } from '../dimensions/sketch.ts'
import type { Curve, Entity, Point } from '../entity.ts'
import { standardScales } from '../sheet/scale.ts'
import type { LayerName } from '../style.ts'
import type { Detail, ViewGroup, ViewPlan } from './sheet-plan.ts'
import { drawnEdge } from './view-lines.ts'

/** What measures less than this on paper is shown larger, and how large it then is at least, mm (common practice, no source). */
const tooSmall = 2
const clear = 4

/**
 * The groups with what is too small at that scale drawn larger: whole views where they stand, each detail in a group of its
 * own; none larger on paper than `most` mm.
 */
export function withDetails(groups: readonly ViewGroup[], scale: number, most: number): ViewGroup[] {
  const apart: ViewGroup[] = []
  const whole = groups.map((group) => ({
    rows: group.rows.map((row) =>
      row.map((view) => {
        if (!view) return view
        if (view.smallest !== undefined && view.smallest * scale < tooSmall) {
          return { ...view, enlarged: enlarging(view.smallest, largestOf(view.lines), scale, most) }
        }
        if (!view.details) return view
        const shown = view.details.map((d) => ({
          d,
          factor: d.smallest * scale < tooSmall ? enlarging(d.smallest, 2 * d.radius, scale, most) : 1,
        }))
        for (const { d, factor } of shown) if (factor > 1) apart.push({ rows: [[detailView(view, d, factor)]] })
        return {
          ...view,
          requests: [
            ...view.requests,
            ...shown.flatMap(({ d, factor }) => (factor > 1 ? [calledOut(view, d)] : d.requests)),
          ],
          lines: [
            ...view.lines,
            ...shown.flatMap(({ d, factor }): Entity<LayerName>[] => (factor > 1 ? [border(d)] : [])),
          ],
        }
      }),
    ),
  }))
  return [...whole, ...apart]
}

/** The next standard scale at which it can be seen, or the largest at which the whole has room, over the scale of the sheet. */
function enlarging(smallest: number, whole: number, scale: number, most: number): number {
  const fits = standardScales.filter((s) => s >= scale && s * whole <= most)
  const seen = fits.findLast((s) => s * smallest >= clear) ?? fits[0] ?? scale
  return seen / scale
}

/** Width or height of line work, whichever is more, mm of the model. */
export function largestOf(lines: readonly Entity<LayerName>[]): number {
  const { low, high } = boxOf(segmentsOf(lines).flat())
  return Math.max(high[0] - low[0], high[1] - low[1])
}

/** The circle round what is drawn larger. */
export const border = ({ center, radius }: Pick<Detail, 'center' | 'radius'>): Entity<LayerName> => ({
  kind: 'circle',
  layer: 'datum',
  center,
  radius,
})

/** The letter of a detail at its border, towards where it was asked for. */
const calledOut = (view: ViewPlan, { letter, center, radius, toward }: Detail): DimensionRequest => ({
  kind: 'note',
  id: `detail-${letter}@${view.id}`,
  text: [letter],
  value: 0,
  to: [center[0] + radius * Math.cos(toward), center[1] + radius * Math.sin(toward)],
  toward,
})

function detailView(view: ViewPlan, detail: Detail, factor: number): ViewPlan {
  const { letter, center, radius, requests, says } = detail
  return {
    id: `detail-${letter}`,
    caption: [letter, says],
    enlarged: factor,
    lines: [...view.lines.flatMap((e) => insideCircle(e, center, radius)), border(detail)],
    requests,
  }
}

/** What of line work lies within a circle; text and arrows are left out. */
export function insideCircle(e: Entity<LayerName>, centre: Point, radius: number): Entity<LayerName>[] {
  if (e.kind === 'text' || e.kind === 'arrow' || e.kind === 'polyline') return []
  if (e.kind !== 'hatch')
    return clipped([edgeOf(e)], { kind: 'circle', centre, radius }).map((c) => drawnEdge(c, e.layer))
  const loops = hatchLoops(e).flatMap((loop) => {
    const kept = cutToCircle(loop, centre, radius)
    if (kept.length < 3) return []
    return [kept.map((from, i) => ({ kind: 'line' as const, layer: e.layer, from, to: kept[(i + 1) % kept.length]! }))]
  })
  return loops.length === 0 ? [] : [{ ...e, loops }]
}

function edgeOf(e: Curve<LayerName>): Edge {
  if (e.kind === 'line') return e
  const { center, ...rest } = e
  return { ...rest, centre: center } as Edge
}

/** Sides of the figure that stands for the circle where hatch is cut off. */
const sides = 90

/** A loop cut down to a circle, side by side of a figure with many. */
function cutToCircle(loop: readonly Point[], [x, y]: Point, radius: number): Point[] {
  const corner = (i: number): Point => {
    const angle = (2 * Math.PI * i) / sides
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)]
  }
  let left = loop.filter((p, i) => i === 0 || Math.hypot(p[0] - loop[i - 1]![0], p[1] - loop[i - 1]![1]) > 1e-9)
  for (let i = 0; i < sides && left.length > 0; i++) {
    const [a, b] = [corner(i), corner(i + 1)]
    const depth = (p: Point) => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])
    left = left.flatMap((p, k): Point[] => {
      const q = left[(k + 1) % left.length]!
      const [dp, dq] = [depth(p), depth(q)]
      const t = dp / (dp - dq)
      const cut: Point[] = dp > 0 !== dq > 0 ? [[p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]] : []
      return dp > 0 ? [p, ...cut] : cut
    })
  }
  return left
}
