import type { Drawing } from './drawing.ts'
import type { Reading, Readings } from './reading.ts'

/** One kind of picture: what it is called, which numbers it shows, how it is drawn. */
export interface Picture<T> {
  readonly title: string
  /** Every number that it shows. */
  readonly readings: (data: T, make: Readings) => readonly Reading[]
  /** `show`: the text of a reading. The picture writes no number that is not one. */
  readonly draw: (data: T, show: Show) => DrawnPicture
}

/**
 * Text of the reading with that id, with its unit; `exact`: a length to the last digit that a micrometer reads. Throws
 * RangeError where there is no such reading.
 */
export type Show = (id: string, exact?: 'exact') => string

export interface DrawnPicture {
  readonly drawing: Drawing
  /** What it shows, in a sentence or two, for those who cannot see it; stands under the picture too. */
  readonly says: string
}
