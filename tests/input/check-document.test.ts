import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { checkDocument } from '../../src/input/check-document.ts'
import { fields } from '../../src/input/fields.ts'
import { fileUnits } from '../../src/input/file-units.ts'
import { readDocument } from '../../src/input/read-document.ts'

const field = fields('mm')
const schema = z.strictObject({
  name: field.text({ says: 'Name of the tool.', optional: true }),
  swing: field.length({ says: 'Diameter that the bit sweeps.', min: 10, max: 200 }),
  screws: field
    .section(
      {
        count: field.count({ says: 'Number of clamp screws.', min: 1, max: 6, default: 2 }),
        size: field.choice(['M4', 'M5', 'M6'], { says: 'Thread of the clamp screws.', default: 'M5' }),
      },
      { says: 'The screws that clamp the bit.' },
    )
    .prefault({}),
  speeds: field.list(field.rotationSpeed({ says: 'A speed of the spindle.', above: 0 }), {
    says: 'Speeds of the spindle.',
    min: 1,
    max: 3,
    optional: true,
  }),
  stock: z
    .discriminatedUnion('form', [
      z.strictObject({ form: z.literal('round'), diameter: field.length({ says: 'Diameter of the bar.' }) }),
      z.strictObject({ form: z.literal('hexagon'), flats: field.length({ says: 'Width across flats.' }) }),
    ])
    .optional(),
  bits: z.array(z.strictObject({ width: field.length({ says: 'Width of the bit.' }) })).optional(),
  either: z.union([z.strictObject({ a: z.number() }), z.array(z.string())]).optional(),
  plain: z.strictObject({ word: z.enum(['one', 'three']), number: z.number().min(1).max(5) }).optional(),
})

const documentOf = (text: string) => {
  const document = readDocument(text, 'a.yaml')
  if (!document.ok) throw new Error(JSON.stringify(document.problems))
  return document.value
}
const check = (text: string, against: z.ZodType = schema) => {
  const result = checkDocument(documentOf(text), 'a.yaml', against)
  return result.ok ? [] : result.problems
}
const brief = (text: string) =>
  check(text).map(({ code, where, found, remedy }) => [
    code,
    `${where.line}:${where.column}`,
    where.path,
    found,
    remedy,
  ])

it('a sound document gives internal units and defaults', () => {
  const result = checkDocument(documentOf('swing: 2-1/4 in\nspeeds: [30, 500 rpm]\n'), 'a.yaml', schema)
  expect(result).toEqual({
    ok: true,
    value: {
      swing: 57.15,
      screws: { count: 2, size: 'M5' },
      speeds: [Math.PI, (Math.PI * 500) / 30].map((x) => expect.closeTo(x, 12)),
    },
  })
})

