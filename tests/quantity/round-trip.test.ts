import fc from 'fast-check'
import { expect, it } from 'vitest'
import { formatAngle } from '../../src/quantity/format-angle.ts'
import { formatLength } from '../../src/quantity/format-length.ts'
import { formatNumber } from '../../src/quantity/format-number.ts'
import { formatQuantity } from '../../src/quantity/format-quantity.ts'
import { type QuantityKind, quantityKinds, type Units } from '../../src/quantity/kind.ts'
import { parseQuantity } from '../../src/quantity/parse-quantity.ts'
import { fromUnit, toUnit } from '../../src/quantity/to-unit.ts'

const kinds = fc.constantFrom(...quantityKinds)
const someUnits = fc.constantFrom<Units>('mm', 'in')
const numbers = fc.double({ min: -1e6, max: 1e6, noNaN: true })

const read = (kind: QuantityKind, text: string | number, units: Units) => {
  const result = parseQuantity(kind, text, units)
  if (!result.ok) throw new Error(`${text}: ${result.code}`)
  return result.value
}

it('a quantity that is written is read back, within the digits that were written', () => {
  fc.assert(
    fc.property(kinds, someUnits, numbers, (kind, units, inUnit) => {
      const value = fromUnit(kind, inUnit, units)
      const text = formatQuantity(kind, value, units, { decimals: 9 })
      expect(text).not.toMatch(/^-0(?:\.0*)?(?!\.?\d)/)
      expect(Math.abs(toUnit(kind, read(kind, text, units), units) - inUnit)).toBeLessThan(1e-6)
    }),
    { numRuns: 2000 },
  )
})

it('the usual text of a quantity is read back to the same text', () => {
  fc.assert(
    fc.property(kinds, someUnits, numbers, (kind, units, inUnit) => {
      const text = formatQuantity(kind, fromUnit(kind, inUnit, units), units)
      expect(formatQuantity(kind, read(kind, text, units), units)).toBe(text)
    }),
    { numRuns: 2000 },
  )
})

it('a number taken into a unit and back is the same to a few parts in 10¹⁵', () => {
  fc.assert(
    fc.property(kinds, someUnits, numbers, (kind, units, inUnit) => {
      const back = toUnit(kind, fromUnit(kind, inUnit, units), units)
      // The Fahrenheit scale starts elsewhere, so a small number is the difference of two large ones; and the very
      // smallest doubles have no digits left to lose.
      const size = Math.abs(inUnit) + (kind === 'temperature' ? 500 : 1e-280)
      expect(Math.abs(back - inUnit)).toBeLessThanOrEqual(size * 6e-15)
    }),
    { numRuns: 2000 },
  )
})

it('every 64th of an inch comes back exactly from its fraction', () => {
  fc.assert(
    fc.property(fc.integer({ min: -64 * 40, max: 64 * 40 }), (sixtyFourths) => {
      const value = read('length', `${sixtyFourths < 0 ? '-' : ''}${Math.abs(sixtyFourths)}/64 in`, 'mm')
      const text = formatLength(value, 'in', { fractions: true })
      expect(text).toMatch(/^-?\d+(?:-\d+\/\d+|\/\d+)? in$/)
      expect(read('length', text, 'mm') + 0).toBe(value + 0)
    }),
  )
})

it('degrees and minutes are read back within half a minute', () => {
  fc.assert(
    fc.property(fc.double({ min: -7, max: 7, noNaN: true }), (value) => {
      const back = read('angle', formatAngle(value, { minutes: true }), 'mm')
      expect(Math.abs(back - value)).toBeLessThanOrEqual((Math.PI / 10_800) * 0.5 + 1e-12)
    }),
  )
})

it('a written number differs from the number by half of its last digit at most', () => {
  fc.assert(
    fc.property(numbers, fc.integer({ min: 0, max: 6 }), (value, decimals) => {
      const text = formatNumber(value, decimals)
      expect(text).toMatch(decimals === 0 ? /^-?\d+$/ : new RegExp(`^-?\\d+\\.\\d{${decimals}}$`))
      expect(text).not.toMatch(/^-0(?:\.0*)?$/)
      expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-6 * 1e-3)
    }),
  )
})

it('no text makes the reader throw', () => {
  const pieces = fc.constantFrom(
    '1',
    '/',
    '-',
    '.',
    ',',
    ' ',
    'in',
    'mm',
    'deg',
    "'",
    '"',
    '°',
    'e',
    '+',
    '½',
    '0',
    'N',
    '·',
    '%',
  )
  fc.assert(
    fc.property(
      kinds,
      someUnits,
      fc.oneof(
        fc.string({ unit: 'binary' }),
        fc.array(pieces, { maxLength: 12 }).map((all) => all.join('')),
      ),
      (kind, units, text) => {
        const result = parseQuantity(kind, text, units)
        if (result.ok) expect(Number.isFinite(result.value)).toBe(true)
        else expect(result.allowed).not.toBe('')
      },
    ),
    { numRuns: 3000 },
  )
})
