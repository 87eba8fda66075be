import { formatNumber } from './format-number.ts'
import type { QuantityKind, Units } from './kind.ts'
import { toUnit } from './to-unit.ts'
import { unitSymbol } from './unit-table.ts'

/** Most decimals worth printing in the file's unit; zeros at the end are dropped. */
const usualDecimals: Readonly<Record<QuantityKind, { readonly mm: number; readonly in: number }>> = {
  length: { mm: 3, in: 4 },
  angle: { mm: 3, in: 3 },
  torque: { mm: 2, in: 1 },
  power: { mm: 3, in: 3 },
  'rotation-speed': { mm: 1, in: 1 },
  'cutting-speed': { mm: 1, in: 1 },
  temperature: { mm: 1, in: 1 },
  'temperature-difference': { mm: 1, in: 1 },
  mass: { mm: 3, in: 3 },
  force: { mm: 1, in: 1 },
  pressure: { mm: 1, in: 0 },
  density: { mm: 0, in: 4 },
  expansion: { mm: 8, in: 8 },
  ratio: { mm: 4, in: 4 },
}

/**
 * Internal value as text with the unit the file uses: `12.5 mm`, `8°`, `7.2 N·m`. With `decimals` the number has
 * exactly that many; without, the usual number of the kind at most, or two digits of a number smaller than that shows. The text is read back by `parseQuantity`.
 * Throws RangeError on NaN or infinity.
 */
export function formatQuantity(
  kind: QuantityKind,
  value: number,
  units: Units,
  options: { readonly decimals?: number } = {},
): string {
  const inUnit = toUnit(kind, value, units)
  const usual = usualDecimals[kind][units]
  const number =
    options.decimals === undefined
      ? formatNumber(
          inUnit,
          Math.max(usual, decimalsOfSmall(inUnit, kind === 'length' && units === 'mm' ? 2e-4 : 1e-6)),
          { trim: true },
        )
      : formatNumber(inUnit, options.decimals)
  const symbol = unitSymbol(kind, units)
  if (symbol === '') return number
  return symbol === '°' ? `${number}${symbol}` : `${number} ${symbol}`
}

/** What is small and not nothing keeps two digits: a force of 0.034 lbf is not none, a roughness of 16 µin is not smooth. */
function decimalsOfSmall(value: number, least: number): number {
  const size = Math.abs(value)
  // Below the least, a number is what arithmetic leaves of nought.
  return size < least * (1 - 1e-9) || size >= 1 ? 0 : 1 - Number(size.toExponential(12).split('e')[1])
}

/** The temperature at which sizes are defined (ISO 1), as the file's units have it: `20 °C`, `68 °F`. */
export const referenceTemperature = (units: Units): string => formatQuantity('temperature', 20, units)
