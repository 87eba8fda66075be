/** A point or a direction in space, millimetres or dimensionless. */
export type Vec3 = readonly [number, number, number]

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const subtract = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k]
export const negate = (a: Vec3): Vec3 => [-a[0], -a[1], -a[2]]
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
export const length = (a: Vec3): number => Math.hypot(a[0], a[1], a[2])
export const distance = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])
/** Point `p + k·d`. */
export const along = (p: Vec3, d: Vec3, k: number): Vec3 => [p[0] + d[0] * k, p[1] + d[1] * k, p[2] + d[2] * k]
export const middle = (a: Vec3, b: Vec3): Vec3 => scale(add(a, b), 0.5)

/** Unit vector along `a`. Throws a RangeError for a vector shorter than 1e-300: a caller's mistake, never input. */
export function unit(a: Vec3): Vec3 {
  const l = length(a)
  if (!(l > 1e-300)) throw new RangeError('unit: the vector has no direction')
  return scale(a, 1 / l)
}

/** A unit vector square to `axis`, always the same one for the same axis: X where the axis allows it. */
export function squareTo(axis: Vec3): Vec3 {
  const seed: Vec3 = Math.abs(axis[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0]
  return unit(subtract(seed, scale(axis, dot(seed, axis))))
}
