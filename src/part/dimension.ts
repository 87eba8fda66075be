/** How far a finished size may lie from its nominal one. */
export type Tolerance =
  /** Lower and upper deviation from nominal, in the dimension's own unit (mm or rad). */
  | { readonly kind: 'limits'; readonly lower: number; readonly upper: number }
  /** Left to the general tolerance of the sheet (ISO 2768-1, medium unless said otherwise). */
  | { readonly kind: 'general' }
  /** Not to be machined to: follows from others, shown in brackets. */
  | { readonly kind: 'reference' }

/** A size that a drawing gives, an inspection sheet asks for and a report lists, under one name. */
export interface Dimension {
  /** Unique in its part: `slot.depth`. */
  readonly id: string
  readonly label: string
  readonly kind: 'length' | 'diameter' | 'radius' | 'angle' | 'thread'
  /** Nominal size: mm, or rad for an angle; for a thread its major diameter. */
  readonly value: number
  readonly tolerance: Tolerance
  /** Feature it belongs to. */
  readonly feature: string
  /** Whether a shop can put a tool on it; otherwise it is shown in brackets beside one that can be measured. */
  readonly measurable: boolean
  /** Code of the zone that its limits are, where they come from a fit: `H7`. */
  readonly fitCode?: string
  /** Thread designation as the trade writes it. */
  readonly thread?: string
}
