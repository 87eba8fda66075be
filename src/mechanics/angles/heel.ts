import { pointFrom } from '../../geometry/frame.ts'
import { coincident } from '../../geometry/tolerance.ts'
import { add, dot, scale, subtract, type Vec3 } from '../../geometry/vector.ts'
import type { Result } from '../../input/problem.ts'
import { formatLength } from '../../quantity/format-length.ts'
import { angleProblem } from './angle-problem.ts'
import type { Corner } from './convex-polyhedron.ts'
import { edgeDirection } from './facets.ts'
import { type BitFace, type GroundBit, liesOnEdge } from './ground-bit.ts'
import { rootsBetween } from './roots-between.ts'
import type { BitPlace } from './swept-radius.ts'

/** The smallest clearance behind an edge, mm: positive clears, 0 rubs, negative cuts where it must not; and where. */
export interface Clearance extends BitPlace {
  readonly clearance: number
}

export interface Heel {
  /**
   * Behind the end edge: how far everything else on the bit stays inside the circle that the end edge itself runs on at
   * the same height, from the tip up to the depth of cut.
   */
  readonly end: Clearance
  /** Behind the work-side edge: how far everything else on the bit stays above the cut plane through the tip. */
  readonly workSide: Clearance
}

/**
 * Smallest clearances of the exact ground bit behind its two edges, for a depth of cut in mm, > 0, no more than the end
 * edge reaches up.
 *
 * The clearance is 0 on an edge and opens behind it, so what counts is where it is smallest again: at the heel, the far
 * end of the flank as high up as the work reaches, or wherever the bit stands out (any such place is found, and then the
 * figure is negative and the worst). Exact: at one height the largest radius is at a corner of the section, so on an
 * edge of the bit; along each, the clearance is least at an end or where its derivative is 0, a quartic. Behind an end
 * edge that is upright the edge's circle is the tip's.
 *
 * The nose is taken as sharp, and feed is left out: over the angle θ from edge to heel it brings the wall f·θ/2π nearer.
 * Problems: an end edge that does not go up, or not as far as the depth of cut. Throws RangeError for a depth not above 0.
 */
export function heelOf(bit: GroundBit, depthOfCut: number): Result<Heel> {
  if (!(depthOfCut > 0 && Number.isFinite(depthOfCut))) {
    throw new RangeError(`depth of cut: ${depthOfCut} mm must be above 0`)
  }
  const { tip, normals, head, tail } = bit
  const up = upOf(bit)
  const endEdge = edgeDirection(normals.rake, normals.end, normals.workSide)
  const rise = dot(endEdge, up)
  const top = endEdgeReach(bit)
  if (!(rise > 0) || top < depthOfCut - coincident) {
    const problem = angleProblem(
      'depthOfCut',
      'out-of-range',
      formatLength(depthOfCut, 'mm'),
      `up to ${formatLength(rise > 0 ? top : 0, 'mm')}, as far as the end edge reaches up`,
    )
    return { ok: false, problems: [problem] }
  }

  const bodies = tail === undefined ? [head] : [head, tail]
  const within = Math.min(depthOfCut, top)
  let end: Clearance | undefined
  for (const [from, to] of bodies.flatMap((body) => body.edges)) {
    const line = alongEdge(bit, from, to, up, scale(endEdge, 1 / rise))
    for (const t of line.worthLooking(within)) {
      const at = add(from.at, scale(subtract(to.at, from.at), t))
      if (liesOnEdge(normals, 'end', at)) continue
      const clearance = line.clearance(t)
      if (end !== undefined && clearance >= end.clearance) continue
      end = { clearance, at: pointFrom(tip.bit, at), between: facesAt(from, to, t) }
    }
  }

  let workSide: Clearance | undefined
  for (const { at, between } of bodies.flatMap((body) => body.corners)) {
    const clearance = dot(at, up)
    if (liesOnEdge(normals, 'workSide', at) && clearance > -coincident) continue
    if (workSide !== undefined && clearance >= workSide.clearance) continue
    workSide = { clearance, at: pointFrom(tip.bit, at), between }
  }
  if (end === undefined || workSide === undefined) throw new RangeError('heel: a bit with nothing behind its edges')
  return { ok: true, value: { end, workSide } }
}

