import type { Surface } from './surface.ts'
import { cross, dot, subtract, type Vec3 } from './vector.ts'

/** A ray: points `origin + t·direction`; `direction` is a unit vector, so t is in mm; t runs over the whole line. */
export interface Ray {
  readonly origin: Vec3
  readonly direction: Vec3
}

/** Stretch of a ray, from `start` to `end` (mm, may be infinite), with the surfaces that bound it. */
export interface Interval {
  readonly start: number
  readonly end: number
  readonly startsAt: Surface | undefined
  readonly endsAt: Surface | undefined
}

/** Where a ray is inside a surface. A list, because the inside need not stay convex for ever; ascending, disjoint. */
export function intervalsOf(s: Surface, ray: Ray): Interval[] {
  if (s.kind === 'plane') {
    const slope = dot(s.normal, ray.direction)
    const depth = s.offset - dot(s.normal, ray.origin)
    if (Math.abs(slope) < 1e-14) return depth > 0 ? [everything] : []
    const t = depth / slope
    return slope > 0
      ? [{ start: -Infinity, end: t, startsAt: undefined, endsAt: s }]
      : [{ start: t, end: Infinity, startsAt: s, endsAt: undefined }]
  }
  if (s.kind === 'cylinder') {
    const d = cross(s.axis, ray.direction)
    const v = cross(s.axis, subtract(ray.origin, s.point))
    const a = dot(d, d)
    const c = dot(v, v) - s.radius * s.radius
    if (a < 1e-26) return c < 0 ? [everything] : []
    const roots = rootsOf(a, dot(d, v), c)
    return roots ? [{ start: roots[0], end: roots[1], startsAt: s, endsAt: s }] : []
  }
  return coneIntervals(s.apex, s.axis, s.slope, s, ray)
}

const everything: Interval = { start: -Infinity, end: Infinity, startsAt: undefined, endsAt: undefined }

function coneIntervals(apex: Vec3, axis: Vec3, slope: number, s: Surface, ray: Ray): Interval[] {
  const w = subtract(ray.origin, apex)
  const du = dot(ray.direction, axis)
  const wu = dot(w, axis)
  const d = cross(axis, ray.direction)
  const v = cross(axis, w)
  const k2 = slope * slope
  // Inside both nappes: |v + t d|² < k² (wu + t du)².
  const a = dot(d, d) - k2 * du * du
  const b = dot(d, v) - k2 * du * wu
  const c = dot(v, v) - k2 * wu * wu
  const ahead = (t: number) => wu + t * du > 0
  if (Math.abs(a) < 1e-14) {
    // Parallel to a generator: one crossing of one nappe, or none at all (through the apex along the generator).
    if (Math.abs(b) < 1e-14) return []
    const t = -c / (2 * b)
    if (!ahead(t)) return []
    return b > 0
      ? [{ start: -Infinity, end: t, startsAt: undefined, endsAt: s }]
      : [{ start: t, end: Infinity, startsAt: s, endsAt: undefined }]
  }
  const roots = rootsOf(a, b, c)
  if (a > 0) {
    // Crosses one nappe at both roots.
    if (!roots || !ahead((roots[0] + roots[1]) / 2)) return []
    return [{ start: roots[0], end: roots[1], startsAt: s, endsAt: s }]
  }
  // Steeper than the cone: leaves one nappe at one root and enters the other at the next.
  if (!roots) return []
  return du > 0
    ? [{ start: roots[1], end: Infinity, startsAt: s, endsAt: undefined }]
    : [{ start: -Infinity, end: roots[0], startsAt: undefined, endsAt: s }]
}

/** Real roots of a·t² + 2b·t + c, ascending, without cancellation; undefined when there are none or a double one. */
function rootsOf(a: number, b: number, c: number): [number, number] | undefined {
  const disc = b * b - a * c
  if (!(disc > 0)) return undefined
  const q = -(b + Math.sign(b || 1) * Math.sqrt(disc))
  const r0 = q / a
  const r1 = c / q
  return r0 < r1 ? [r0, r1] : [r1, r0]
}

/** Points in both lists (each ascending and disjoint). */
export function intersectIntervals(a: readonly Interval[], b: readonly Interval[]): Interval[] {
  const out: Interval[] = []
  for (const i of a) {
    for (const j of b) {
      const first = i.start >= j.start ? i : j
      const last = i.end <= j.end ? i : j
      if (first.start < last.end) {
        out.push({ start: first.start, startsAt: first.startsAt, end: last.end, endsAt: last.endsAt })
      }
    }
  }
  return out.sort((p, q) => p.start - q.start)
}

/** Points in either list; stretches that meet within `join` mm become one. */
export function uniteIntervals(lists: readonly (readonly Interval[])[], join: number): Interval[] {
  const all = lists.flat().sort((p, q) => p.start - q.start)
  const out: Interval[] = []
  for (const next of all) {
    const last = out[out.length - 1]
    if (!last || next.start > last.end + join) out.push(next)
    else if (next.end > last.end) out[out.length - 1] = { ...last, end: next.end, endsAt: next.endsAt }
  }
  return out
}

/** Points of `a` that are not in `b` (both ascending and disjoint); stretches up to `join` mm long are dropped. */
export function subtractIntervals(a: readonly Interval[], b: readonly Interval[], join: number): Interval[] {
  let rest: Interval[] = [...a]
  for (const cut of b) {
    rest = rest.flatMap((i) => {
      if (cut.end <= i.start || cut.start >= i.end) return [i]
      const before: Interval = { ...i, end: cut.start, endsAt: cut.startsAt }
      const after: Interval = { ...i, start: cut.end, startsAt: cut.endsAt }
      return [before, after].filter((p) => p.end > p.start)
    })
  }
  return rest.filter((i) => i.end - i.start > join)
}
