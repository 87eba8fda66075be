import type { Solid } from '../geometry/solid.ts'
import { add, cross, distance, dot, scale, subtract, type Vec3 } from '../geometry/vector.ts'
import { boundaryOf } from './boundary.ts'
import type { Polygon } from './polygon.ts'

export interface Volume {
  /** mm³ */
  readonly volume: number
  /** Centroid, mm, in the solid's frame. */
  readonly centroid: Vec3
}

/**
 * Volume and centroid of the true round-faced solid, not of a mesh: the skin is made with 24 and with 48 flats a turn that
 * enclose the circle's own area (fewer do where every round face is whole), and the rest of the error (which falls with the
 * fourth power of the number of flats or faster) is extrapolated away. Relative error at most 1.5e-5 on the shapes tested
 * against an exact kernel.
 */
export function volumeOf(solid: Solid): Volume {
  const coarse = enclosed(boundaryOf(solid, { kind: 'equal-area', flats: 24 }))
  const few = enclosed(boundaryOf(solid, { kind: 'equal-area', flats: 8 }))
  // Every round face is whole: any number of flats gives the same.
  const same = Math.abs(few.volume - coarse.volume) < 1e-9 * coarse.volume
  const balanced = distance(few.moment, coarse.moment) < 1e-7 * coarse.volume
  if (same && balanced) return volumeFrom(coarse.volume, coarse.moment)
  const fine = enclosed(boundaryOf(solid, { kind: 'equal-area', flats: 48 }))
  const better = (f: number, c: number) => f + (f - c) / 15
  const volume = better(fine.volume, coarse.volume)
  const moment = [0, 1, 2].map((k) => better(fine.moment[k]!, coarse.moment[k]!)) as unknown as Vec3
  return volumeFrom(volume, moment)
}

/**
 * The same from one skin of fewer flats, in a tenth of the time and less: eight a turn, sixteen where the stock itself is
 * round. Exact where every round face is whole; where one is cut, off by as much as so few flats of the circle's own
 * area are. Over 300 random heads the first moment was off by no more than 2e-4 of volume times bar size, by 1e-6 (flat
 * bar) and 2e-5 (round bar) in the middle.
 */
export function quickVolumeOf(solid: Solid): Volume {
  const round = solid.stock.some((cell) => cell.surfaces.some((s) => s.kind !== 'plane'))
  const { volume, moment } = enclosed(boundaryOf(solid, { kind: 'equal-area', flats: round ? 16 : 8 }))
  return volumeFrom(volume, moment)
}

const volumeFrom = (volume: number, moment: Vec3): Volume => ({
  volume,
  centroid: volume > 0 ? scale(moment, 1 / volume) : [0, 0, 0],
})

/** Volume (mm³) and first moment (mm⁴) inside a skin, by the divergence theorem. */
export function enclosed(skin: readonly Polygon[]): { volume: number; moment: Vec3 } {
  let volume = 0
  let moment: Vec3 = [0, 0, 0]
  const origin = skin[0]?.corners[0] ?? [0, 0, 0]
  for (const { corners } of skin) {
    const a = subtract(corners[0]!, origin)
    for (let i = 1; i + 1 < corners.length; i++) {
      const b = subtract(corners[i]!, origin)
      const c = subtract(corners[i + 1]!, origin)
      const v = dot(a, cross(b, c)) / 6
      volume += v
      moment = add(moment, scale(add(add(a, b), c), v / 4))
    }
  }
  return { volume, moment: add(moment, scale(origin, volume)) }
}
