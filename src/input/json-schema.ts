import { z } from 'zod'
import { fieldMeta } from './field-meta.ts'

/**
 * JSON Schema (draft 7, which the editors at hand complete from) of a parameter file as the user writes it: numbers
 * or text where a quantity stands, defaults and examples in the words of the trade.
 *
 * Our fields are transforms, of which zod knows nothing but that something goes in; what may go in is in their meta.
 */
export function toJsonSchema(schema: z.ZodType, title: string): Record<string, unknown> {
  const written = z.toJSONSchema(schema, {
    io: 'input',
    target: 'draft-07',
    override: ({ zodSchema, jsonSchema }) => {
      const meta = fieldMeta(zodSchema)
      if (meta === undefined) return
      // Ours alone: a strict validator would stumble over unknown keywords.
      for (const key of ['kind', 'unit', 'ruleOfThumb', 'derived', 'json']) delete jsonSchema[key]
      const unit = meta.unit === '' ? '' : ` A bare number is in ${meta.unit}.`
      const rule = meta.ruleOfThumb ? ' The default is a rule of thumb.' : ''
      const derived = meta.derived ? ' Worked out when left out.' : ''
      Object.assign(jsonSchema, meta.json, { description: `${meta.description}${unit}${rule}${derived}` })
    },
  })
  const { $schema, '~standard': _, ...rest } = written
  return { $schema, title, ...rest }
}
