import { describe, expect, expectTypeOf, it } from 'vitest'
import { z } from 'zod'
import type { IssueProblem } from '../../src/input/field-meta.ts'
import { fields } from '../../src/input/fields.ts'

const field = fields('mm')
const says = 'x'

const outcome = (schema: z.ZodType, written: unknown) => {
  const result = schema.safeParse(written)
  if (result.success) return result.data
  const issue = result.error.issues[0]
  const problem: IssueProblem | undefined = issue?.code === 'custom' ? issue.params?.problem : undefined
  return problem?.code ?? issue?.code
}

describe('quantities', () => {
  const length = field.length({ says, min: 1, below: 100 })
  it.each<[unknown, unknown]>([
    [1, 1],
    ['1/2 in', 12.7],
    [0.999, 'out-of-range'],
    [100, 'out-of-range'],
    [99.999, 99.999],
    [undefined, 'missing-key'],
    [null, 'wrong-kind'],
    [true, 'wrong-kind'],
    [[1], 'wrong-kind'],
    ['8 deg', 'wrong-unit'],
    ['x', 'not-a-quantity'],
    [Number.NaN, 'not-a-quantity'],
  ])('%j gives %j', (written, expected) => {
    expect(outcome(length, written)).toBe(expected)
  })

  it('0 may stand for none where other small sizes are too fine', () => {
    const chamfer = field.length({ says, min: 0, finest: 0.001, max: 20 })
    expect([0, 0.001, 0.0009, 1e-9, -0.01].map((size) => outcome(chamfer, size))).toEqual([
      ...[0, 0.001, 'out-of-range', 'out-of-range', 'out-of-range'],
    ])
  })

  it('a limit itself is within it although it comes from another unit', () => {
    expect(outcome(field.angle({ says, min: 0, max: (45 * Math.PI) / 180 }), '45 deg')).toBeCloseTo(Math.PI / 4, 12)
    expect(outcome(field.length({ says, max: 0.1 * 3 }), '0.3 mm')).toBe(0.3)
  })

  it('an exclusive limit is without', () => {
    expect(outcome(field.length({ says, above: 0 }), 0)).toBe('out-of-range')
    expect(outcome(field.length({ says, above: 0 }), 1e-6)).toBe(1e-6)
  })

  it('the default is written as the trade writes it and takes the units of the file', () => {
    expect(outcome(fields('in').length({ says, default: '0.5' }), undefined)).toBe(12.7)
    expect(outcome(field.torque({ says, default: '7.2 N·m' }), undefined)).toBe(7200)
  })

  it('a default that breaks its own limits is a defect, found when the field is made', () => {
    expect(() => field.length({ says, max: 1, default: '2 mm' })).toThrow(RangeError)
    expect(() => field.length({ says, default: '2 deg' })).toThrow(RangeError)
    expect(() => field.count({ says, max: 1, default: 2 })).toThrow(RangeError)
  })
})

describe('counts', () => {
  const count = field.count({ says, min: 1, max: 6 })
  it.each<[unknown, unknown]>([
    [3, 3],
    [3.0, 3],
    [3.5, 'wrong-kind'],
    ['3', 'wrong-kind'],
    [0, 'out-of-range'],
    [7, 'out-of-range'],
    [null, 'wrong-kind'],
    [undefined, 'missing-key'],
  ])('%j gives %j', (written, expected) => expect(outcome(count, written)).toBe(expected))
})

describe('choices', () => {
  const choice = field.choice(['8.8', '12.9', 'stainless'], { says })
  it.each<[unknown, unknown]>([
    ['8.8', '8.8'],
    [12.9, '12.9'],
    [' stainless ', 'stainless'],
    [10.9, 'unknown-choice'],
    ['Stainless', 'unknown-choice'],
    ['toString', 'unknown-choice'],
    [true, 'wrong-kind'],
    [{}, 'wrong-kind'],
  ])('%j gives %j', (written, expected) => expect(outcome(choice, written)).toBe(expected))
})

describe('texts', () => {
  const text = field.text({ says, max: 5 })
  it.each<[unknown, unknown]>([
    [' ab ', 'ab'],
    ['⌀ 6 H', '⌀ 6 H'],
    ['', 'wrong-kind'],
    ['  ', 'wrong-kind'],
    ['a\nb', 'wrong-kind'],
    ['a\tb', 'wrong-kind'],
    ['a\u001bb', 'wrong-kind'],
    ['abcdef', 'out-of-range'],
    [12, 'wrong-kind'],
    [false, 'wrong-kind'],
  ])('%j gives %j', (written, expected) => expect(outcome(text, written)).toBe(expected))
})

describe('flags', () => {
  const flag = field.flag({ says })
  it.each<[unknown, unknown]>([
    [true, true],
    [false, false],
    ['yes', 'wrong-kind'],
    ['true', 'wrong-kind'],
    [1, 'wrong-kind'],
  ])('%j gives %j', (written, expected) => expect(outcome(flag, written)).toBe(expected))

  it('whoever writes yes or no is told what to write', () => {
    const remedies = ['yes', 'No', 'on', 'x'].map((written) => {
      const issue = flag.safeParse(written).error?.issues[0]
      return issue?.code === 'custom' ? issue.params?.problem.remedy : undefined
    })
    expect(remedies).toEqual(['write true', 'write false', 'write true', undefined])
  })
})

it('types follow the options', () => {
  const schema = z.strictObject({
    given: field.length({ says }),
    usual: field.length({ says, default: '1 mm' }),
    free: field.length({ says, optional: true }),
    later: field.angle({ says, derived: true }),
    size: field.choice(['M4', 'M5'], { says, default: 'M4' }),
    list: field.list(field.length({ says }), { says, default: ['1 mm', 2] }),
  })
  expectTypeOf<z.output<typeof schema>>().toEqualTypeOf<{
    given: number
    usual: number
    free?: number | undefined
    later?: number | undefined
    size: 'M4' | 'M5'
    list: number[]
  }>()
  expectTypeOf<z.input<typeof schema>['usual']>().toEqualTypeOf<string | number | undefined>()
  expect(schema.parse({ given: 3 })).toEqual({ given: 3, usual: 1, size: 'M4', list: [1, 2] })
})
