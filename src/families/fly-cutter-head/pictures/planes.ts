import { cellVertices } from '../../../geometry/cell-vertices.ts'
import type { Frame } from '../../../geometry/frame.ts'
import { inPlane, planarSection } from '../../../geometry/planar-section.ts'
import { hull, type Polygon } from '../../../geometry/polygon.ts'
import { type Part, solidOf } from '../../../part/part.ts'
import type { HeadDesign } from '../design.ts'

/** Square to the spindle axis at a height z, seen from the spindle: +X right, +Y up. */
export const levelPlane = (z: number): Frame => ({ origin: [0, 0, z], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] })

/** Along the spindle axis and the slot, seen against +Y: +X right, +Z up. */
export const axialPlane = (y: number): Frame => ({ origin: [0, y, 0], x: [1, 0, 0], y: [0, 0, 1], z: [0, -1, 0] })

/** Along the spindle axis and square to the slot, seen from the bit side: +Y right, +Z up. */
export const crossPlane = (x: number): Frame => ({ origin: [x, 0, 0], x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] })

/** Outside of the bar, from the spindle. */
export const barOutline = (design: HeadDesign): Polygon =>
  design.once('outline of the bar', () => {
    const { stock } = planarSection({ ...solidOf(design.part('body')), cuts: [] }, levelPlane(-1e-3))
    return stock[0] ?? []
  })

/** Shadow of a part with flat sides on a plane. */
export const shadow = (part: Part, frame: Frame): Polygon =>
  hull(solidOf(part).stock.flatMap((cell) => cellVertices(cell).map((p) => inPlane(frame, p))))
