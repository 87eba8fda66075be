/** Nine significant digits: the last ones of a sine differ between engines. */
export function steady(value: number): number {
  const rounded = Number(value.toPrecision(9))
  return Math.abs(rounded) < 1e-9 ? 0 : rounded
}