/** How far above the cut plane the end edge reaches, mm: no deeper can the bit cut. 0 where it does not go up at all. */
export function endEdgeReach(bit: GroundBit): number {
  const up = upOf(bit)
  const ends = bit.head.corners.filter(({ at }) => liesOnEdge(bit.normals, 'end', at))
  return Math.max(0, ...ends.map(({ at }) => dot(at, up)))
}

/** Up the spindle axis, in the bit's own frame. */
const upOf = ({ tip }: GroundBit): Vec3 => [tip.bit.x[2], tip.bit.y[2], tip.bit.z[2]]

/** The clearance along one edge of the bit, t from 0 to 1; `climb`: along the end edge, one mm up. */
function alongEdge(
  { tip }: GroundBit,
  from: Corner<BitFace>,
  to: Corner<BitFace>,
  up: Vec3,
  climb: Vec3,
): { clearance: (t: number) => number; worthLooking: (within: number) => number[] } {
  const height = dot(from.at, up)
  const gain = dot(to.at, up) - height
  const start = pointFrom(tip.bit, from.at)
  const own = squaredRadius(start, subtract(pointFrom(tip.bit, to.at), start))
  const edgeRun = subtract(pointFrom(tip.bit, climb), tip.point)
  const edge = squaredRadius(add(tip.point, scale(edgeRun, height)), scale(edgeRun, gain))
  const slopes = (t: number) => [
    slope(edge, t) / Math.sqrt(value(edge, t)),
    slope(own, t) / Math.sqrt(Math.max(value(own, t), 1e-300)),
  ]
  return {
    clearance: (t) => Math.sqrt(value(edge, t)) - Math.sqrt(Math.max(0, value(own, t))),
    worthLooking: (within) => {
      // Heights within 1e-9 mm of the cut plane belong to it.
      const [low, high] = stretch(height, gain, -1e-9, within)
      if (low > high) return []
      // √edge − √own has a turning point where edge′²·own = own′²·edge and the two derivatives have the same sign.
      const square = (q: Quadratic): Quadratic => [q[1] * q[1], 4 * q[1] * q[2], 4 * q[2] * q[2]]
      const [one, other] = [product(square(edge), own), product(square(own), edge)]
      const turns = rootsBetween(
        one.map((c, at) => c - other[at]!),
        low,
        high,
      ).filter((t) => {
        const [outer, inner] = slopes(t)
        return outer! * inner! >= 0
      })
      return [low, ...turns, high]
    },
  }
}

/** c₀ + c₁t + c₂t². */
type Quadratic = readonly [number, number, number]

const value = ([a, b, c]: Quadratic, t: number): number => a + t * (b + t * c)
const slope = ([, b, c]: Quadratic, t: number): number => b + 2 * c * t

/** Squared distance from the spindle axis of `start` + t·`run`. */
const squaredRadius = (start: Vec3, run: Vec3): Quadratic => [
  start[0] * start[0] + start[1] * start[1],
  2 * (start[0] * run[0] + start[1] * run[1]),
  run[0] * run[0] + run[1] * run[1],
]

function product(p: Quadratic, q: Quadratic): number[] {
  return [
    p[0] * q[0],
    p[0] * q[1] + p[1] * q[0],
    p[0] * q[2] + p[1] * q[1] + p[2] * q[0],
    p[1] * q[2] + p[2] * q[1],
    p[2] * q[2],
  ]
}

/** Part of t from 0 to 1 in which `height` + t·`gain` lies between `least` and `most`; empty where low > high. */
function stretch(height: number, gain: number, least: number, most: number): [low: number, high: number] {
  if (Math.abs(gain) < 1e-12) return height >= least && height <= most ? [0, 1] : [1, 0]
  const [a, b] = [(least - height) / gain, (most - height) / gain]
  return [Math.max(0, Math.min(a, b)), Math.min(1, Math.max(a, b))]
}

/** Faces that a place on an edge lies in: all that meet at a corner, the two along the edge elsewhere. */
function facesAt(from: Corner<BitFace>, to: Corner<BitFace>, t: number): readonly BitFace[] {
  if (t === 0) return from.between
  if (t === 1) return to.between
  return from.between.filter((face) => to.between.includes(face))
}
