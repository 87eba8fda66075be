import type { HeadDesign } from '../design.ts'
import { halfLengthAt } from '../section.ts'

/** How far from O, along the face, the outside lies on the bit side, mm, beside the plane `y` from the axis. */
export const outerEnd = ({ parameters, layout }: HeadDesign, y: number): number =>
  halfLengthAt(parameters.stock, y) / Math.cos(layout.faceAngle)
