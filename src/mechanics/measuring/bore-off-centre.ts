import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'

/** Walls of two flats opposite each other. */
export interface OppositeWalls {
  /** Of the first flat's outward normal, rad, anticlockwise from X. */
  readonly direction: number
  /** Metal between the bore and that flat, mm. */
  readonly wall: number
  /** The same on the other side. */
  readonly opposite: number
}

/** Where the bore's axis lies from the middle of the flats, mm, and how far apart, all told, the pairs are about it. */
export interface BoreOffCentre {
  readonly x: number
  readonly y: number
  readonly eccentricity: number
  /** Largest difference between a pair's own answer and the common one, mm: an error of reading, or a bar that is not true. */
  readonly disagreement: number
}

/** Pairs of flats nearer to parallel than this do not say where the bore lies along them: sine of the angle between. */
const leastApart = 0.1

/**
 * Where a bore lies in a bar with flats, from the walls left beside it. The bore is thicker-walled on the side it has gone away from: along the
 * direction of a pair it lies (opposite − wall)/2 from the middle, whatever the sizes of bore and bar. Two pairs give both ways; more are evened
 * out by least squares (for the three of a hexagon x = ⅔·Σ eᵢ·cos φᵢ). Problems: fewer than two directions, walls that are not above 0.
 */
export function boreOffCentre(pairs: readonly OppositeWalls[]): Result<BoreOffCentre> {
  const faults = new InputFaults()
  for (const [i, { direction, wall, opposite }] of pairs.entries()) {
    faults.keeps(`pairs.${i}.direction`, direction, 'angle', {})
    faults.keeps(`pairs.${i}.wall`, wall, 'length', { above: 0 })
    faults.keeps(`pairs.${i}.opposite`, opposite, 'length', { above: 0 })
  }
  const seen = pairs.map(({ direction, wall, opposite }) => ({
    c: Math.cos(direction),
    s: Math.sin(direction),
    e: (opposite - wall) / 2,
  }))
  const apart = Math.max(0, ...seen.flatMap((a) => seen.map((b) => Math.abs(a.c * b.s - a.s * b.c))))
  if (apart < leastApart) {
    faults.add('pairs', 'missing-key', 'walls in one direction', 'walls of two pairs of flats that are not parallel')
  }
  return faults.result(() => {
    const sum = (f: (p: (typeof seen)[number]) => number) => seen.reduce((total, p) => total + f(p), 0)
    const [cc, ss, cs] = [sum((p) => p.c * p.c), sum((p) => p.s * p.s), sum((p) => p.c * p.s)]
    const [ce, se] = [sum((p) => p.c * p.e), sum((p) => p.s * p.e)]
    const det = cc * ss - cs * cs
    const [x, y] = [(ce * ss - se * cs) / det, (se * cc - ce * cs) / det]
    return {
      x,
      y,
      eccentricity: Math.hypot(x, y),
      disagreement: Math.max(...seen.map((p) => Math.abs(p.c * x + p.s * y - p.e))),
    }
  })
}
