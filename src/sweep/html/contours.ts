import type { Point } from '../../geometry/polygon.ts'

/**
 * Lines of equal height over a grid of values, by marching squares between the points of the grid; each piece has two
 * ends. Where a corner has no value there is no line. `x` and `y`: places of columns and rows.
 */
export function contour(
  values: readonly (readonly (number | null)[])[],
  x: readonly number[],
  y: readonly number[],
  height: number,
): [Point, Point][] {
  const pieces: [Point, Point][] = []
  for (let i = 0; i + 1 < x.length; i++) {
    for (let j = 0; j + 1 < y.length; j++) {
      const corners: readonly [number, number][] = [
        [i, j],
        [i + 1, j],
        [i + 1, j + 1],
        [i, j + 1],
      ]
      const heights = corners.map(([a, b]) => values[a]?.[b] ?? null)
      if (heights.includes(null)) continue
      const crossings = corners.flatMap(([a, b], k): Point[] => {
        const [c, d] = corners[(k + 1) % 4]!
        const [from, to] = [heights[k]!, heights[(k + 1) % 4]!]
        if (from >= height === to >= height) return []
        const share = (height - from) / (to - from)
        return [[x[a]! + share * (x[c]! - x[a]!), y[b]! + share * (y[d]! - y[b]!)]]
      })
      const [p, q, r, s] = crossings
      if (p !== undefined && q !== undefined && r === undefined) pieces.push([p, q])
      if (p === undefined || q === undefined || r === undefined || s === undefined) continue
      // A saddle: the mean of the corners tells which of them hang together.
      const isHigh = heights.reduce<number>((sum, h) => sum + h! / 4, 0) >= height
      if (isHigh === heights[0]! >= height) pieces.push([p, q], [r, s])
      else pieces.push([q, r], [s, p])
    }
  }
  return pieces
}
