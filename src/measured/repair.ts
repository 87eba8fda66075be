/** Something that can still be done with a part that came out wrong; the cheapest first, the last resort last. */
export interface Repair {
  readonly id: string
  readonly title: string
  /** Whether it would do, with everything as measured; `mend a part of it`: more is wrong than what it mends. */
  readonly would: 'do' | 'mend a part of it' | 'not do' | 'not be needed'
  /** What to do, with sizes, and what it then carries; or why it does not help. */
  readonly says: string
  readonly cautions: readonly string[]
}

/** A verdict as pages and terminals say it. */
export const wouldWords: Readonly<Record<Repair['would'], string>> = {
  do: 'would do',
  'mend a part of it': 'would mend a part of it',
  'not do': 'would not do',
  'not be needed': 'not needed',
}
