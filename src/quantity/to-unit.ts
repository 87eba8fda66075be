import { dividedBy, fractionOfDecimal, negated, plus, toNumber } from './fraction.ts'
import type { QuantityKind, Units } from './kind.ts'
import { inside } from './parse-quantity.ts'
import { fileUnit, type Unit } from './unit-table.ts'

/**
 * Internal value to a number in the file's unit for that kind, for tables and reports read by programs.
 * Sign is kept. Throws RangeError on NaN or infinity: such a figure is a defect and must not reach a file.
 */
export function toUnit(kind: QuantityKind, value: number, units: Units): number {
  return outside(value, fileUnit(kind, units))
}

/** Number in the file's unit to the internal unit; the inverse of `toUnit`. Throws RangeError like it. */
export function fromUnit(kind: QuantityKind, value: number, units: Units): number {
  return inside(fractionOfDecimal(String(finite(value))), fileUnit(kind, units))
}

/** Internal value to a number in the given unit, rounded once. */
function outside(value: number, unit: Unit): number {
  const isOwn = unit.scale.over === unit.scale.under && unit.pi !== true && unit.offset === undefined
  if (isOwn) return finite(value) + 0
  if (unit.pi === true) {
    const turned = (finite(value) * Number(unit.scale.under)) / (Math.PI * Number(unit.scale.over))
    // π is not exact, so 8° would come back as 8.000000000000002 now and then.
    return Number(turned.toPrecision(15)) + 0
  }
  const scaled = dividedBy(fractionOfDecimal(String(finite(value))), unit.scale)
  return toNumber(unit.offset === undefined ? scaled : plus(scaled, negated(unit.offset)))
}

function finite(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`not a finite number: ${value}`)
  return value
}
