import type { ViewFrame } from '../../src/edges/entity.ts'
import { box, cellOf, rod } from '../../src/geometry/cell.ts'
import type { Solid } from '../../src/geometry/solid.ts'
import { plane } from '../../src/geometry/surface.ts'
import { cross, unit, type Vec3 } from '../../src/geometry/vector.ts'

export const sides = ['−x', '+x', '−y', '+y', '−z', '+z'] as const
export const up: Vec3 = [0, 0, 1]

export const solid = (stock: Solid['stock'], cuts: Solid['cuts'] = []): Solid => ({ stock, cuts })
export const block = (min: Vec3, max: Vec3) => box(sides, min, max)
export const bar = (from: Vec3, axis: Vec3, length: number, radius: number) =>
  rod({ wall: 'wall', start: 'start', end: 'end' }, from, axis, length, radius)

/** Hexagonal prism of 24 mm across flats and 10 mm length, flats facing ±Y. */
export const hexagon = cellOf(
  ...Array.from({ length: 6 }, (_, i) => {
    const angle = Math.PI / 6 + (i * Math.PI) / 3
    const out: Vec3 = [Math.cos(angle), Math.sin(angle), 0]
    return plane(`flat ${i + 1}`, [12 * out[0], 12 * out[1], 0], out)
  }),
  plane('end', [0, 0, 0], [0, 0, -1]),
  plane('face', [0, 0, 10], up),
)

/** View with the eye towards `z`, and `above` upwards on the sheet as far as may be. */
export function eyeAt(z: Vec3, above: Vec3 = up, origin: Vec3 = [0, 0, 0]): ViewFrame {
  const e = unit(z)
  const x = unit(cross(above, e))
  return { origin, x, y: cross(e, x), z: e }
}

export const standardViews: readonly (readonly [string, ViewFrame])[] = [
  ['from below', eyeAt([0, 0, -1], [0, 1, 0])],
  ['from above', eyeAt([0, 0, 1], [0, 1, 0])],
  ['from −Y', eyeAt([0, -1, 0])],
  ['from +Y', eyeAt([0, 1, 0])],
  ['from the bit side', eyeAt([1, 0, 0])],
  ['from the far side', eyeAt([-1, 0, 0])],
]

export const obliqueViews: readonly (readonly [string, ViewFrame])[] = [
  ['from −Y and below', eyeAt([0.75, -1, -0.55])],
  ['from deep below', eyeAt([-0.35, -0.8, -0.9])],
  ['from +Y and above', eyeAt([0.6, 0.9, 0.47])],
]
