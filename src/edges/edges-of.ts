import { type Cell, cellDepth } from '../geometry/cell.ts'
import type { Solid } from '../geometry/solid.ts'
import { outwardAt } from '../geometry/surface.ts'
import { coincident } from '../geometry/tolerance.ts'
import { cross, distance, dot, length, type Vec3 } from '../geometry/vector.ts'
import { type Curve, crossings, fullTurn, isClosed, pointAt, type Samples, samplesOf, tangentAt } from './curve.ts'
import { meetingsOf, type Stretch } from './meeting.ts'
import { type Quadric, quadricOf } from './quadric.ts'
import { type Border, bordersAround, type Face, Skin, sameSurface } from './skin.ts'
import { parallel, sameWay, through } from './tolerance.ts'

/** An edge of a solid: a stretch of an exact curve, and the two faces that meet there. */
export interface Edge {
  readonly curve: Curve
  /** Parameters of the ends, `to` > `from`; a whole closed curve spans 2π. */
  readonly from: number
  readonly to: number
  readonly faces: readonly [Face, Face]
  /** The faces are tangent: drawn as a thin line, or not at all. */
  readonly smooth: boolean
}

/** A solid with everything that its views share: worked out once a part. */
export interface LineWork {
  readonly skin: Skin
  readonly edges: readonly Edge[]
}

/** All edges of a solid, exact, in an order that follows from the solid alone. */
export const edgesOf = (solid: Solid): Edge[] => [...lineWorkOf(solid).edges]

/** Line work that is worked out already, by the first cell of the stock. */
const made = new WeakMap<Cell, LineWork[]>()

/** The line work of a solid; a solid of the very same cells is worked out once. */
export function lineWorkOf(solid: Solid): LineWork {
  const first = solid.stock[0]
  const before = first && made.get(first)
  const found = before?.find(
    ({ skin: { solid: s } }) => sameCells(s.stock, solid.stock) && sameCells(s.cuts, solid.cuts),
  )
  if (found) return found
  const skin = new Skin(solid)
  const lines = { skin, edges: curvesOf(skin).flatMap((c) => edgesAlong(skin, c)) }
  if (before) before.push(lines)
  else if (first) made.set(first, [lines])
  return lines
}

const sameCells = (a: readonly Cell[], b: readonly Cell[]): boolean =>
  a.length === b.length && a.every((c, i) => c === b[i])

/** The line work of what a knife leaves of a solid: its own edges as far as they are left, and the new ones. */
export function lineWorkCut({ skin, edges }: LineWork, knife: Cell): LineWork {
  const cut = new Skin({ stock: skin.solid.stock, cuts: [...skin.solid.cuts, knife] })
  const blades = knife.surfaces
  const quadrics = blades.map(quadricOf)
  const left = edges.flatMap((e) => {
    const kept = splitAt(e.curve, e.from, e.to, quadrics).filter(([from, to]) => {
      const p = pointAt(e.curve, (from + to) / 2)
      // What lies in a blade is looked at anew.
      return cellDepth(knife, p) < -through
    })
    return joined(
      e.curve,
      kept.map(([from, to]) => ({ ...e, from, to })),
    )
  })
  const sheets = new Set(blades.map((b) => cut.surfaces.findIndex((s) => sameSurface(s, b))))
  return { skin: cut, edges: [...left, ...curvesOf(cut, sheets).flatMap((c) => edgesAlong(cut, c))] }
}

/** A curve on which surfaces meet, known by itself: a circle on cylinder, cone and plane is there once. */
interface Candidate extends Stretch {
  /** Pairs of sheets that meet in it. */
  readonly pairs: [number, number][]
}

/** Where the sheets of a skin meet; `only`: those of the curves that lie in one of these. */
function curvesOf(skin: Skin, only?: ReadonlySet<number>): Candidate[] {
  const found: Candidate[] = []
  skin.surfaces.forEach((s, i) => {
    for (let k = i + 1; k < skin.surfaces.length; k++) {
      if (only && !only.has(i) && !only.has(k)) continue
      for (const { curve, from, to } of meetingsOf(s, skin.surfaces[k]!)) {
        const same = found.find((f) => sameCurve(f.curve, curve))
        if (same) same.pairs.push([i, k])
        else found.push({ curve, from, to, pairs: [[i, k]] })
      }
    }
  })
  return found
}

/** Whether two curves are one line or one ellipse, whole; meetings are not known again. */
export function sameCurve(a: Curve, b: Curve): boolean {
  if (a.kind === 'line') {
    if (b.kind !== 'line' || length(cross(a.direction, b.direction)) > parallel) return false
    const v: Vec3 = [a.point[0] - b.point[0], a.point[1] - b.point[1], a.point[2] - b.point[2]]
    return length(cross(a.direction, v)) < coincident
  }
  if (a.kind === 'meeting' || b.kind !== 'ellipse' || distance(a.centre, b.centre) > coincident) return false
  const normal = cross(a.u, a.v)
  const [ru, rv, bu, bv] = [a.u, a.v, b.u, b.v].map(length) as [number, number, number, number]
  if (Math.abs(ru - bu) > coincident || Math.abs(rv - bv) > coincident) return false
  if (length(cross(normal, cross(b.u, b.v))) > 1e-9 * (ru * rv) ** 2) return false
  return Math.abs(ru - rv) < coincident || length(cross(a.u, b.u)) < 1e-8 * ru * ru
}