describe('problems have code, place, path and what was found', () => {
  it.each<[string, string, (string | undefined)[][]]>([
    [
      'an unknown key',
      'swing: 60\nscrews:\n  cuont: 3\n',
      [['unknown-key', '3:3', 'screws.cuont', 'cuont', 'did you mean count?']],
    ],
    [
      'several unknown keys, each for itself',
      'swing: 60\nbtis: 1\nscrews: {xyzzy: 1, sise: M5}\n',
      [
        ['unknown-key', '2:1', 'btis', 'btis', 'did you mean bits?'],
        ['unknown-key', '3:10', 'screws.xyzzy', 'xyzzy', undefined],
        ['unknown-key', '3:20', 'screws.sise', 'sise', 'did you mean size?'],
      ],
    ],
    [
      'a key in the wrong section',
      'swing: 60\ncount: 3\n',
      [['unknown-key', '2:1', 'count', 'count', 'it belongs in screws']],
    ],
    [
      'a key that should be further out',
      'swing: 60\nscrews:\n  speeds: [1]\n',
      [['unknown-key', '3:3', 'screws.speeds', 'speeds', 'it belongs at the top level of the file']],
    ],
    [
      'keys of the prototype',
      'swing: 60\n__proto__: 1\nconstructor: 2\n',
      [
        ['unknown-key', '2:1', '__proto__', '__proto__', undefined],
        ['unknown-key', '3:1', 'constructor', 'constructor', undefined],
      ],
    ],
    [
      'a missing key',
      'name: a\n',
      [['missing-key', '1:1', 'swing', 'nothing', 'add it: Diameter that the bit sweeps.']],
    ],
    [
      'a missing key below',
      'swing: 60\nbits:\n  - width: 3\n  - {}\n',
      [['missing-key', '4:5', 'bits.1.width', 'nothing', 'add it: Width of the bit.']],
    ],
    [
      'a key without value',
      'swing:\n',
      [['wrong-kind', '1:7', 'swing', 'nothing', 'write a value, or leave the key out']],
    ],
    [
      'a section without content',
      'swing: 60\nscrews:\n',
      [['wrong-kind', '2:8', 'screws', 'nothing', 'write a value, or leave the key out']],
    ],
    ['a word for a section', 'swing: 60\nscrews: M5\n', [['wrong-kind', '2:9', 'screws', 'M5', undefined]]],
    ['a section for a length', 'swing: {a: 1}\n', [['wrong-kind', '1:8', 'swing', 'a section', undefined]]],
    ['a truth value for a length', 'swing: true\n', [['wrong-kind', '1:8', 'swing', 'true', undefined]]],
    ['a wrong unit', 'swing: 8 deg\n', [['wrong-unit', '1:8', 'swing', '8 deg', 'that is a unit of angle']]],
    ['a decimal comma', 'swing: 60,5\n', [['not-a-quantity', '1:8', 'swing', '60,5', 'write 60.5, with a point']]],
    [
      'a length out of range, as it was written',
      'swing: 9.990\n',
      [['out-of-range', '1:8', 'swing', '9.990', undefined]],
    ],
    [
      'a speed of a list out of range',
      'swing: 60\nspeeds: [90, 0]\n',
      [['out-of-range', '2:14', 'speeds.1', '0', undefined]],
    ],
    ['too long a list', 'swing: 60\nspeeds: [1, 2, 3, 4]\n', [['out-of-range', '2:9', 'speeds', '4 items', undefined]]],
    ['an empty list', 'swing: 60\nspeeds: []\n', [['out-of-range', '2:9', 'speeds', '0 items', undefined]]],
    ['no list', 'swing: 60\nspeeds: 90\n', [['wrong-kind', '2:9', 'speeds', '90', undefined]]],
    [
      'an unknown choice',
      'swing: 60\nscrews: {size: m5}\n',
      [['unknown-choice', '2:16', 'screws.size', 'm5', 'write M5']],
    ],
    [
      'an unknown choice of a plain schema',
      'swing: 60\nplain: {word: thre, number: 9}\n',
      [
        ['unknown-choice', '2:15', 'plain.word', 'thre', 'write three'],
        ['out-of-range', '2:29', 'plain.number', '9', undefined],
      ],
    ],
    [
      'missing keys of a plain schema',
      'swing: 60\nplain: {}\n',
      [
        ['missing-key', '2:1', 'plain.word', 'nothing', undefined],
        ['missing-key', '2:1', 'plain.number', 'nothing', undefined],
      ],
    ],
    [
      'a branch that does not exist',
      'swing: 60\nstock: {form: rond, diameter: 3}\n',
      [['unknown-choice', '2:15', 'stock.form', 'rond', 'write round']],
    ],
    [
      'a branch that is not named',
      'swing: 60\nstock: {diameter: 3}\n',
      [['missing-key', '2:1', 'stock.form', 'nothing', undefined]],
    ],
    [
      'what is wrong in the branch that was named',
      'swing: 60\nstock:\n  form: hexagon\n  flat: 3\n',
      [
        ['missing-key', '2:1', 'stock.flats', 'nothing', 'add it: Width across flats.'],
        ['unknown-key', '4:3', 'stock.flat', 'flat', 'did you mean flats?'],
      ],
    ],
    [
      'what is wrong in the branch that fits best',
      'swing: 60\neither: {a: x}\n',
      [['wrong-kind', '2:13', 'either.a', 'x', undefined]],
    ],
    [
      'a list that fits one branch',
      'swing: 60\neither: [x, 1]\n',
      [['wrong-kind', '2:13', 'either.1', '1', undefined]],
    ],
  ])('%s', (_, text, expected) => {
    expect(brief(text)).toEqual(expected)
  })
})

it('allowed says what may stand there, in the units of the file', () => {
  const allowed = (text: string) => check(text).map((problem) => problem.allowed)
  expect(allowed('swing: 5')).toEqual(['at least 10 mm and at most 200 mm'])
  expect(allowed('swing: 60\nscrews: {cuont: 1}')).toEqual(['count, size'])
  expect(allowed('swing: 60\nstock: {form: x}')).toEqual(['round, hexagon'])
  const inInches = z.strictObject({ swing: fields('in').length({ says: 'x', min: 12.7, below: 254 }) })
  expect(check('swing: 12', inInches)[0]?.allowed).toBe('at least 0.5 in and less than 10 in')
})

it('problems come in the order in which they stand', () => {
  expect(check('speeds: 1\nscrews: 1\nnmae: x\nswing: 1\n').map(({ where }) => where.line)).toEqual([1, 2, 3, 4])
})

it('what a schema finds across fields is taken over as it stands', () => {
  const crossed = schema.superRefine((value, context) => {
    const problem = { code: 'contradiction', found: 'swing 60 mm', allowed: 'more than 80 mm', remedy: 'swing: 81' }
    if (value.swing < 80) context.addIssue({ code: 'custom', path: ['swing'], message: 'x', params: { problem } })
  })
  expect(check('swing: 60', crossed)).toEqual([
    {
      ...{ code: 'contradiction', found: 'swing 60 mm', allowed: 'more than 80 mm', remedy: 'swing: 81' },
      where: { file: 'a.yaml', line: 1, column: 8, path: 'swing' },
    },
  ])
})

it('no more than fifty problems come of one file, the first of it', () => {
  const lines = Array.from({ length: 20_000 }, (_, at) => `zz${at}: 1`).join('\n')
  const problems = check(`swing: 60\n${lines}`)
  expect(problems.length).toBe(50)
  expect(problems[0]?.where.line).toBe(2)
})

describe('the units of a file', () => {
  const units = (text: string) => {
    const result = fileUnits(documentOf(text), 'a.yaml')
    return result.ok
      ? result.value
      : result.problems.map(({ code, where }) => [code, where.line, where.column, where.path])
  }
  it('are read before anything else, whatever else is wrong', () => {
    expect(units('other: {}\nunits: in')).toBe('in')
    expect(units('units: mm')).toBe('mm')
  })
  it('have to be there, and be one of the two', () => {
    expect(units('a: 1')).toEqual([['missing-key', 1, 1, 'units']])
    expect(units('a: 1\nunits: inch')).toEqual([['unknown-choice', 2, 8, 'units']])
    expect(units('units:\n  - mm')).toEqual([['wrong-kind', 2, 3, 'units']])
  })
})
