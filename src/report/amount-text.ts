import { formatNumber } from '../quantity/format-number.ts'

/** A number of `report.json` with its unit, as people read it: the same text in every form of the report. */
export function amountText(value: number, unit: string): string {
  const number = numberText(value, unit)
  return unit === '' ? number : unit === '°' ? `${number}°` : `${number} ${unit}`
}

/** The same for a picture, where hundredths of a millimetre do and number and unit stay on one line. */
export function labelText(value: number, unit: string): string {
  const number = lengths.includes(unit)
    ? formatNumber(value, unit === 'mm' ? 2 : 3, { trim: true })
    : numberText(value, unit)
  return unit === '' || unit === '°' ? `${number}${unit}` : `${number}\u{a0}${unit}`
}

const lengths: readonly string[] = ['mm', 'in']

/** The number alone, zeros at the end dropped; a small one keeps three digits, unless nobody can set as little. */
export function numberText(value: number, unit: string): string {
  const usual = usualDecimals[unit] ?? (Math.abs(value) < 10 ? 4 : 3)
  const first = value === 0 ? 0 : -Math.floor(Math.log10(Math.abs(value)))
  const decimals = unit === '°' ? usual : Math.min(12, Math.max(usual, first + 2))
  return formatNumber(value, decimals, { trim: true })
}

/** Worth printing: about a tenth of what a shop can set or measure. */
const usualDecimals: Readonly<Record<string, number>> = {
  mm: 3,
  in: 4,
  µm: 1,
  thou: 2,
  '°': 2,
  'rev/min': 0,
  'm/min': 1,
  'ft/min': 0,
  N: 1,
  lbf: 1,
  MPa: 1,
  psi: 0,
  '°C': 1,
  '°F': 1,
  g·mm: 0,
}
