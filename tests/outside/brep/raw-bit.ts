import { makeBox, makeCylinder, type Shape3D } from 'replicad'
import { inBody, laidOnFace } from './face-frame.ts'
import type { Figures } from './raw-figures.ts'
import { rawGroundBit } from './raw-ground-bit.ts'

/** The tip: how far out along x of the face, the point in the body frame, and the radius it runs on, mm. */
export function rawTip(figures: Figures) {
  const { bit, slot, slope, hand, corner } = figures
  const z = slot.depth - bit.height + bit.offUnderside
  const y = hand * (slot.ahead - bit.offLeading)
  const x =
    bit.swing === undefined
      ? corner + bit.overhang!
      : (Math.sqrt((bit.swing / 2) ** 2 - y ** 2) - z * Math.sin(slope)) / Math.cos(slope)
  const point = inBody(figures, [x, y, z])
  return { x, point, radius: Math.hypot(point[0], point[1]) }
}

/** The bit in its slot: the blank, and what is ground off it. */
export function rawBit(figures: Figures): Shape3D {
  const { bit, slot, hand } = figures
  const end = rawTip(figures).x + bit.offEnd
  const [a, b] = [hand * slot.ahead, hand * (slot.ahead - bit.width)]
  const blank = makeBox([end - bit.length, Math.min(a, b), slot.depth - bit.height], [end, Math.max(a, b), slot.depth])
  return bit.ground ? rawGroundBit(figures, blank) : laidOnFace(figures, blank)
}

/** The set screws, plain cylinders of the thread's outside diameter, from the side of the bit outwards. */
export function rawScrews(figures: Figures): Shape3D[] {
  const { hand, slot, step, screws, corner, bit } = figures
  const from = hand * (step.leading ? slot.ahead : slot.ahead - bit.width)
  return Array.from({ length: screws.count }, (_, i) =>
    laidOnFace(
      figures,
      makeCylinder(
        screws.major / 2,
        screws.length,
        [corner - screws.first - i * screws.spacing, from, screws.height],
        [0, step.leading ? hand : -hand, 0],
      ),
    ),
  )
}
