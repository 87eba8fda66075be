/**
 * Where the polynomial c₀ + c₁x + c₂x² + … changes sign between `low` and `high`, ascending, to rounding. Between two
 * neighbouring turning points a polynomial changes sign once at most, and its turning points are the same question one
 * degree lower: so none is missed. A polynomial that is 0 throughout has none.
 */
export function rootsBetween(coefficients: readonly number[], low: number, high: number): number[] {
  if (coefficients.length < 2) return []
  const value = (x: number) => coefficients.reduceRight((sum, c) => sum * x + c, 0)
  const derivative = coefficients.slice(1).map((c, at) => c * (at + 1))
  const stops = [low, ...rootsBetween(derivative, low, high), high]
  const roots: number[] = []
  stops.slice(1).forEach((end, at) => {
    let [negative, positive] = value(end) > 0 ? [stops[at]!, end] : [end, stops[at]!]
    if (!(value(negative) < 0 && value(positive) > 0)) return
    for (;;) {
      const middle = (negative + positive) / 2
      if (middle === negative || middle === positive) break
      if (value(middle) < 0) negative = middle
      else positive = middle
    }
    roots.push((negative + positive) / 2)
  })
  return roots
}
