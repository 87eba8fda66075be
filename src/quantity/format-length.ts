import { formatQuantity } from './format-quantity.ts'
import type { Units } from './kind.ts'

/** How near a length in inches must be to a 64th to be written as one, in inches. */
const near = 1e-9

/**
 * Length in mm as text in the file's unit: `12.5 mm`, `0.5 in`. With `fractions`, in inch files, a multiple of 1/64 in
 * is written `1/2 in`, `2-1/4 in`, `3 in`; anything else stays decimal. Throws RangeError on NaN or infinity.
 */
export function formatLength(
  value: number,
  units: Units,
  options: { readonly decimals?: number; readonly fractions?: boolean } = {},
): string {
  if (options.fractions === true && units === 'in') {
    const sixtyFourths = Math.round((value / 25.4) * 64)
    if (Number.isFinite(value) && Math.abs(value / 25.4 - sixtyFourths / 64) <= near) return inFractions(sixtyFourths)
  }
  return formatQuantity('length', value, units, options.decimals === undefined ? {} : { decimals: options.decimals })
}

function inFractions(sixtyFourths: number): string {
  const size = Math.abs(sixtyFourths)
  const sign = sixtyFourths < 0 ? '-' : ''
  const whole = Math.floor(size / 64)
  let over = size % 64
  let under = 64
  while (over !== 0 && over % 2 === 0) {
    over /= 2
    under /= 2
  }
  if (over === 0) return `${sign}${whole} in`
  return whole === 0 ? `${sign}${over}/${under} in` : `${sign}${whole}-${over}/${under} in`
}
