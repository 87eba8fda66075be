import type { QuantityKind } from '../quantity/kind.ts'

/** stop: would not work, or is unsafe; caution: works, but know this; note: worth knowing. */
export type Level = 'stop' | 'caution' | 'note'

/** A number with what it measures; internal unit of its kind (`count`: a plain number of things). */
export interface Amount {
  readonly value: number
  readonly kind: QuantityKind | 'count'
}

/** What a check has to say about one thing in the design. */
export interface Finding {
  /** Rule, and what it is about: `wall:slot/bore`. The same trouble has the same id in every variant of a design. */
  readonly id: string
  readonly level: Level
  /** One or two sentences, figures in the file's units. */
  readonly text: string
  /** What the design has, and what it should have. */
  readonly figure?: Amount
  readonly limit?: Amount & { readonly reason: string }
  /** Parameters that could clear it, best first: a number to raise or lower, or another choice. */
  readonly levers: readonly FindingLever[]
}

export type FindingLever =
  | { readonly path: string; readonly turn: 'up' | 'down' }
  | { readonly path: string; readonly choose: string }

/** A change of one parameter that was shown to clear a finding. */
export interface Remedy {
  readonly path: string
  /** Internal unit, or the word of a choice. */
  readonly to: number | string
  /** `set bore.depth to 21.5 mm (now 24 mm)`. */
  readonly text: string
}
