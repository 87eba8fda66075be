import type { Layout } from './layout.ts'
import type { Parameters } from './parameters/parameters.ts'
import { cornersBeside, halfLengthAt } from './section.ts'

/** A slice of the bar between two upright planes along X, within which the milling cuts are the same all over. */
export interface Slice {
  /** y, mm. */
  readonly from: number
  readonly to: number
  /** Half the largest and the least length of the bar along X, mm. */
  readonly longest: number
  readonly shortest: number
  readonly inSlot: boolean
  /** Depth of the step below the angled face, square to it, mm; 0 beside the step. */
  readonly underStep: number
}

/** The bar from its −Y side to its +Y side, sliced at the walls of slot and step, at the mid-plane and at its corners. */
export function slicesOf({ stock }: Parameters, { slot, step, inscribed }: Layout): Slice[] {
  // A hexagon slotted flat to flat has corners at its sides, and others half as far from the mid-plane.
  const onCorners = cornersBeside(stock)
  const side = onCorners ? inscribed / Math.sqrt(3) : inscribed / 2
  // A round bar is sliced at 45° as well, so that its length bends little within a slice.
  const corner = onCorners ? side / 2 : stock.shape === 'round' ? side * Math.SQRT1_2 : 0
  const walls = [slot.leading, slot.trailing, step.wall].filter((y) => Math.abs(y) < side)
  const cuts = [...new Set([-side, -corner, 0, corner, side, ...walls])].sort((a, b) => a - b)
  return cuts.slice(1).map((to, at): Slice => {
    const from = cuts[at]!
    const middle = (from + to) / 2
    // From just inside: at its far side a bar has no length any more.
    const ends = [from, to].map((y) => halfLengthAt(stock, Math.min(Math.abs(y), side * (1 - 1e-12))))
    return {
      from,
      to,
      longest: Math.max(...ends),
      shortest: Math.min(...ends),
      inSlot: (middle - slot.leading) * (middle - slot.trailing) < 0,
      underStep: (middle - step.wall) * step.towards > 0 ? step.depth : 0,
    }
  })
}
