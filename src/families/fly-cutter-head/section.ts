import type { Parameters } from './parameters/parameters.ts'

/**
 * Half the length of the bar's section along X, at the distance |y| from the mid-plane, mm; 0 outside the bar. On a
 * hexagon slotted point to point the bar ends |y|/√3 inside the corner.
 */
export function halfLengthAt(stock: Parameters['stock'], y: number): number {
  const half = stock.size / 2
  const off = Math.abs(y)
  if (stock.shape === 'round') return off < half ? Math.sqrt(half * half - off * off) : 0
  if (stock.shape === 'square') return off < half ? half : 0
  if (stock['slot-runs'] === 'point-to-point') return off < half ? (2 * half - off) / Math.sqrt(3) : 0
  const flat = half / Math.sqrt(3)
  return off <= flat ? half : Math.max(0, half - (off - flat) * Math.sqrt(3))
}

/** Radius of the circle round the section, mm. */
export function circumscribed(stock: Parameters['stock']): number {
  const half = stock.size / 2
  return stock.shape === 'hexagon' ? (2 * half) / Math.sqrt(3) : stock.shape === 'square' ? half * Math.SQRT2 : half
}

/** Whether corners and not flats stand beside the slot. */
export const cornersBeside = (stock: Parameters['stock']): boolean =>
  stock.shape === 'hexagon' && stock['slot-runs'] === 'flat-to-flat'

/** Across the bar, square to its slot, mm. */
export const acrossSlot = (stock: Parameters['stock']): number =>
  cornersBeside(stock) ? (2 * stock.size) / Math.sqrt(3) : stock.size
