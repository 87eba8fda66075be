import { formatNumber } from './format-number.ts'
import { formatQuantity } from './format-quantity.ts'
import { toUnit } from './to-unit.ts'

/**
 * Angle in rad as text: `7.5°`, or with `minutes` degrees and whole minutes, `7°30'`, as a protractor is read.
 * `decimals` belongs to the degrees, or to the minutes where they are written. Throws RangeError on NaN or infinity.
 */
export function formatAngle(
  value: number,
  options: { readonly decimals?: number; readonly minutes?: boolean } = {},
): string {
  if (options.minutes !== true) {
    return formatQuantity('angle', value, 'mm', options.decimals === undefined ? {} : { decimals: options.decimals })
  }
  const inDegrees = toUnit('angle', value, 'mm')
  const decimals = options.decimals ?? 0
  // Rounded as minutes first, so that 59.6' carries into the degrees.
  const allMinutes = Number(formatNumber(Math.abs(inDegrees) * 60, decimals))
  const degrees = Math.floor(allMinutes / 60)
  const sign = inDegrees < 0 && allMinutes !== 0 ? '-' : ''
  return `${sign}${degrees}°${formatNumber(allMinutes - degrees * 60, decimals)}'`
}

/** The same in degrees and minutes, without minutes where there are none: `7°`, `7°30'`. */
export const angleInMinutes = (value: number): string => formatAngle(value, { minutes: true }).replace(/°0'$/, '°')
