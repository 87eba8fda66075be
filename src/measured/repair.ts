/** Something that can still be done with a part that came out wrong; the cheapest first, the last resort last. */
export interface Repair {
  readonly id: string
  readonly title: string
  /** Whether it would do, with everything as measured. */
  readonly would: 'do' | 'not do' | 'not be needed'
  /** What to do, with sizes, and what it then carries; or why it does not help. */
  readonly says: string
  readonly cautions: readonly string[]
}
