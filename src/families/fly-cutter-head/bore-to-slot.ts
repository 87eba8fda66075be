import { boreRadius } from './bore-radius.ts'
import type { Layout } from './layout.ts'
import type { Parameters } from './parameters/parameters.ts'

/** The metal between the bottom of a blind bore and the slot floor, in the plane y = 0 of the body frame. */
export interface BoreToSlot {
  /** Thinnest, square to the floor, mm. */
  readonly wall: number
  /** x and z, body frame, of the place of the bore that is nearest, mm. */
  readonly from: readonly [number, number]
}

/** Undefined where the slot does not lie under that place, or no metal is left. */
export function boreToSlot({ bore }: Parameters, l: Layout): BoreToSlot | undefined {
  const { slot, faceAngle, depthOnAxis } = l
  if (bore.kind !== 'blind' || slot.leading * slot.trailing > 0) return undefined
  const r = boreRadius(bore, l)
  const [sin, cos] = [Math.sin(faceAngle), Math.cos(faceAngle)]
  const vent = bore.vent === 'hole' ? bore['vent-size'] / 2 : 0
  const point = bore.bottom === 'drill-point' ? (r - vent) / Math.tan(bore['point-angle'] / 2) : 0
  // The floor rises away from the bit: nearest is the far edge of the bottom, or the point of the drill at its vent.
  const places: (readonly [number, number])[] = [
    [-r, -bore.depth],
    [-vent, -bore.depth - point],
  ]
  const [nearest] = places
    .map(([x, z]) => {
      const up = depthOnAxis + z
      return { from: [x, z] as const, along: x * cos - up * sin, wall: x * sin + up * cos - slot.depth }
    })
    .sort((a, b) => a.wall - b.wall)
  const { from, along, wall } = nearest!
  if (!(wall > 0) || (slot.end && slot.end.x > along)) return undefined
  return { wall, from }
}
