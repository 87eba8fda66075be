/**
 * A size worked out from readings, and its slopes: how far the size goes for each unit that a reading, or a size that was taken for
 * granted, is off. Sizes mm and rad, slopes in the units of the two. Exact derivatives, so good for small errors.
 */
export interface Measured<Name extends string> {
  readonly size: number
  readonly slopes: Readonly<Record<Name, number>>
}
