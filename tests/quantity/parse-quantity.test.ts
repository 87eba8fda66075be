import { describe, expect, it } from 'vitest'
import { type QuantityKind, quantityKinds, type Units } from '../../src/quantity/kind.ts'
import { parseQuantity } from '../../src/quantity/parse-quantity.ts'
import { quantityExamples } from '../../src/quantity/quantity-examples.ts'

const value = (kind: QuantityKind, written: string | number, units: Units = 'mm') => {
  const read = parseQuantity(kind, written, units)
  return read.ok ? read.value : read.code
}

describe('lengths', () => {
  it.each<[string | number, number]>([
    [12.5, 12.5],
    ['12.5', 12.5],
    [' 12.5 mm ', 12.5],
    ['12.5mm', 12.5],
    ['12 MM', 12],
    ['.5', 0.5],
    ['5.', 5],
    ['+5', 5],
    ['-5', -5],
    ['−5 mm', -5],
    ['1e-3', 0.001],
    ['1E2 mm', 100],
    ['2.5 cm', 25],
    ['0.1 m', 100],
    ['5 m', 5000],
    ['25 um', 0.025],
    ['25 µm', 0.025],
    ['25 μm', 0.025],
    ['0.5 in', 12.7],
    ['0.1 in', 2.54],
    ['1/2 in', 12.7],
    ['1/2in', 12.7],
    ['1/2"', 12.7],
    ['1/2″', 12.7],
    ['½ in', 12.7],
    ['2½"', 63.5],
    ['2-1/4 in', 57.15],
    ['2 1/4 in', 57.15],
    ['-2-1/4 in', -57.15],
    ['5/4 in', 31.75],
    ['10 thou', 0.254],
    ["1'", 304.8],
    ['1 ft', 304.8],
    ['32 µin', 0.0008128],
  ])('%s is read as %d mm, to the last bit', (written, expected) => {
    expect(value('length', written)).toBe(expected)
  })

  it('a bare number is in inches in an inch file', () => {
    expect(value('length', 0.5, 'in')).toBe(12.7)
    expect(value('length', '2-1/4', 'in')).toBe(57.15)
    expect(value('length', '12.5 mm', 'in')).toBe(12.5)
  })

  it.each([
    ...[
      '',
      '   ',
      'mm',
      '.',
      '-',
      'NaN',
      'Infinity',
      '-Infinity',
      '1e400',
      '1e31',
      'abc',
      '--5',
      '+-5',
      '5 - 3',
      '5 + 3',
    ],
    ...[
      '1/0',
      '1/0 in',
      '2-1/0 in',
      '3/-4',
      '2-1/4.5',
      '2-5/4 in',
      '2-4/4',
      '1.5/2',
      '1/2.5',
      '1/2/3',
      '1 / 2',
      '-1/-2',
    ],
    ...['12,5', '12,5 mm', '1,000', '1,234.5', '1,234,567', '1_000', '1 000', '1.2.3', '0x10', '0o17', '0b11'],
    ...[
      '2 ft 3 in',
      `2'3"`,
      '5 mm 3',
      '5 mm 3 mm',
      '9'.repeat(31),
      `${'1'.repeat(20)}/${'3'.repeat(20)}`,
      'x'.repeat(500),
    ],
  ])('%j is no quantity', (written) => {
    expect(value('length', written)).toBe('not-a-quantity')
  })

  it.each(['8 deg', '8°', '5 mil', '5 mm in', '5 thouu', '5 mm2', '1e', '5 N', '20 °C', '5 in/min', '1/2 in/2'])(
    '%j has a wrong unit',
    (written) => expect(value('length', written)).toBe('wrong-unit'),
  )

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e300])('the number %d is no quantity', (written) => {
    expect(value('length', written)).toBe('not-a-quantity')
  })

  it('a decimal comma is answered with the number to write', () => {
    expect(parseQuantity('length', '12,5 mm', 'mm')).toMatchObject({
      found: '12,5 mm',
      remedy: expect.stringContaining('12.5'),
    })
  })

  it('a comma before three digits is answered with both readings', () => {
    const read = parseQuantity('length', '1,000', 'mm')
    expect(read).toMatchObject({ remedy: expect.stringMatching(/1\.000.*1000/) })
  })

  it('a wrong unit is answered with the units that are allowed and the kind it belongs to', () => {
    expect(parseQuantity('length', '8 deg', 'mm')).toMatchObject({
      code: 'wrong-unit',
      found: '8 deg',
      allowed: expect.stringContaining('mm, in'),
      remedy: expect.stringContaining('angle'),
    })
  })
})

