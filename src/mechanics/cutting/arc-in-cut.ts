/** The part of the tip's circle that lies in the work. */
export interface ArcInCut {
  /**
   * Angles from the direction of feed to where the arc begins and ends, rad, the first below the second, negative on
   * the −y side of the path.
   */
  readonly from: number
  readonly to: number
}

/** Work just as wide as the swing is covered: the last digit of a sum must not decide. */
const rounding = 1e-12

/** Widest work, mm, that a circle covers whose centre runs `offset` mm beside its middle; 0 where it covers none. */
export const widestCovered = (radius: number, offset: number): number =>
  Math.max(0, 2 * (radius * (1 + rounding) - Math.abs(offset)))

/**
 * Arc of a circle of `radius` mm whose centre runs `offset` mm beside the middle of work `width` mm wide. Valid where
 * the circle reaches both sides, |offset| + width/2 ≤ radius; throws RangeError elsewhere.
 */
export function arcInCut(radius: number, width: number, offset: number): ArcInCut {
  if (!(width > 0 && Math.abs(offset) + width / 2 <= radius * (1 + 2 * rounding))) {
    throw new RangeError(`a circle of radius ${radius} does not cover ${width} at ${offset}`)
  }
  const angleAt = (y: number) => Math.asin(Math.min(1, Math.max(-1, y / radius)))
  return { from: angleAt(-offset - width / 2), to: angleAt(-offset + width / 2) }
}
