import type { Dimension } from '../part/dimension.ts'

/**
 * How a shop puts a tool on a named size. Where the size itself cannot be reached, `reading` says what the tool is put on
 * and what it then shows: `reading = scale · size + offset`, scale not 0.
 */
export interface Measuring {
  readonly part: string
  readonly dimension: Dimension
  /** Tool and way, in words. */
  readonly how: string
  readonly reading?: { readonly says: string; readonly scale: number; readonly offset: number }
}

/** What the tool shows for a size, in the size's unit. */
export const readingOf = ({ reading }: Pick<Measuring, 'reading'>, size: number): number =>
  reading ? reading.scale * size + reading.offset : size

/** The size that a reading means. */
export const sizeFrom = ({ reading }: Pick<Measuring, 'reading'>, shown: number): number =>
  reading ? (shown - reading.offset) / reading.scale : shown
