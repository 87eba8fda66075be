import type { Cell } from '../geometry/cell.ts'
import { gauss } from '../geometry/gauss.ts'
import type { Solid } from '../geometry/solid.ts'
import type { Plane } from '../geometry/surface.ts'
import { cross, length, type Vec3 } from '../geometry/vector.ts'
import type { Volume } from './volume.ts'

/**
 * Volume and centroid of a part turned about the z axis: stock of coaxial cylinders and cones between square faces, end
 * to end, less coaxial holes and flats along the axis. By slices: exact (to rounding) where it is round, better than
 * 1e-6 where a flat crosses a cone. Undefined for anything else, which `volumeOf` measures.
 *
 * Flats of one part must not overlap one another, nor may pieces of stock.
 */
export function turnedVolumeOf(solid: Solid): Volume | undefined {
  const stock = solid.stock.map(pieceOf)
  const cuts = solid.cuts.map(pieceOf)
  if (!stock.every(isKnown) || !cuts.every(isKnown)) return undefined
  if (stock.some((piece) => piece.flat !== undefined || !Number.isFinite(piece.to - piece.from))) return undefined
  let volume = 0
  const moment = [0, 0, 0]
  for (const piece of stock) {
    for (const [from, to] of stretches([piece, ...cuts])) {
      const middle = (from + to) / 2
      if (middle < piece.from || middle > piece.to) continue
      const there = cuts.filter((cut) => cut.from < middle && middle < cut.to)
      for (const [node, weight] of gauss) {
        const z = middle + (node * (to - from)) / 2
        const share = (weight * (to - from)) / 2
        const outside = radiusAt(piece, z)
        const hole = Math.min(outside, Math.max(0, ...there.map((cut) => (cut.flat ? 0 : radiusAt(cut, z)))))
        let area = Math.PI * (outside ** 2 - hole ** 2)
        for (const { flat } of there) {
          if (!flat) continue
          area -= segmentArea(outside, flat.at) - segmentArea(hole, flat.at)
          const turning = segmentMoment(outside, flat.at) - segmentMoment(hole, flat.at)
          moment[0]! -= share * turning * flat.out[0]
          moment[1]! -= share * turning * flat.out[1]
        }
        volume += share * area
        moment[2]! += share * area * z
      }
    }
  }
  if (!(volume > 0)) return { volume: 0, centroid: [0, 0, 0] }
  return { volume, centroid: [moment[0]! / volume, moment[1]! / volume, moment[2]! / volume] }
}

interface Piece {
  /** Ends along z, mm; infinite where it runs on. */
  readonly from: number
  readonly to: number
  /** Radius at z = 0 and its growth with z; the smallest counts. */
  readonly walls: readonly { readonly radius: number; readonly growth: number }[]
  /** Of a flat: what lies beyond `at` mm from the axis in the direction `out`. */
  readonly flat?: { readonly at: number; readonly out: Vec3 } | undefined
}

const isKnown = (piece: Piece | undefined): piece is Piece => piece !== undefined

function pieceOf(cell: Cell): Piece | undefined {
  let [from, to] = [-Infinity, Infinity]
  const walls: { radius: number; growth: number }[] = []
  const sides: Plane[] = []
  for (const s of cell.surfaces) {
    if (s.kind === 'plane') {
      const upright = s.normal[2]
      if (Math.abs(upright) > 1 - 1e-12) {
        if (upright > 0) to = Math.min(to, s.offset)
        else from = Math.max(from, -s.offset)
      } else if (Math.abs(upright) < 1e-12) sides.push(s)
      else return undefined
      continue
    }
    const place = s.kind === 'cylinder' ? s.point : s.apex
    if (Math.abs(s.axis[2]) < 1 - 1e-12 || length(cross(s.axis, place)) > 1e-9) return undefined
    if (s.kind === 'cylinder') walls.push({ radius: s.radius, growth: 0 })
    else {
      const growth = s.slope * Math.sign(s.axis[2])
      walls.push({ radius: -growth * s.apex[2], growth })
      // The nappe ends at its apex.
      if (growth > 0) from = Math.max(from, s.apex[2])
      else to = Math.min(to, s.apex[2])
    }
  }
  if (sides.length === 0) return walls.length > 0 ? { from, to, walls } : undefined
  const [side] = sides
  if (sides.length > 1 || walls.length > 0 || side === undefined) return undefined
  // What is cut away lies inside the plane, on the side its normal points away from.
  return { from, to, walls, flat: { at: -side.offset, out: [-side.normal[0], -side.normal[1], 0] } }
}

const radiusAt = ({ walls }: Piece, z: number): number =>
  Math.max(0, Math.min(...walls.map(({ radius, growth }) => radius + growth * z)))

/** Stretches of z between all ends, and between places where two walls of a piece cross. */
function stretches(pieces: readonly Piece[]): [number, number][] {
  const ends = pieces.flatMap(({ from, to, walls }) => [
    from,
    to,
    ...walls.flatMap((a, i) => walls.slice(i + 1).map((b) => (b.radius - a.radius) / (a.growth - b.growth))),
  ])
  const sorted = [...new Set(ends.filter(Number.isFinite))].sort((a, b) => a - b)
  return sorted.slice(1).map((end, at) => [sorted[at]!, end])
}

/** Area, mm², and first moment about the axis, mm³, of what of a circle lies beyond a chord `at` mm from its centre. */
function segmentArea(radius: number, at: number): number {
  if (at >= radius) return 0
  if (at <= -radius) return Math.PI * radius ** 2
  return radius ** 2 * Math.acos(at / radius) - at * Math.sqrt(radius ** 2 - at ** 2)
}

const segmentMoment = (radius: number, at: number): number =>
  Math.abs(at) >= radius ? 0 : (2 / 3) * (radius ** 2 - at ** 2) ** 1.5
