import type { Triangles } from './triangles.ts'

type Vec3 = readonly [number, number, number]

/**
 * Signed handedness of a closed mesh, a pure number: with u the integral of r|r|² about the centroid and M the tensor of
 * second moments, the triple product u · (Mu × M²u), made free of size. Turning or moving the body does not change
 * it, mirroring turns its sign, and a body that is its own mirror image has 0.
 */
export function chirality(mesh: Triangles): number {
  const whole = moments(mesh, [0, 0, 0])
  const centre = whole.first.map((m) => m / whole.volume) as unknown as Vec3
  const { second, skew } = moments(mesh, centre)
  const times = (v: Vec3): Vec3 => second.map((row) => dot(row, v)) as unknown as Vec3
  const mu = times(skew)
  const mmu = times(mu)
  return dot(skew, cross(mu, mmu)) / (norm(skew) * norm(mu) * norm(mmu))
}

/** Volume, first and second moments and the integral of r|r|² about a point. */
function moments({ coordinates, corners }: Triangles, about: Vec3) {
  const at = (i: number): Vec3 => {
    const o = 3 * corners[i]!
    return [coordinates[o]! - about[0], coordinates[o + 1]! - about[1], coordinates[o + 2]! - about[2]]
  }
  let volume = 0
  const first = [0, 0, 0]
  const second: [number, number, number][] = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ]
  const skew: [number, number, number] = [0, 0, 0]
  for (let t = 0; t < corners.length; t += 3) {
    const [a, b, c] = [at(t), at(t + 1), at(t + 2)]
    // Tetrahedron from the point to the triangle; what is homogeneous of degree n integrates to 3V/(n+3) times its
    // mean over the triangle.
    const v = dot(a, cross(b, c)) / 6
    volume += v
    for (const [wa, wb, wc, weight] of cubicRule) {
      const p: Vec3 = [
        wa * a[0] + wb * b[0] + wc * c[0],
        wa * a[1] + wb * b[1] + wc * c[1],
        wa * a[2] + wb * b[2] + wc * c[2],
      ]
      const square = dot(p, p)
      for (const i of [0, 1, 2] as const) {
        first[i]! += (3 / 4) * v * weight * p[i]
        skew[i] += (1 / 2) * v * weight * p[i] * square
        for (const j of [0, 1, 2] as const) second[i]![j] += (3 / 5) * v * weight * p[i] * p[j]
      }
    }
  }
  return { volume, first, second, skew }
}

/** Four points of a triangle and their weights: exact for cubics. */
const cubicRule: readonly (readonly [number, number, number, number])[] = [
  [1 / 3, 1 / 3, 1 / 3, -27 / 48],
  [0.6, 0.2, 0.2, 25 / 48],
  [0.2, 0.6, 0.2, 25 / 48],
  [0.2, 0.2, 0.6, 25 / 48],
]

const norm = (a: Vec3) => Math.sqrt(dot(a, a))
const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
