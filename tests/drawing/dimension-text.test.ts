import { describe, expect, it } from 'vitest'
import { dimensionText, type Size, type SizeUnits } from '../../src/drawing/dimensions/dimension-text.ts'

const degree = Math.PI / 180
const mm: SizeUnits = { units: 'mm' }
const inch: SizeUnits = { units: 'in' }
const fractions: SizeUnits = { units: 'in', fractions: true }
const both: SizeUnits = { units: 'mm', both: true }

const size = (value: number, more: Partial<Size> = {}): Size => ({
  kind: 'length',
  value,
  tolerance: { kind: 'general' },
  measurable: true,
  ...more,
})
const within = (lower: number, upper: number) => ({ tolerance: { kind: 'limits', lower, upper } }) as const
const reference = { tolerance: { kind: 'reference' } } as const
const thread = (designation: string, more = {}) => ({ kind: 'thread', thread: { designation, ...more } }) as const

// What a machinist should read, worked out by hand; layout of the strings is our own, in the spirit of ISO 129-1 and 406.
const table: [string, Size, SizeUnits, string[]][] = [
  ['a plain length', size(40), mm, ['40']],
  ['a length with decimals', size(12.7), mm, ['12.7']],
  ['a length finer than a micrometre is rounded', size(12.34567), mm, ['12.346']],
  ['a negative coordinate has a long minus', size(-3.5), mm, ['−3.5']],
  ['an even tolerance', size(40, within(-0.1, 0.1)), mm, ['40 ±0.1']],
  ['two deviations, upper first', size(12.7, within(0.02, 0.06)), mm, ['12.7 +0.06/+0.02']],
  ['a deviation of nothing has no sign', size(2, within(-0.05, 0)), mm, ['2 0/−0.05']],
  [
    'a size that is not even is given by limits inside its zone',
    size(12.34567, within(-0.1, 0.1)),
    mm,
    ['12.246–12.445'],
  ],
  [
    'a fit by code and limits',
    size(25, { kind: 'diameter', fitCode: 'H7', ...within(0, 0.021) }),
    mm,
    ['⌀25 H7 (25.000–25.021)'],
  ],
  ['a size to be made to another', size(12.34, reference), mm, ['(12.34)']],
  ['a size that cannot be measured', size(12.34, { measurable: false }), mm, ['(12.34)']],
  ['a radius', size(4, { kind: 'radius' }), mm, ['R4']],
  ['several alike', size(5, { kind: 'diameter', count: 3 }), mm, ['3 × ⌀5']],
  ['words after it', size(32, { after: 'across flats' }), mm, ['32 across flats']],
  ['a chamfer', size(1, { kind: 'chamfer' }), mm, ['1 × 45°']],
  ['a chamfer at another angle', size(1.5, { kind: 'chamfer', chamferAngle: 30 * degree }), mm, ['1.5 × 30°']],
  ['an angle', size(10 * degree, { kind: 'angle' }), mm, ['10°']],
  ['an angle in minutes', size(7.5 * degree, { kind: 'angle' }), mm, ["7°30'"]],
  ['an angle between minutes', size(7.123 * degree, { kind: 'angle' }), mm, ['7.123°']],
  [
    'an angle with its tolerance',
    size(10 * degree, { kind: 'angle', ...within(-0.25 * degree, 0.25 * degree) }),
    mm,
    ["10° ±15'"],
  ],
  ['an angle, one side only', size(118 * degree, { kind: 'angle', ...within(0, 2 * degree) }), mm, ['118° +2°/0']],
  ['a drilled angle for reference', size(118 * degree, { kind: 'angle', ...reference }), mm, ['(118°)']],
  [
    'a blind thread',
    size(6, { ...thread('M6', { depth: 12, drill: 5, drillDepth: 15 }), count: 3 }),
    mm,
    ['3 × M6, 12 deep', 'drill ⌀5, 15 deep'],
  ],
  ['a thread right through', size(6, thread('M6', { drill: 5 })), mm, ['M6 through', 'drill ⌀5 through']],
  ['a thread on a shank', size(12, thread('M12 LH', { depth: 20 })), mm, ['M12 LH, 20 long']],
  [
    'a thread with a named drill',
    size(6.35, thread('1/4-20', { drill: 5.1054, drillName: 'No.7' })),
    inch,
    ['1/4-20 through', 'drill No.7: ⌀0.201 through'],
  ],
  ['inches', size(12.7), inch, ['0.5']],
  ['inches, even tolerance', size(25.4, within(-0.0508, 0.0508)), inch, ['1 ±0.002']],
  ['inches, a millimetre tolerance stays inside it', size(25.4, within(-0.1, 0.1)), inch, ['1 ±0.0039']],
  ['inches, a fit', size(25.4, { kind: 'diameter', ...within(0, 0.0127) }), inch, ['⌀1 +0.0005/0']],
  ['a 64th as a fraction', size(12.7), fractions, ['1/2']],
  ['a whole and a fraction', size(57.15), fractions, ['2-1/4']],
  ['no 64th: decimal', size(10), fractions, ['0.3937']],
  ['a tolerance of its own: decimal', size(12.7, within(-0.0254, 0.0254)), fractions, ['0.5 ±0.001']],
  ['both units', size(25.4), both, ['25.4 [1]']],
  ['both units, limits in the second', size(25.4, within(-0.1, 0.1)), both, ['25.4 ±0.1 [0.9961–1.0039]']],
  ['both units, reference', size(10, reference), both, ['(10 [0.3937])']],
  ['both units, inch first', size(25.4), { units: 'in', both: true }, ['1 [25.4]']],
  [
    'both units, a thread',
    size(6, thread('M6', { depth: 12.7, drill: 5 })),
    both,
    ['M6, 12.7 [0.5] deep', 'drill ⌀5 [0.1969] through'],
  ],
  ['a zone narrower than the last digit gets one more', size(25.4, within(0, 0.002)), inch, ['1 +0.00007/0']],
]

describe('the text of a dimension', () => {
  it.each(table)('%s', (_, given, units, expected) => {
    expect(dimensionText(given, units)).toEqual(expected)
  })

  it('has an upper deviation that is not below the lower one, and finite numbers', () => {
    expect(() => dimensionText(size(1, within(0.1, -0.1)), mm)).toThrow(RangeError)
    expect(() => dimensionText(size(Number.NaN), mm)).toThrow(RangeError)
    expect(() => dimensionText(size(6, { kind: 'thread' }), mm)).toThrow(RangeError)
  })
})
