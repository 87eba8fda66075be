import { type Fraction, fraction, negated, plus, times, toNumber } from './fraction.ts'
import { type QuantityKind, quantityKinds, type Units } from './kind.ts'
import { plainSigns, readNumber } from './parse-number.ts'
import { allowedQuantity, quantityNoun } from './quantity-examples.ts'
import { fileUnit, findUnit, type Unit, unitSymbols } from './unit-table.ts'

export type QuantityRead =
  | { readonly ok: true; readonly value: number }
  | {
      readonly ok: false
      readonly code: 'wrong-unit' | 'not-a-quantity'
      /** As it was written. */
      readonly found: string
      readonly allowed: string
      readonly remedy?: string
    }

/**
 * Reads a quantity the way the trade writes it and gives it in the internal unit of its kind (see `QuantityKind`).
 * A bare number, or a text that is only a number, takes the unit the file uses for that kind. Any finite value of
 * either sign is taken; ranges are the caller's business.
 */
export function parseQuantity(kind: QuantityKind, written: string | number, units: Units): QuantityRead {
  const found = String(written)
  const refuse = (code: 'wrong-unit' | 'not-a-quantity', allowed: string, remedy?: string): QuantityRead => ({
    ok: false,
    code,
    found,
    allowed,
    ...(remedy === undefined ? {} : { remedy }),
  })
  const text = plainSigns(found)
  if (text.length > 60) return refuse('not-a-quantity', allowedQuantity(kind, units))
  if (kind === 'angle') {
    const parts = readDegreesMinutesSeconds(text)
    if (parts !== undefined) return { ok: true, value: inside(parts, degree) }
  }
  const number = readNumber(text)
  if (!number.ok) return refuse('not-a-quantity', allowedQuantity(kind, units), number.remedy)
  if (number.rest === '') return { ok: true, value: inside(number.value, fileUnit(kind, units)) }
  const unit = findUnit(kind, number.rest)
  if (unit !== undefined) return { ok: true, value: inside(number.value, unit) }
  // A second number is not a unit: `2 ft 3 in`, `5 mm 3`, `1 000`. Powers such as m3 are units.
  if (/(?:^|[\s'"°])[+-]?\d/.test(number.rest)) {
    return refuse('not-a-quantity', allowedQuantity(kind, units), 'write one number with one unit')
  }
  const other = quantityKinds.find((candidate) => findUnit(candidate, number.rest) !== undefined)
  const allowed = unitSymbols(kind)
  return refuse(
    'wrong-unit',
    kind === 'ratio' ? 'a plain number or %' : `${quantityNoun(kind)} in ${allowed.join(', ')}`,
    unitRemedy(number.rest, kind, other),
  )
}

function unitRemedy(unit: string, kind: QuantityKind, other: QuantityKind | undefined): string | undefined {
  if (kind === 'length' && unit.toLowerCase() === 'mil') return 'write thou or mm: mil is used for both'
  if (kind === 'pressure' && /^mpa$/i.test(unit)) return 'write MPa: with a small m it is a millionth of that'
  if (other !== undefined && other !== kind) return `that is a unit of ${other.replace('-', ' ')}`
  return undefined
}

/** Number in the given unit to the internal unit, rounded once. */
export function inside(value: Fraction, unit: Unit): number {
  const moved = unit.offset === undefined ? value : plus(value, unit.offset)
  if (unit.pi !== true) return toNumber(times(moved, unit.scale))
  const scaled = toNumber(times(moved, fraction(unit.scale.over)))
  return (Math.PI * scaled) / Number(unit.scale.under)
}

const degree = fileUnit('angle', 'mm')

/** `7 deg 30 min`, `7°30'`, `7° 30' 15"`, in degrees; undefined where the text is not of that form. */
function readDegreesMinutesSeconds(text: string): Fraction | undefined {
  const form =
    /^([+-]?)(\d{1,6})\s*(?:°|deg|degrees?)\s*(\d{1,2}(?:\.\d{1,9})?)\s*(?:'(?!')|min|minutes?)(?:\s*(\d{1,2}(?:\.\d{1,9})?)\s*(?:"|''|sec|seconds?))?$/i.exec(
      text,
    )
  if (form === null) return undefined
  const [, sign = '', degrees = '', minutes = '', seconds] = form
  // Only the last part may have decimals, and sixty minutes are a degree.
  if (Number(minutes) >= 60 || Number(seconds ?? 0) >= 60) return undefined
  if (seconds !== undefined && minutes.includes('.')) return undefined
  const size = [degrees, minutes, seconds ?? '0'].reduce<Fraction>((sum, part, at) => {
    const read = readNumber(part)
    return read.ok ? plus(sum, times(read.value, fraction(1, 60 ** at))) : sum
  }, fraction(0))
  return sign === '-' ? negated(size) : size
}