describe('angles', () => {
  it.each<[string | number, number]>([
    [8, (Math.PI * 8) / 180],
    ['8', (Math.PI * 8) / 180],
    ['8 deg', (Math.PI * 8) / 180],
    ['8°', (Math.PI * 8) / 180],
    ['-8°', (Math.PI * -8) / 180],
    ['8 degrees', (Math.PI * 8) / 180],
    ['7 deg 30 min', (Math.PI * 7.5) / 180],
    ["7°30'", (Math.PI * 7.5) / 180],
    ['7° 30′', (Math.PI * 7.5) / 180],
    ['7°30\'15"', (Math.PI * 7.504166666666666) / 180],
    ['7 deg 30 min 15 sec', (Math.PI * 7.504166666666666) / 180],
    ["-7°30'", (Math.PI * -7.5) / 180],
    ["-0°30'", (Math.PI * -0.5) / 180],
    ["30'", (Math.PI * 30) / 10800],
    ['30 min', (Math.PI * 30) / 10800],
    ['15"', (Math.PI * 15) / 648000],
    ['1/2 deg', (Math.PI * 0.5) / 180],
    ['0.1 rad', 0.1],
  ])('%s is read as %d rad', (written, expected) => {
    expect(value('angle', written)).toBeCloseTo(expected, 15)
    expect(value('angle', written, 'in')).toBe(value('angle', written, 'mm'))
  })

  it.each(["7°60'", "7.5°30'", '7°30\'60"', '7°30.5\'15"', "7°-30'", '8 deg 8 deg'])('%j is no quantity', (written) => {
    expect(value('angle', written)).toBe('not-a-quantity')
  })

  it('a length is no angle', () => {
    expect(value('angle', '8 mm')).toBe('wrong-unit')
    expect(value('angle', '8 in')).toBe('wrong-unit')
  })
})

