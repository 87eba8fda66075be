/**
 * How much longer (0.5: half as long again) an edge lasts when its relief goes from `from` to `to` (rad, both above 0
 * and below π/2), where wear of the flank ends its life and the rake is near 0: a worn land of given width has then
 * taken off metal in proportion to the tangent of the relief. Source: Manufacturing Science (a textbook), chapter 4.
 * It says nothing about chipping, which sets the upper end. Throws RangeError outside the range.
 */
export function lifeGainFromRelief(from: number, to: number): number {
  for (const relief of [from, to]) {
    if (!(relief > 0 && relief < Math.PI / 2)) throw new RangeError(`relief: ${relief} rad must be above 0, below π/2`)
  }
  return Math.tan(to) / Math.tan(from) - 1
}
