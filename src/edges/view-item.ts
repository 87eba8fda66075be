import { dot, length, scale, type Vec3 } from '../geometry/vector.ts'
import { type Curve, crossings, pointAt, type Samples, samplesOf, turnFrom } from './curve.ts'
import { type LineWork, outwards } from './edges-of.ts'
import { apart2, cross2, dot2, flattened, type Vec2, type ViewFrame } from './entity.ts'
import { flat, type Quadric, sweptEllipse } from './quadric.ts'
import type { Face } from './skin.ts'
import { through } from './tolerance.ts'

/** A part as a view sees it: its solid and edges in the scene's frame. */
export interface Piece {
  readonly id: string
  readonly lines: LineWork
}

/** A stretch of an edge or of an outline of a piece. */
export interface PieceCurve {
  readonly piece: Piece
  readonly curve: Curve
  readonly from: number
  readonly to: number
  readonly faces: readonly Face[]
  /** `edge`: a corner; `smooth`: tangent faces; `outline`: a round face turning away. */
  readonly kind: 'edge' | 'smooth' | 'outline'
}

/** The same as a view sees it: where it lies in the drawing plane, and how near to the eye it comes. */
export interface ViewItem extends PieceCurve {
  readonly low: Vec2
  readonly high: Vec2
  /** How far towards the eye it reaches, and how far away from it, mm along the view's z. */
  readonly nearest: number
  readonly farthest: number
  readonly samples: Samples | undefined
  readonly swept: Quadric | undefined
  /** Whether something can vanish behind it. */
  readonly covers: boolean
}

export function itemOf(view: ViewFrame, item: PieceCurve): ViewItem {
  const { curve, from, to, kind, faces, piece } = item
  const eye = view.z
  let low: Vec2
  let high: Vec2
  let nearest: number
  let farthest: number
  let samples: Samples | undefined
  let swept: Quadric | undefined
  if (curve.kind === 'ellipse') {
    const c = flattened(view, curve.centre)
    const reach = (axis: Vec3) => Math.hypot(dot(axis, curve.u), dot(axis, curve.v))
    const [rx, ry] = [reach(view.x), reach(view.y)]
    low = [c[0] - rx, c[1] - ry]
    high = [c[0] + rx, c[1] + ry]
    const [middle, deep] = [dot(eye, curve.centre), reach(eye)]
    nearest = middle + deep
    farthest = middle - deep
    swept = sweptEllipse(curve.centre, curve.u, curve.v, eye)
  } else {
    samples = curve.kind === 'line' ? undefined : samplesOf(curve, from, to)
    const points = samples?.points ?? [pointAt(curve, from), pointAt(curve, to)]
    const flatPoints = points.map((p) => flattened(view, p))
    // Between samples a curve bulges a little.
    const slack = samples ? 0.02 * apart2(flatPoints[0]!, flatPoints[24]!) + 0.05 : 0
    const [xs, ys] = [flatPoints.map((p) => p[0]), flatPoints.map((p) => p[1])]
    low = [Math.min(...xs) - slack, Math.min(...ys) - slack]
    high = [Math.max(...xs) + slack, Math.max(...ys) + slack]
    const depths = points.map((p) => dot(eye, p))
    nearest = Math.max(...depths) + slack
    farthest = Math.min(...depths) - slack
    if (curve.kind === 'line') {
      const n = crossOf(curve.direction, eye)
      const size = length(n)
      if (size > 1e-9) swept = flat(scale(n, 1 / size), dot(n, curve.point) / size)
    }
  }
  let covers = kind !== 'smooth'
  if (kind === 'edge' && curve.kind === 'line') {
    const p = pointAt(curve, (from + to) / 2)
    const [a, b] = faces.map((f) => dot(outwards(f, p), eye)) as [number, number]
    covers = !((a > 1e-9 && b > 1e-9) || (a < -1e-9 && b < -1e-9))
  }
  return { piece, curve, from, to, kind, faces, low, high, nearest, farthest, samples, swept, covers }
}

const crossOf = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]

/** Whether two boxes of the drawing plane have anything in common. */
export const overlap = (a: { low: Vec2; high: Vec2 }, b: { low: Vec2; high: Vec2 }): boolean =>
  a.low[0] <= b.high[0] + through &&
  b.low[0] <= a.high[0] + through &&
  a.low[1] <= b.high[1] + through &&
  b.low[1] <= a.high[1] + through

/** Parameters of the item at which another one crosses it in the view; `nearer`: only where that is nearer to the eye. */
export function crossedBy(view: ViewFrame, item: ViewItem, other: ViewItem, nearer: boolean): number[] {
  if (item === other && !item.samples) return []
  if (!overlap(item, other) || (nearer && other.nearest < item.farthest - through)) return []
  if (other.swept) {
    return crossings(item.curve, other.swept, item.from, item.to, item.samples).filter((t) =>
      parametersAt(view, other, pointAt(item.curve, t)).some((s) => !nearer || isNearer(view, item, t, other, s)),
    )
  }
  if (!other.samples) return []
  if (item.swept) {
    const { swept } = item
    return crossings(other.curve, swept, other.from, other.to, other.samples).flatMap((s) =>
      parametersAt(view, item, pointAt(other.curve, s)).filter((t) => !nearer || isNearer(view, item, t, other, s)),
    )
  }
  return item.samples
    ? polylineCrossings(view, item, other)
        .filter(([t, s]) => !nearer || isNearer(view, item, t, other, s))
        .map(([t]) => t)
    : []
}

