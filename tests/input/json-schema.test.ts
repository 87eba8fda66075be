import { expect, it } from 'vitest'
import { z } from 'zod'
import { fields } from '../../src/input/fields.ts'
import { toJsonSchema } from '../../src/input/json-schema.ts'

const field = fields('in')
const schema = z.strictObject({
  swing: field.length({ says: 'Diameter that the bit sweeps.', title: 'Swing', min: 12.7, below: 254 }),
  tilt: field.angle({ says: 'Tilt.', default: '8 deg', rule: true }),
  pitch: field.length({ says: 'Pitch.', derived: true }),
  screws: field.section(
    {
      count: field.count({ says: 'Number.', min: 1, max: 6, default: 2 }),
      grade: field.choice(['8.8', 'stainless'], { says: 'Grade.', optional: true }),
    },
    { says: 'The screws.' },
  ),
  speeds: field.list(field.rotationSpeed({ says: 'A speed.', above: 0 }), {
    says: 'Speeds.',
    min: 1,
    default: [90, '500 rpm'],
  }),
  reverse: field.flag({ says: 'Reverse.', default: false }),
  name: field.text({ says: 'Name.', max: 40, optional: true }),
})
const written = toJsonSchema(schema, 'Fly-cutter head')

it('the schema for editors says what a user may write', () => {
  expect(written).toMatchObject({
    $schema: 'http://json-schema.org/draft-07/schema#',
    title: 'Fly-cutter head',
    type: 'object',
    additionalProperties: false,
    required: ['swing', 'screws'],
    properties: {
      swing: {
        title: 'Swing',
        type: ['number', 'string'],
        minimum: 0.5,
        exclusiveMaximum: 10,
        examples: [0.5, '1/2 in', '2-1/4 in', '10 thou', '12.5 mm'],
      },
      tilt: { type: ['number', 'string'], default: '8 deg', examples: ['8 deg'] },
      screws: {
        type: 'object',
        additionalProperties: false,
        description: 'The screws.',
        properties: {
          count: { type: 'integer', minimum: 1, maximum: 6, default: 2 },
          grade: { enum: ['8.8', 'stainless', 8.8] },
        },
      },
      speeds: {
        type: 'array',
        minItems: 1,
        default: [90, '500 rpm'],
        items: { type: ['number', 'string'], exclusiveMinimum: 0 },
      },
      reverse: { type: 'boolean', default: false },
      name: { type: 'string', maxLength: 40 },
    },
  })
})

it('descriptions tell the unit of a bare number, rules of thumb and what is worked out', () => {
  const { swing, tilt, pitch } = written.properties as Record<string, { description: string }>
  expect(swing?.description).toContain('in in.')
  expect(tilt?.description).toContain('rule of thumb')
  expect(pitch?.description).toContain('Worked out')
})

it('keywords of our own do not get out', () => {
  const keys = new Set<string>()
  JSON.stringify(written, (key, value) => {
    keys.add(key)
    return value
  })
  for (const key of ['kind', 'unit', 'ruleOfThumb', 'derived', 'json', '~standard']) expect(keys).not.toContain(key)
})
