import { formatNumber } from '../quantity/format-number.ts'
import { steady } from '../report/steady.ts'

/** Nine significant digits as plain decimals, with a point, without an exponent: what a file or spreadsheet reads. */
export function plainNumber(value: number): string {
  const number = steady(value)
  if (number === 0) return '0'
  const decimals = Math.min(12, Math.max(0, 8 - Math.floor(Math.log10(Math.abs(number)))))
  return formatNumber(number, decimals, { trim: true })
}
