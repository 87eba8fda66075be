import type { Range } from '../../tables/range.ts'

/**
 * Specific cutting force k_c = k_c1.1·h^(−m), MPa, of a chip `thickness` mm thick, above 0 (Kienzle's formula, h in mm).
 * Whether the thickness lies where the formula was measured is for the caller to ask.
 */
export const specificForce = (unitForce: number, exponent: number, thickness: number): number =>
  unitForce * thickness ** -exponent

/**
 * Chips for which one straight line of log k_c against log h is published, mm: 0.05 to 1, from memory of metal-cutting
 * textbooks. Thinner chips take more force than the line says, so it must not be drawn on.
 */
export const kienzleRange: Range = { low: 0.05, high: 1 }
