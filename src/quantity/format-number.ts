/**
 * The one way in which a number becomes text: a point, the given number of decimals (0 to 12), never `-0`, no
 * thousands separators, no exponent below 1e21. With `trim` the zeros at the end go, and the point with them.
 *
 * Halves go away from zero, judged on 13 significant digits: 1.005 gives 1.01 as a machinist expects, and a last
 * digit that differs between engines cannot change the text. Throws RangeError on NaN, infinity or bad decimals.
 */
export function formatNumber(value: number, decimals: number, options: { readonly trim?: boolean } = {}): string {
  if (!Number.isFinite(value)) throw new RangeError(`not a finite number: ${value}`)
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 12) throw new RangeError(`decimals: ${decimals}`)
  const [digits = '0', exponent = '0'] = String(Number(Math.abs(value).toPrecision(13))).split('e')
  const shifted = Math.round(Number(`${digits}e${Number(exponent) + decimals}`))
  const [whole = '0', power = '0'] = String(shifted).split('e')
  const fixed = Number(`${whole}e${Number(power) - decimals}`).toFixed(decimals)
  const text = options.trim === true && fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed
  return value < 0 && shifted !== 0 ? `-${text}` : text
}
