import { expect, it } from 'vitest'
import { z } from 'zod'
import { checkDocument } from '../../src/input/check-document.ts'
import { fields } from '../../src/input/fields.ts'
import { withParameter } from '../../src/input/parameter-path.ts'
import { readDocument } from '../../src/input/read-document.ts'
import { walkParameters } from '../../src/input/walk-parameters.ts'

const field = fields('mm')
const schema = z.strictObject({
  swing: field.length({ says: 'Swing.' }),
  tilt: field.angle({ says: 'Tilt.', default: '8 deg', rule: true }),
  screws: field
    .section(
      {
        count: field.count({ says: 'Number.', default: 2 }),
        pitch: field.length({ says: 'Pitch.', derived: true }),
        note: field.text({ says: 'Note.', optional: true }),
      },
      { says: 'The screws.' },
    )
    .prefault({}),
  speeds: field.list(field.rotationSpeed({ says: 'A speed.' }), { says: 'Speeds.', default: [30, 60] }),
  stock: z.discriminatedUnion('form', [
    z.strictObject({
      form: z.literal('round').meta({ description: 'Form.' }),
      diameter: field.length({ says: 'Bar.' }),
    }),
    z.strictObject({
      form: z.literal('hexagon').meta({ description: 'Form.' }),
      flats: field.length({ says: 'Flats.' }),
    }),
  ]),
  bits: z.array(z.strictObject({ width: field.length({ says: 'Width.' }) })).optional(),
  grade: z.enum(['a', 'b']).default('a').meta({ description: 'Grade.' }),
})

const text = `swing: 60
stock: {form: hexagon, flats: 1 in}
bits:
  - width: 8
  - width: 6
`
const read = readDocument(text, 'a.yaml')
if (!read.ok) throw new Error('unread')
const document = read.value
const checked = checkDocument(document, 'a.yaml', schema)
if (!checked.ok) throw new Error(JSON.stringify(checked.problems))

const rows = (value: unknown, units: 'mm' | 'in' = 'mm') =>
  walkParameters(schema, document, value, units).map(({ path, kind, origin, unit, says }) => [
    path,
    kind,
    origin,
    unit,
    says,
  ])

it('every parameter that has a value is listed with its origin, in the order of the schema', () => {
  expect(rows(checked.value)).toEqual([
    ['swing', 'length', 'given', 'mm', 'Swing.'],
    ['tilt', 'angle', 'rule of thumb', '°', 'Tilt.'],
    ['screws.count', 'count', 'default', '', 'Number.'],
    ['speeds', 'list', 'default', 'rev/min', 'Speeds.'],
    ['stock.form', 'choice', 'given', '', 'Form.'],
    ['stock.flats', 'length', 'given', 'mm', 'Flats.'],
    ['bits.0.width', 'length', 'given', 'mm', 'Width.'],
    ['bits.1.width', 'length', 'given', 'mm', 'Width.'],
    ['grade', 'choice', 'default', '', 'Grade.'],
  ])
})

it('values are in internal units', () => {
  const values = Object.fromEntries(
    walkParameters(schema, document, checked.value, 'mm').map((row) => [row.path, row.value]),
  )
  expect(values['stock.flats']).toBe(25.4)
  expect(values.speeds).toHaveLength(2)
})

it('the items of a list have their kind', () => {
  const list = walkParameters(schema, document, checked.value, 'mm').find((row) => row.path === 'speeds')
  expect(list?.itemKind).toBe('rotation-speed')
})

it('what a later step works out is listed as derived', () => {
  const derived = withParameter(checked.value, 'screws.pitch', 15)
  expect(rows(derived)).toContainEqual(['screws.pitch', 'length', 'derived', 'mm', 'Pitch.'])
})

it('units follow the file', () => {
  expect(rows(checked.value, 'in')[0]?.[3]).toBe('in')
})
