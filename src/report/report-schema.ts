import { z } from 'zod'

/**
 * What `report.json` holds. Numbers are in the unit that stands beside them (the file's own units), rounded to nine
 * significant digits so that the same parameter set gives the same bytes everywhere.
 */
const amount = z.strictObject({ value: z.number(), unit: z.string() })

export const reportSchema = z.strictObject({
  revision: z
    .string()
    .regex(/^[0-9a-f]{8}$/)
    .describe('Mark of the parameter set; every file of the package carries it.'),
  family: z.string(),
  title: z.string(),
  units: z.enum(['mm', 'in']),
  stops: z.int().min(0).describe('Number of findings that stop the job.'),
  parameters: z.array(
    z.strictObject({
      path: z.string(),
      value: z.union([z.number(), z.string(), z.boolean(), z.array(z.union([z.number(), z.string(), z.boolean()]))]),
      unit: z.string(),
      origin: z.enum(['given', 'default', 'rule of thumb', 'derived']),
      says: z.string(),
    }),
  ),
  figures: z.array(
    z.strictObject({
      id: z.string(),
      label: z.string(),
      value: z.number(),
      unit: z.string(),
      limit: z.number().optional(),
      limitIs: z.enum(['least', 'most']).optional(),
      source: z.string(),
    }),
  ),
  tables: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      columns: z.array(z.strictObject({ label: z.string(), unit: z.string() })),
      rows: z
        .array(z.array(z.union([z.number(), z.string()])))
        .describe('A cell a column; empty text where there is nothing.'),
    }),
  ),
  pictures: z
    .array(
      z.strictObject({
        id: z.string(),
        title: z.string(),
        leftOut: z.string().optional().describe('Why report.html does not draw it.'),
        readings: z.array(amount.extend({ id: z.string(), label: z.string() })),
      }),
    )
    .describe('Every number that the pictures of report.html show.'),
  walls: z.array(
    z.strictObject({
      between: z.tuple([z.string(), z.string()]),
      distance: z.number(),
      minimum: z.number().nullable().describe('Null where the two are meant to open into each other.'),
      meant: z.boolean(),
      unit: z.string(),
    }),
  ),
  findings: z.array(
    z.strictObject({
      id: z.string(),
      level: z.enum(['stop', 'caution', 'note']),
      text: z.string(),
      figure: amount.optional(),
      limit: amount.extend({ reason: z.string() }).optional(),
      parameter: z.string().optional().describe('Path of the parameter that the remedy changes.'),
      remedy: z
        .strictObject({ text: z.string(), path: z.string(), to: z.union([z.number(), z.string()]), unit: z.string() })
        .optional(),
    }),
  ),
  dimensions: z.array(
    z.strictObject({
      part: z.string(),
      id: z.string(),
      label: z.string(),
      kind: z.enum(['length', 'diameter', 'radius', 'angle', 'thread']),
      value: z.number(),
      unit: z.string(),
      lower: z.number().optional().describe('Deviation from nominal; left out for the general tolerance.'),
      upper: z.number().optional(),
      reference: z.boolean().describe('Follows from others or cannot be measured: in brackets on a drawing.'),
      thread: z.string().optional(),
    }),
  ),
  parts: z.array(
    z.strictObject({
      id: z.string(),
      label: z.string(),
      material: z.string(),
      volume: amount,
      mass: amount,
      centroid: z.tuple([z.number(), z.number(), z.number()]),
    }),
  ),
  cautions: z.array(z.string()),
})

export type Report = z.output<typeof reportSchema>
