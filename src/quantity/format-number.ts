/**
 * The one way in which a number becomes text: a point, the given number of decimals (0 to 12), never `-0`, no
 * thousands separators, no exponent below 1e21. With `trim` the zeros at the end go, and the point with them.
 *
 * Halves go away from zero, judged on 13 significant digits: 1.005 gives 1.01 as a machinist expects, and a last
 * digit that differs between engines cannot change the text. Throws RangeError on NaN, infinity or bad decimals.
 */
export function formatNumber(value: number, decimals: number, options: Options = {}): string {
  if (!Number.isFinite(value)) throw new RangeError(`not a finite number: ${value}`)
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 12) throw new RangeError(`decimals: ${decimals}`)
  const quick = Math.abs(value) * 10 ** decimals
  // Far from a half thirteen digits decide nothing, and most numbers are.
  if (quick < 1e9 && Math.abs((quick % 1) - 0.5) > 1e-3) return signed(value, Math.round(quick), decimals, options)
  const [digits = '0', exponent = '0'] = String(Number(Math.abs(value).toPrecision(13))).split('e')
  const shifted = Math.round(Number(`${digits}e${Number(exponent) + decimals}`))
  if (shifted < 1e15) return signed(value, shifted, decimals, options)
  const [whole = '0', power = '0'] = String(shifted).split('e')
  const fixed = Number(`${whole}e${Number(power) - decimals}`).toFixed(decimals)
  return value < 0 ? `-${trimmed(fixed, options)}` : trimmed(fixed, options)
}

interface Options {
  readonly trim?: boolean
}

/** A whole number of last places, below 1e15, as a decimal. */
function signed(value: number, places: number, decimals: number, options: Options): string {
  const digits = String(places).padStart(decimals + 1, '0')
  const point = digits.length - decimals
  const fixed = decimals === 0 ? digits : `${digits.slice(0, point)}.${digits.slice(point)}`
  return value < 0 && places !== 0 ? `-${trimmed(fixed, options)}` : trimmed(fixed, options)
}

function trimmed(fixed: string, { trim = false }: Options): string {
  if (!trim || !fixed.includes('.')) return fixed
  let end = fixed.length
  while (fixed.charCodeAt(end - 1) === 48) end--
  return fixed.slice(0, fixed.charCodeAt(end - 1) === 46 ? end - 1 : end)
}
