import type { InterferenceSpan, Limits } from './limits.ts'

/** A bore, the spigot that goes into it, and what that leaves; all lengths mm at 20 °C. */
export interface Fit {
  readonly kind: 'matched' | 'iso-286' | 'ansi-b4-1' | 'limits'
  /** As the trade writes it: `H7/s6`, `FN2`, `matched`, `limits`. */
  readonly name: string
  readonly nominal: number
  /** Diameter of the joint that strength and grip are worked out with: the measured bore where there is one. */
  readonly diameter: number
  readonly bore: Limits
  readonly spigot: Limits
  /** On the diameter, clearance negative. Of a matched fit this is less than bore and spigot limits alone would say. */
  readonly interference: InterferenceSpan
  /** Where the limits come from. */
  readonly source: string
}

/** How far a size may lie from the nominal one before it is a slip of the pen: a wrong unit, another bore. */
export const strangeSize = 0.05
