import { pointFrom } from '../../../geometry/frame.ts'
import { gauss } from '../../../geometry/gauss.ts'
import type { Vec3 } from '../../../geometry/vector.ts'
import type { Volume } from '../../../solid/volume.ts'
import { faceFrame } from '../frames.ts'
import type { Layout } from '../layout.ts'
import type { Parameters } from '../parameters/parameters.ts'
import { halfLengthAt } from '../section.ts'
import { type Slice, slicesOf } from '../slices.ts'

/**
 * Volume, mm³, and centroid of the bar with its face, slot and step and no hole, body frame: slice by slice along the
 * slot, in closed form along X and Z, which five nodes integrate along Y exactly (round bar: to 1e-8). Undefined where a
 * cut comes out of the mounting face or leaves a corner of the far end, where a stopped slot does not end in whole metal,
 * or where slot and step run into each other.
 */
export function milledBarOf(p: Parameters, l: Layout): Volume | undefined {
  const slices = slicesOf(p, l)
  if (!slices.every((slice) => isWhole(slice, l))) return undefined
  const sums = { volume: 0, x: 0, y: 0, z: 0 }
  for (const slice of slices) addSlice(sums, slice, p, l)
  if (l.slot.end) addCorners(sums, l)
  const { volume, x, y, z } = sums
  return volume > 0 ? { volume, centroid: [x / volume, y / volume, z / volume] } : undefined
}

/** Volume and first moments, mm³ and mm⁴. */
interface Sums {
  volume: number
  x: number
  y: number
  z: number
}

function isWhole({ longest, shortest, inSlot, underStep }: Slice, l: Layout): boolean {
  const { slot, faceAngle } = l
  if (inSlot && underStep > 0) return false
  const depth = depthOver(l, inSlot ? slot.depth : underStep)
  const rise = longest * Math.tan(faceAngle)
  // Beyond the end of a stopped slot the metal goes down to the face.
  const deepest = inSlot && slot.end ? depthOver(l, 0) : depth
  if (depth - rise < 0 || deepest + rise > l.prismLength) return false
  if (!inSlot || !slot.end) return true
  const [from, to] = [slot.end.x, slot.end.x + slot.end.radius].map((x) => x * Math.cos(faceAngle))
  return from! >= -shortest && to! + slot.depth * Math.sin(faceAngle) <= shortest
}

/** Depth on the axis below the mounting face of a floor so far above the angled face, mm. */
const depthOver = ({ depthOnAxis, faceAngle }: Layout, cut: number): number => depthOnAxis - cut / Math.cos(faceAngle)

function addSlice(sums: Sums, { from, to, inSlot, underStep }: Slice, { stock }: Parameters, l: Layout): void {
  const stopped = inSlot && l.slot.end !== undefined
  const depth = depthOver(l, inSlot && !stopped ? l.slot.depth : underStep)
  const slope = Math.tan(l.faceAngle)
  for (const [y, across] of nodes(from, to, stock)) {
    const half = halfLengthAt(stock, y)
    // The floor lies depth + x·slope below the mounting face; x runs from −half to half.
    const [lengthwise, squares] = [2 * half, (2 * half ** 3) / 3]
    const area = lengthwise * depth
    sums.volume += across * area
    sums.x += across * squares * slope
    sums.y += across * area * y
    sums.z -= (across * (lengthwise * depth ** 2 + squares * slope ** 2)) / 2
    if (stopped) takeSlot(sums, y, across, half, l)
  }
}

/** Nodes in y and the width that each stands for, mm; on a round bar spread by the angle at its centre. */
function nodes(from: number, to: number, stock: Parameters['stock']): [y: number, across: number][] {
  if (stock.shape !== 'round') {
    return gauss.map(([node, weight]) => [(from + to + node * (to - from)) / 2, (weight * (to - from)) / 2])
  }
  const radius = stock.size / 2
  const [first, last] = [Math.asin(from / radius), Math.asin(to / radius)]
  return gauss.map(([node, weight]) => {
    const angle = (first + last + node * (last - first)) / 2
    return [radius * Math.sin(angle), (weight * (last - first) * radius * Math.cos(angle)) / 2]
  })
}

/** Takes away what a stopped slot with a square end takes at y, from its end out of the bit side. */
function takeSlot(sums: Sums, y: number, across: number, half: number, { slot, faceAngle, depthOnAxis }: Layout): void {
  const [sin, cos] = [Math.sin(faceAngle), Math.cos(faceAngle)]
  const end = slot.end!.x
  for (const [node, weight] of gauss) {
    // In the face frame: z above the face, x from the end of the slot to where the bar ends.
    const z = ((1 + node) * slot.depth) / 2
    const outside = (half - z * sin) / cos
    const area = (across * weight * slot.depth * (outside - end)) / 2
    const x = (outside + end) / 2
    sums.volume -= area
    sums.x -= area * (x * cos + z * sin)
    sums.y -= area * y
    sums.z -= area * (z * cos - x * sin - depthOnAxis)
  }
}

/** Puts back what the round end of a stopped slot leaves in its two corners. */
function addCorners(sums: Sums, { slot, hand, faceAngle, depthOnAxis }: Layout): void {
  const { x, radius } = slot.end!
  const volume = (1 - Math.PI / 4) * radius ** 2 * slot.depth
  // Centroid of what is left between a square corner and the circle in it, from either side.
  const off = (radius * (10 - 3 * Math.PI)) / (12 - 3 * Math.PI)
  for (const y of [slot.leading - hand * off, slot.trailing + hand * off]) {
    const at: Vec3 = pointFrom(faceFrame(faceAngle, depthOnAxis), [x + off, y, slot.depth / 2])
    sums.volume += volume
    sums.x += volume * at[0]
    sums.y += volume * at[1]
    sums.z += volume * at[2]
  }
}
