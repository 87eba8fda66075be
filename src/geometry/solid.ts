import { type Cell, cellDepth, cellIntervals } from './cell.ts'
import { type Interval, type Ray, subtractIntervals, uniteIntervals } from './interval.ts'
import { coincident } from './tolerance.ts'
import type { Vec3 } from './vector.ts'

/** The metal of a part: what is in any stock cell and in no cut cell. */
export interface Solid {
  readonly stock: readonly Cell[]
  readonly cuts: readonly Cell[]
}

/** Whether `p` is in the metal. A point on a surface (within 1e-6 mm) may be told either way. */
export const isInside = (solid: Solid, p: Vec3): boolean =>
  solid.stock.some((c) => cellDepth(c, p) > 0) && !solid.cuts.some((c) => cellDepth(c, p) > 0)

/** Stretches of the line that run in metal, ascending; stretches and gaps below 1e-6 mm are not told apart. */
export function solidIntervals(solid: Solid, ray: Ray): Interval[] {
  const stock = uniteIntervals(
    solid.stock.map((c) => cellIntervals(c, ray)),
    coincident,
  )
  if (stock.length === 0) return stock
  const cuts = uniteIntervals(
    solid.cuts.map((c) => cellIntervals(c, ray)),
    coincident,
  )
  return subtractIntervals(stock, cuts, coincident)
}
