/** Standard scales, paper over model, largest first (ISO 5455). */
export const standardScales: readonly number[] = [
  50,
  20,
  10,
  5,
  2,
  1,
  1 / 2,
  1 / 5,
  1 / 10,
  1 / 20,
  1 / 50,
  1 / 100,
  1 / 200,
]

/** Scale as a title block writes it: `2:1`, `1:1`, `1:5`. Throws RangeError where it is no standard scale. */
export function scaleText(scale: number): string {
  const found = standardScales.find((s) => Math.abs(s - scale) < 1e-9 * scale)
  if (found === undefined) throw new RangeError(`not a standard scale: ${scale}`)
  return found >= 1 ? `${Math.round(found)}:1` : `1:${Math.round(1 / found)}`
}
