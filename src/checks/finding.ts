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

/** One parameter and what it becomes: internal unit, a word, or whether. */
export interface Change {
  readonly path: string
  readonly to: number | string | boolean
  /** Of a value that the parameters do not have yet. */
  readonly kind?: QuantityKind
}

/**
 * One thing to change. Some cannot be changed alone: the two limits of one size move together and keep their tolerance
 * (`with`), and another kind of fit or arbor brings the values that only it has (`bringing`).
 */
export type FindingLever =
  | { readonly path: string; readonly turn: 'up' | 'down'; readonly with?: readonly string[] }
  | { readonly path: string; readonly choose: string | boolean | number; readonly bringing?: readonly Change[] }

/** A change that was shown to clear a finding. */
export interface Remedy extends Change {
  /** What changes with it; without these it would not do. */
  readonly also?: readonly Change[]
  /** `set bore.depth to 21.5 mm (now 24 mm)`. */
  readonly text: string
}

/** Everything that a remedy changes. */
export const changesOf = ({ path, to, also = [] }: Remedy): readonly Change[] => [{ path, to }, ...also]
