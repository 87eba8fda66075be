import { describe, expect, it } from 'vitest'
import { formatAngle } from '../../src/quantity/format-angle.ts'
import { formatLength } from '../../src/quantity/format-length.ts'
import { formatNumber } from '../../src/quantity/format-number.ts'
import { formatQuantity } from '../../src/quantity/format-quantity.ts'
import type { QuantityKind, Units } from '../../src/quantity/kind.ts'
import { unitSymbol } from '../../src/quantity/unit-table.ts'

const degrees = (number: number) => (Math.PI * number) / 180

describe('numbers', () => {
  it.each<[number, number, string]>([
    [0, 0, '0'],
    [0, 3, '0.000'],
    [-0, 2, '0.00'],
    [-0.0004, 3, '0.000'],
    [-0.0005, 3, '-0.001'],
    [1.005, 2, '1.01'],
    [2.675, 2, '2.68'],
    [-1.005, 2, '-1.01'],
    [12.345499999999999, 3, '12.346'],
    [12.34549, 3, '12.345'],
    [0.1 + 0.2, 12, '0.300000000000'],
    [999.9996, 3, '1000.000'],
    [1e-9, 3, '0.000'],
    [1.5e-7, 7, '0.0000002'],
    [123456789.125, 2, '123456789.13'],
    [1e20, 1, '100000000000000000000.0'],
    [5, 0, '5'],
  ])('%d with %d decimals is written %s', (value, decimals, text) => {
    expect(formatNumber(value, decimals)).toBe(text)
  })

  it.each<[number, number, string]>([
    [12.5, 3, '12.5'],
    [12, 3, '12'],
    [100, 0, '100'],
    [-0.0001, 3, '0'],
    [0.05, 3, '0.05'],
  ])('%d trimmed from %d decimals is written %s', (value, decimals, text) => {
    expect(formatNumber(value, decimals, { trim: true })).toBe(text)
  })

  it('what is no number, or has no sensible decimals, never becomes text', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      expect(() => formatNumber(value, 2)).toThrow(RangeError)
      expect(() => formatQuantity('length', value, 'mm')).toThrow(RangeError)
      expect(() => formatLength(value, 'in', { fractions: true })).toThrow(RangeError)
      expect(() => formatAngle(value, { minutes: true })).toThrow(RangeError)
    }
    for (const decimals of [-1, 1.5, 13]) expect(() => formatNumber(1, decimals)).toThrow(RangeError)
  })
})

describe('quantities', () => {
  it.each<[QuantityKind, number, Units, string]>([
    ['length', 12.5, 'mm', '12.5 mm'],
    ['length', 12.7, 'in', '0.5 in'],
    ['length', 12.7004, 'mm', '12.7 mm'],
    ['length', -0.0001, 'mm', '0 mm'],
    ['angle', degrees(8), 'mm', '8°'],
    ['angle', degrees(7.5), 'in', '7.5°'],
    ['torque', 7200, 'mm', '7.2 N·m'],
    ['power', 1500, 'mm', '1.5 kW'],
    ['rotation-speed', (Math.PI * 500) / 30, 'mm', '500 rev/min'],
    ['cutting-speed', 500, 'mm', '30 m/min'],
    ['cutting-speed', 457.2, 'in', '90 ft/min'],
    ['temperature', 20, 'mm', '20 °C'],
    ['temperature', 20, 'in', '68 °F'],
    ['temperature-difference', 5, 'in', '9 °F'],
    ['mass', 0.45359237, 'in', '1 lb'],
    ['force', 4.4482216152605, 'in', '1 lbf'],
    ['pressure', 350, 'mm', '350 MPa'],
    ['density', 7850, 'mm', '7850 kg/m³'],
    ['expansion', 11.5e-6, 'mm', '0.0000115 1/K'],
    ['ratio', 0.12, 'mm', '0.12'],
  ])('%s %d in a file in %s is written %s', (kind, value, units, text) => {
    expect(formatQuantity(kind, value, units)).toBe(text)
  })

  it('decimals that are asked for are all written', () => {
    expect(formatQuantity('length', 12.5, 'mm', { decimals: 2 })).toBe('12.50 mm')
    expect(formatQuantity('length', 12.7, 'in', { decimals: 3 })).toBe('0.500 in')
    expect(formatAngle(degrees(8), { decimals: 1 })).toBe('8.0°')
  })

  it('the symbol is that of a bare number', () => {
    expect([unitSymbol('length', 'mm'), unitSymbol('length', 'in'), unitSymbol('ratio', 'mm')]).toEqual([
      'mm',
      'in',
      '',
    ])
  })
})

describe('inch fractions', () => {
  it.each<[number, string]>([
    [12.7, '1/2 in'],
    [57.15, '2-1/4 in'],
    [-57.15, '-2-1/4 in'],
    [76.2, '3 in'],
    [0, '0 in'],
    [25.4 / 64, '1/64 in'],
    [(25.4 * 63) / 64, '63/64 in'],
    [12.7 + 25.4 * 5e-10, '1/2 in'],
    [12.7 + 25.4 * 1e-4, '0.5001 in'],
    [25.4 / 128, '0.0078 in'],
  ])('%d mm is written %s', (value, text) => {
    expect(formatLength(value, 'in', { fractions: true })).toBe(text)
  })

  it('fractions are written in inch files only, and only when asked for', () => {
    expect(formatLength(12.7, 'mm', { fractions: true })).toBe('12.7 mm')
    expect(formatLength(12.7, 'in')).toBe('0.5 in')
    expect(formatLength(12.7, 'in', { decimals: 3 })).toBe('0.500 in')
  })
})

describe('degrees and minutes', () => {
  it.each<[number, string]>([
    [7.5, "7°30'"],
    [-7.5, "-7°30'"],
    [-0.5, "-0°30'"],
    [0, "0°0'"],
    [-0.001, "0°0'"],
    [7.999, "8°0'"],
    [29.9999, "30°0'"],
  ])('%d° is written %s', (value, text) => {
    expect(formatAngle(degrees(value), { minutes: true })).toBe(text)
  })
})