/** Splits a curve where it meets other surfaces and keeps the stretches along which two faces meet. */
function edgesAlong(skin: Skin, { curve, from, to, pairs }: Candidate): Edge[] {
  const own = new Set(pairs.flat())
  const quadrics = quadricsOf(skin)
  const others = quadrics.filter((_, i) => !own.has(i))
  const bounded = splitAt(curve, from, to, others)
  const pieces: Edge[] = []
  for (const [start, end] of bounded) {
    const middle = (start + end) / 2
    const p = pointAt(curve, middle)
    if (!pairs.some(([a, b]) => skin.touches(a, p) && skin.touches(b, p)) || !skin.nearSkin(p)) continue
    const met = edgeAt(bordersAround([skin], p, tangentAt(curve, middle)))
    if (met) pieces.push({ curve, from: start, to: end, ...met })
  }
  return joined(curve, pieces)
}

const known = new WeakMap<Skin, Quadric[]>()

export function quadricsOf(skin: Skin): Quadric[] {
  const made = known.get(skin) ?? skin.surfaces.map(quadricOf)
  known.set(skin, made)
  return made
}

/** Stretches between the places where a curve meets any of the quadrics; none beyond the last ones of a line. */
export function splitAt(
  curve: Curve,
  from: number,
  to: number,
  quadrics: readonly Quadric[],
  samples?: Samples,
): [number, number][] {
  const sampled = curve.kind === 'meeting' ? (samples ?? samplesOf(curve, from, to)) : undefined
  const ts: number[] = []
  for (const q of quadrics) ts.push(...crossings(curve, q, from, to, sampled))
  return between(curve, from, to, ts)
}

/** Stretches between parameters, without those too short to be anything. */
export function between(curve: Curve, from: number, to: number, at: readonly number[]): [number, number][] {
  const ts = [...at].sort((a, b) => a - b)
  if (!isClosed(curve) || ts.length === 0 || to - from < fullTurn - 1e-12) {
    ts.unshift(from)
    ts.push(to)
  } else ts.push(ts[0]! + fullTurn)
  const out: [number, number][] = []
  for (let i = 1; i < ts.length; i++) {
    if (spread(curve, ts[i - 1]!, ts[i]!) > 2e-6) out.push([ts[i - 1]!, ts[i]!])
  }
  return out
}

/** How far a stretch reaches at least, mm. */
function spread(curve: Curve, from: number, to: number): number {
  if (curve.kind === 'line') return to - from
  if (curve.kind === 'ellipse') return (to - from) * length(curve.u)
  const [a, m, b] = [from, (from + to) / 2, to].map((t) => pointAt(curve, t)) as [Vec3, Vec3, Vec3]
  return distance(a, m) + distance(m, b)
}

function edgeAt(borders: readonly Border[]): Pick<Edge, 'faces' | 'smooth'> | undefined {
  const [a, b] = [borders[0], borders[borders.length - 1]]
  if (!a || !b || borders.length < 2) return undefined
  const flat = borders.length === 2 && dot(a.direction, b.direction) < -Math.cos(sameWay)
  if (flat && a.sheet === b.sheet) return undefined
  return { faces: [a.face, b.face], smooth: flat }
}

/** Stretches that follow each other between the same faces become one. */
function joined(curve: Curve, pieces: readonly Edge[]): Edge[] {
  const out: Edge[] = []
  for (const piece of pieces) {
    const last = out[out.length - 1]
    if (last && meets(curve, last.to, piece.from) && sameFaces(last, piece)) {
      out[out.length - 1] = { ...last, to: piece.to }
    } else out.push(piece)
  }
  const [first, last] = [out[0], out[out.length - 1]]
  if (first && last && first !== last && isClosed(curve) && sameFaces(first, last)) {
    if (meets(curve, last.to, first.from + fullTurn)) {
      out[0] = { ...last, to: first.to + fullTurn }
      out.pop()
    }
  }
  return out.map((e) => normalised(curve, e))
}

const meets = (curve: Curve, end: number, start: number): boolean =>
  Math.abs(start - end) < 1e-9 || (start > end && spread(curve, end, start) < 1e-5)

function normalised(curve: Curve, e: Edge): Edge {
  if (!isClosed(curve)) return e
  const back = Math.floor(e.from / fullTurn + 1e-12) * fullTurn
  if (e.to - e.from > fullTurn - 1e-9) return { ...e, from: 0, to: fullTurn }
  return back === 0 ? e : { ...e, from: e.from - back, to: e.to - back }
}

function sameFaces(a: Edge, b: Edge): boolean {
  const same = (p: Face, q: Face) =>
    p.side === q.side &&
    (p.surface === q.surface || (p.surface.name === q.surface.name && sameSurface(p.surface, q.surface)))
  const [a0, a1] = a.faces
  const [b0, b1] = b.faces
  return a.smooth === b.smooth && ((same(a0, b0) && same(a1, b1)) || (same(a0, b1) && same(a1, b0)))
}

/** Unit normal of a face towards the air. */
export function outwards(face: Face, p: Vec3): Vec3 {
  const n = outwardAt(face.surface, p)
  return face.side > 0 ? n : [-n[0], -n[1], -n[2]]
}