describe('the other kinds', () => {
  it.each<[QuantityKind, string, number]>([
    ['rotation-speed', '500 rpm', (Math.PI * 500) / 30],
    ['rotation-speed', '500 RPM', (Math.PI * 500) / 30],
    ['rotation-speed', '500 rev/min', (Math.PI * 500) / 30],
    ['rotation-speed', '500 1/min', (Math.PI * 500) / 30],
    ['rotation-speed', '500/min', (Math.PI * 500) / 30],
    ['rotation-speed', '500 min⁻¹', (Math.PI * 500) / 30],
    ['rotation-speed', '10 rev/s', Math.PI * 20],
    ['rotation-speed', '50 rad/s', 50],
    ['cutting-speed', '30 m/min', 500],
    ['cutting-speed', '90 sfm', 457.2],
    ['cutting-speed', '90 ft/min', 457.2],
    ['cutting-speed', '90 ft / min', 457.2],
    ['torque', '7.2 N·m', 7200],
    ['torque', '7.2 Nm', 7200],
    ['torque', '7.2 N.m', 7200],
    ['torque', '7.2 N m', 7200],
    ['torque', '7.2 N*m', 7200],
    ['torque', '7.2 N·mm', 7.2],
    ['power', '1.5 kW', 1500],
    ['power', '750 W', 750],
    ['temperature', '20 °C', 20],
    ['temperature', '20 C', 20],
    ['temperature', '20 degC', 20],
    ['temperature', '68 °F', 20],
    ['temperature', '68 F', 20],
    ['temperature', '-40 F', -40],
    ['temperature', '293.15 K', 20],
    ['temperature-difference', '9 °F', 5],
    ['temperature-difference', '5 K', 5],
    ['mass', '1.2 kg', 1.2],
    ['mass', '500 g', 0.5],
    ['force', '1.5 kN', 1500],
    ['pressure', '350 MPa', 350],
    ['pressure', '350 N/mm²', 350],
    ['pressure', '350 N/mm2', 350],
    ['pressure', '350 N/mm^2', 350],
    ['pressure', '210 GPa', 210_000],
    ['pressure', '10 bar', 1],
    ['density', '7.85 g/cm³', 7850],
    ['density', '7850 kg/m3', 7850],
    ['expansion', '11.5e-6 1/K', 11.5e-6],
    ['expansion', '11.5e-6/K', 11.5e-6],
    ['expansion', '11.5 µm/(m·K)', 11.5e-6],
    ['expansion', '11.5 um/m/K', 11.5e-6],
    ['expansion', '5e-6 1/°F', 9e-6],
    ['ratio', '12 %', 0.12],
    ['ratio', '12%', 0.12],
    ['ratio', '0.12', 0.12],
    ['ratio', '1/8', 0.125],
  ])('%s %j is read as %d', (kind, written, expected) => {
    expect(value(kind, written)).toBe(expected)
    expect(value(kind, written, kind === 'ratio' ? 'in' : 'mm')).toBe(expected)
  })

  it.each(['87 in·lbf', '87 lbf in', '87 in-lbf', '87 lbf·in', '87 in lb', '7.25 ft·lbf', '7.25 ft-lb', '7.25 lbf ft'])(
    '%j is one torque, however it is written',
    (written) => expect(value('torque', written)).toBeCloseTo(9829.680125, 6),
  )

  it.each<[QuantityKind, number, number]>([
    ['torque', 7.2, 7200],
    ['power', 1.5, 1500],
    ['rotation-speed', 500, (Math.PI * 500) / 30],
    ['cutting-speed', 30, 500],
    ['temperature', 20, 20],
    ['mass', 2, 2],
    ['force', 2, 2],
    ['pressure', 2, 2],
  ])('a bare %s is in the metric shop unit in a mm file', (kind, written, expected) => {
    expect(value(kind, written, 'mm')).toBe(expected)
  })

  it.each<[QuantityKind, number, string]>([
    ['torque', 64, '64 in·lbf'],
    ['power', 2, '2 hp'],
    ['rotation-speed', 500, '500 rev/min'],
    ['cutting-speed', 90, '90 ft/min'],
    ['temperature', 68, '68 °F'],
    ['mass', 2, '2 lb'],
    ['force', 2, '2 lbf'],
    ['pressure', 2, '2 psi'],
    ['density', 2, '2 lb/in³'],
    ['expansion', 2, '2 1/°F'],
  ])('a bare %s is in the inch shop unit in an inch file', (kind, written, same) => {
    expect(value(kind, written, 'in')).toBe(value(kind, same, 'mm'))
  })

  it('a small m is no mega', () => {
    expect(value('pressure', '350 mPa')).toBe('wrong-unit')
    expect(value('pressure', '350 MPA')).toBe(350)
  })

  it('every example given to users is understood', () => {
    for (const kind of quantityKinds) {
      for (const units of ['mm', 'in'] as const) {
        for (const example of quantityExamples(kind, units)) expect(parseQuantity(kind, example, units).ok).toBe(true)
      }
    }
  })
})

describe('conversion factors', () => {
  // The exact definitions, NIST SP 811, from memory: international inch and pound, standard gravity; the pound-force
  // and the mechanical horsepower follow from them.
  it.each<[QuantityKind, string, number]>([
    ['length', '1 in', 25.4],
    ['length', '1 ft', 304.8],
    ['mass', '1 lb', 0.45359237],
    ['mass', '1 oz', 0.028349523125],
    ['force', '1 lbf', 4.4482216152605],
    ['force', '1 kgf', 9.80665],
  ])('%s: %s is exact by definition', (kind, written, expected) => {
    expect(value(kind, written)).toBe(expected)
  })

  it.each<[QuantityKind, string, number]>([
    ['power', '1 hp', 745.699872],
    ['power', '1 PS', 735.49875],
    ['torque', '1 in·lbf', 112.9848],
    ['torque', '1 ft·lbf', 1355.818],
    ['pressure', '1 psi', 0.006894757],
    ['pressure', '1 ksi', 6.894757],
    ['density', '1 lb/in³', 27679.9],
    ['density', '1 lb/ft³', 16.01846],
    ['cutting-speed', '1 ft/min', 5.08],
  ])('%s: %s agrees with the published figure (NIST SP 811, from memory)', (kind, written, expected) => {
    expect((value(kind, written) as number) / expected).toBeCloseTo(1, 6)
  })
})