const isNearer = (view: ViewFrame, item: ViewItem, t: number, other: ViewItem, s: number): boolean =>
  dot(view.z, pointAt(other.curve, s)) > dot(view.z, pointAt(item.curve, t)) - through

/** Parameters, within the item, of its points that are seen at the place of `p`, which must lie on its line or ellipse. */
export function parametersAt(view: ViewFrame, { curve, from, to }: ViewItem, p: Vec3): number[] {
  const q = flattened(view, p)
  if (curve.kind === 'line') {
    const d: Vec2 = [dot(view.x, curve.direction), dot(view.y, curve.direction)]
    const o = flattened(view, curve.point)
    const t = dot2(d, [q[0] - o[0], q[1] - o[1]]) / dot2(d, d)
    return t >= from - 1e-6 && t <= to + 1e-6 ? [Math.max(from, Math.min(to, t))] : []
  }
  if (curve.kind !== 'ellipse') return []
  const c = flattened(view, curve.centre)
  const [u, v]: [Vec2, Vec2] = [
    [dot(view.x, curve.u), dot(view.y, curve.u)],
    [dot(view.x, curve.v), dot(view.y, curve.v)],
  ]
  const w: Vec2 = [q[0] - c[0], q[1] - c[1]]
  const area = cross2(u, v)
  let angles: number[]
  if (Math.abs(area) > 1e-9 * Math.max(dot2(u, u), dot2(v, v))) {
    angles = [Math.atan2(cross2(u, w) / area, cross2(w, v) / area)]
  } else {
    // Edge-on: two places, one in front of the other.
    const long = dot2(u, u) > dot2(v, v) ? u : v
    const k = dot2(w, long) / dot2(long, long)
    const [ku, kv] = [dot2(u, long) / dot2(long, long), dot2(v, long) / dot2(long, long)]
    const size = Math.hypot(ku, kv)
    const middle = Math.atan2(kv, ku)
    const half = Math.acos(Math.max(-1, Math.min(1, k / size)))
    angles = [middle - half, middle + half]
  }
  const slack = 1e-6 / length(curve.u)
  return angles
    .map((t) => from - slack + turnFrom(from - slack, t))
    .filter((t) => t <= to + slack)
    .map((t) => Math.max(from, Math.min(to, t)))
}

/** Where two sampled curves cross in the view, as parameters of both. */
function polylineCrossings(view: ViewFrame, a: ViewItem, b: ViewItem): [number, number][] {
  const [ps, qs] = [a, b].map((i) => i.samples!.points.map((p) => flattened(view, p))) as [Vec2[], Vec2[]]
  const out: [number, number][] = []
  for (let i = 1; i < ps.length; i++) {
    const [p0, p1] = [ps[i - 1]!, ps[i]!]
    for (let k = a === b ? i + 2 : 1; k < qs.length; k++) {
      const [q0, q1] = [qs[k - 1]!, qs[k]!]
      const [p, q, w]: Vec2[] = [
        [p1[0] - p0[0], p1[1] - p0[1]],
        [q1[0] - q0[0], q1[1] - q0[1]],
        [q0[0] - p0[0], q0[1] - p0[1]],
      ]
      const area = cross2(p!, q!)
      if (area === 0) continue
      const [s, t] = [cross2(w!, q!) / area, cross2(w!, p!) / area]
      if (s < -0.1 || s > 1.1 || t < -0.1 || t > 1.1) continue
      const found = refined(view, a, b, mix(a.samples!.ts, i, s), mix(b.samples!.ts, k, t))
      if (!found) continue
      out.push(found)
      if (a === b) out.push([found[1], found[0]])
    }
  }
  return out
}

const mix = (ts: readonly number[], i: number, k: number): number => ts[i - 1]! + k * (ts[i]! - ts[i - 1]!)

/** Newton's method for a crossing of two curves in the view. */
function refined(view: ViewFrame, a: ViewItem, b: ViewItem, s0: number, t0: number): [number, number] | undefined {
  let [s, t] = [s0, t0]
  const at = (i: ViewItem, x: number) => flattened(view, pointAt(i.curve, x))
  const h = 1e-6
  for (let i = 0; i < 12; i++) {
    const [p, q] = [at(a, s), at(b, t)]
    const w: Vec2 = [q[0] - p[0], q[1] - p[1]]
    if (Math.hypot(...w) < 1e-9) break
    const [p1, q1] = [at(a, s + h), at(b, t + h)]
    const dp: Vec2 = [(p1[0] - p[0]) / h, (p1[1] - p[1]) / h]
    const dq: Vec2 = [(q1[0] - q[0]) / h, (q1[1] - q[1]) / h]
    const area = cross2(dp, dq)
    if (Math.abs(area) < 1e-12) return undefined
    s += cross2(w, dq) / area
    t += cross2(w, dp) / area
    if (!Number.isFinite(s + t)) return undefined
  }
  if (apart2(at(a, s), at(b, t)) > 1e-7) return undefined
  return s >= a.from && s <= a.to && t >= b.from && t <= b.to ? [s, t] : undefined
}
