/**
 * A number for a file: `decimals` places (6 where left out), never −0, so that the last digit of an engine's trigonometry
 * cannot change a byte. Throws RangeError on NaN and infinity: they would go into the file as words.
 */
export function rounded(value: number, decimals = 6): number {
  if (!Number.isFinite(value) || Math.abs(value) > 1e9) throw new RangeError(`not a size for a file: ${value}`)
  const step = 10 ** decimals
  const near = Math.round(value * step) / step
  // Below 1e-6 a number would be written with an exponent, which some readers cannot read.
  return Math.abs(near) < 1e-6 ? 0 : near
}

/** rad to degrees, rounded to 1e-9. */
export const degrees = (angle: number): number => rounded((angle * 180) / Math.PI, 9)
