/**
 * A size worked out from readings, and its slopes: how far the size goes for each unit that a reading, or a size that was taken for
 * granted, is off. Sizes mm and rad, slopes in the units of the two. Exact derivatives, so good for small errors.
 */
export interface Measured<Name extends string> {
  readonly size: number
  readonly slopes: Readonly<Record<Name, number>>
}

/** How far a size may be off, in its own unit; never below 0. */
export interface SizeError {
  /** All errors at their worst together. */
  readonly worst: number
  readonly rootSumSquare: number
  /** What each brings by itself, largest first; those that bring nothing too. */
  readonly parts: readonly { readonly name: string; readonly error: number }[]
}

/**
 * Error of a measured size from the errors of what it was worked out from: |slope| × error each, summed, and by the root of the sum of
 * squares. Errors are half widths, 0 or more, in the units of what they are of; one that is left out is 0. Throws RangeError on a negative error, NaN or
 * infinity.
 */
export function errorOf<Name extends string>(
  { slopes }: Pick<Measured<Name>, 'slopes'>,
  errors: Readonly<Partial<Record<Name, number>>>,
): SizeError {
  const names = Object.keys(slopes) as Name[]
  const parts = names.map((name) => {
    const error = errors[name] ?? 0
    if (!(error >= 0 && Number.isFinite(error))) throw new RangeError(`error of ${name}: ${error}`)
    return { name, error: Math.abs(slopes[name]) * error }
  })
  return {
    worst: parts.reduce((sum, { error }) => sum + error, 0),
    rootSumSquare: Math.hypot(...parts.map(({ error }) => error)),
    parts: parts.sort((a, b) => b.error - a.error),
  }
}
