import type { Surface } from '../geometry/surface.ts'
import { cross, dot, length, scale, type Vec3 } from '../geometry/vector.ts'

/**
 * A quadratic function of space, pᵀAp + 2 b·p + c: zero on a surface, positive outside, in mm near it. Every surface of
 * the part model is one, and so is the wall swept by a straight or elliptic edge along a view direction; where a curve
 * is split is therefore always the same question.
 */
export interface Quadric {
  /** xx, yy, zz, xy, xz, yz of A; undefined for a plane. */
  readonly a: readonly [number, number, number, number, number, number] | undefined
  readonly b: Vec3
  readonly c: number
}

export function quadricOf(s: Surface): Quadric {
  if (s.kind === 'plane') return flat(s.normal, s.offset)
  const [k, at, scaling] = s.kind === 'cylinder' ? [1, s.point, 2 * s.radius] : [1 + s.slope * s.slope, s.apex, 20]
  const [x, y, z] = s.axis
  const a = [1 - k * x * x, 1 - k * y * y, 1 - k * z * z, -k * x * y, -k * x * z, -k * y * z].map(
    (v) => v / scaling,
  ) as unknown as NonNullable<Quadric['a']>
  const m = timesA(a, at)
  return { a, b: scale(m, -1), c: dot(at, m) - (s.kind === 'cylinder' ? s.radius / 2 : 0) }
}

/** The plane through points p with normal·p = offset; `normal` a unit vector. */
export const flat = (normal: Vec3, offset: number): Quadric => ({ a: undefined, b: scale(normal, 0.5), c: -offset })

/**
 * The wall that an ellipse (centre, semi-axes u and v, any two conjugate ones) sweeps along the unit vector `eye`; the
 * plane it sweeps where it is seen edge-on; undefined where it shrinks to a point.
 */
export function sweptEllipse(centre: Vec3, u: Vec3, v: Vec3, eye: Vec3): Quadric | undefined {
  const [us, vs] = [square(u, eye), square(v, eye)]
  const area = dot(cross(us, vs), eye)
  const size = Math.max(length(us), length(vs))
  if (size < 1e-9) return undefined
  if (Math.abs(area) < 1e-9 * size * size) {
    const normal = cross(length(us) > length(vs) ? us : vs, eye)
    const n = scale(normal, 1 / length(normal))
    return flat(n, dot(n, centre))
  }
  // Coordinates along u and v: λ = f·(p − c), μ = g·(p − c); on the wall λ² + μ² = 1.
  const f = scale(cross(vs, eye), 1 / area)
  const g = scale(cross(eye, us), 1 / area)
  const half = size / 2
  const a = [
    f[0] * f[0] + g[0] * g[0],
    f[1] * f[1] + g[1] * g[1],
    f[2] * f[2] + g[2] * g[2],
    f[0] * f[1] + g[0] * g[1],
    f[0] * f[2] + g[0] * g[2],
    f[1] * f[2] + g[1] * g[2],
  ].map((x) => x * half) as unknown as NonNullable<Quadric['a']>
  const m = timesA(a, centre)
  return { a, b: scale(m, -1), c: dot(centre, m) - half }
}

/**
 * The function's values at `height` mm along the unit vector `eye`, wherever along it a point lies: zero on the wall that
 * the section of the surface with that plane sweeps.
 */
export function sweptSection(q: Quadric, eye: Vec3, height: number): Quadric {
  const [x, y, z] = eye
  const b = square(q.b, eye)
  const c = q.c + 2 * height * dot(q.b, eye)
  if (!q.a) return { a: undefined, b, c }
  // With P = 1 − eye eyeᵀ: (P p + h eye)ᵀ A (P p + h eye).
  const az = timesA(q.a, eye)
  const k = dot(az, eye)
  const [xx, yy, zz, xy, xz, yz] = q.a
  const a = [
    xx - 2 * x * az[0] + k * x * x,
    yy - 2 * y * az[1] + k * y * y,
    zz - 2 * z * az[2] + k * z * z,
    xy - x * az[1] - y * az[0] + k * x * y,
    xz - x * az[2] - z * az[0] + k * x * z,
    yz - y * az[2] - z * az[1] + k * y * z,
  ] as const
  const linear = square(az, eye)
  return {
    a,
    b: [b[0] + height * linear[0], b[1] + height * linear[1], b[2] + height * linear[2]],
    c: c + height * height * k,
  }
}

const square = (v: Vec3, to: Vec3): Vec3 => {
  const k = dot(v, to)
  return [v[0] - k * to[0], v[1] - k * to[1], v[2] - k * to[2]]
}

export const timesA = (a: NonNullable<Quadric['a']>, p: Vec3): Vec3 => [
  a[0] * p[0] + a[3] * p[1] + a[4] * p[2],
  a[3] * p[0] + a[1] * p[1] + a[5] * p[2],
  a[4] * p[0] + a[5] * p[1] + a[2] * p[2],
]

/** The value at a point, mm near the surface. */
export function valueAt(q: Quadric, p: Vec3): number {
  const linear = 2 * dot(q.b, p) + q.c
  return q.a ? dot(p, timesA(q.a, p)) + linear : linear
}

/** Coefficients α, β, γ of the value along p + t·d: α t² + 2β t + γ. */
export function alongLine(q: Quadric, p: Vec3, d: Vec3): [number, number, number] {
  if (!q.a) return [0, dot(q.b, d), valueAt(q, p)]
  const m = timesA(q.a, d)
  return [dot(d, m), dot(m, p) + dot(q.b, d), valueAt(q, p)]
}

/** Coefficients of the value round c + u cos t + v sin t: constant, cos t, sin t, cos 2t, sin 2t. */
export function roundEllipse(q: Quadric, c: Vec3, u: Vec3, v: Vec3): [number, number, number, number, number] {
  if (!q.a) return [valueAt(q, c), 2 * dot(q.b, u), 2 * dot(q.b, v), 0, 0]
  const [au, av] = [timesA(q.a, u), timesA(q.a, v)]
  const [uu, vv] = [dot(u, au), dot(v, av)]
  return [
    valueAt(q, c) + (uu + vv) / 2,
    2 * (dot(c, au) + dot(q.b, u)),
    2 * (dot(c, av) + dot(q.b, v)),
    (uu - vv) / 2,
    dot(u, av),
  ]
}
