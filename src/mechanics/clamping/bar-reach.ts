import type { BarSection } from '../../tables/bar-section.ts'

/** Whether the slot runs towards corners or towards flats of the bar; a round bar has neither. */
export type SlotRuns = 'point-to-point' | 'flat-to-flat'

/**
 * How far the bar reaches along +X (the way the slot runs) at the distance `y` mm beside its axis, mm; by symmetry −X
 * is the same, and so is −y. Undefined where the line misses the bar. Elementary geometry:
 *
 * hexagon point to point c/2 − |y|/√3 with c across corners; hexagon flat to flat AF/2 up to |y| = AF/(2√3), beyond
 * it √3·(c/2 − |y|); square point to point c/2 − |y|; square flat to flat AF/2; round √(r² − y²).
 */
export function barReach({ shape, size }: BarSection, runs: SlotRuns, y: number): number | undefined {
  const aside = Math.abs(y)
  const half = size / 2
  if (shape === 'round') return aside <= half ? Math.sqrt((half - aside) * (half + aside)) : undefined
  if (shape === 'square') {
    if (runs === 'flat-to-flat') return aside <= half ? half : undefined
    const corner = half * Math.SQRT2
    return aside <= corner ? corner - aside : undefined
  }
  const corner = size / Math.sqrt(3)
  if (runs === 'point-to-point') return aside <= half ? corner - aside / Math.sqrt(3) : undefined
  return aside <= corner ? Math.min(half, Math.sqrt(3) * (corner - aside)) : undefined
}
