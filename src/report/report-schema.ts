import { z } from 'zod'

/**
 * What `report.json` holds. Numbers are in the unit that stands beside them (the file's own units), rounded to nine
 * significant digits so that the same parameter set gives the same bytes everywhere.
 */
const amount = z.strictObject({ value: z.number(), unit: z.string() })

const change = { path: z.string(), to: z.union([z.number(), z.string(), z.boolean()]), unit: z.string() }

const readout = z.strictObject({ x: z.number().optional(), y: z.number().optional(), z: z.number().optional() })

const setUpSchema = z.strictObject({
  id: z.string(),
  title: z.string(),
  tilt: amount.optional().describe('Of the part’s axis away from the spindle’s; left out: none.'),
  held: z.string(),
  datum: z.string(),
  figures: z.array(
    amount.extend({
      id: z.string(),
      label: z.string(),
      limit: z.number().optional(),
      limitIs: z.enum(['least', 'most']).optional(),
    }),
  ),
  notes: z.array(z.string()),
})

const stepSchema = z.strictObject({
  number: z.int().min(1),
  id: z.string(),
  title: z.string(),
  setUp: z.string().describe('Id of one of setUps.'),
  machine: z.enum(['saw', 'lathe', 'mill', 'press', 'bench', 'spindle']),
  steps: z.array(z.string()),
  tool: z
    .strictObject({
      name: z.string(),
      diameter: amount.optional(),
      reachNeeded: amount.optional(),
      reach: amount.optional().describe('Of the one in the shop’s list; left out: not in the list.'),
    })
    .optional(),
  speed: z
    .strictObject({
      turns: amount,
      atMost: z.boolean().describe('True for a machine whose own speeds are not known.'),
      surface: amount,
      feedPerTurn: amount.optional(),
      feed: amount.optional(),
    })
    .optional(),
  depth: amount.optional(),
  passes: z.int().min(1).optional(),
  travel: z.strictObject({ approach: amount, cut: amount, overrun: amount }).optional(),
  places: z
    .array(z.strictObject({ name: z.string(), mm: readout, in: readout }))
    .describe('What the readout shows, zeroed as the set-up says; Z counts down into the metal.'),
  measure: z.array(
    z.strictObject({
      part: z.string(),
      id: z.string(),
      label: z.string(),
      how: z.string(),
      reading: z.string().optional().describe('What the tool is put on, where that is not the size itself.'),
      thread: z.string().optional(),
      nominal: amount.optional(),
      from: amount.optional(),
      to: amount.optional(),
    }),
  ),
  why: z.string(),
  needs: z.array(z.string()).describe('Ids of steps that are done before.'),
  cautions: z.array(z.string()),
})

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
        .strictObject({
          text: z.string(),
          ...change,
          also: z
            .array(z.strictObject(change))
            .optional()
            .describe('What changes with it: without these it would not do.'),
        })
        .optional(),
    }),
  ),
  dimensions: z.array(
    z.strictObject({
      part: z
        .string()
        .describe('Id of a part; `assembly` or `set-up` for sizes of the tool put together and of its set-up.'),
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
  setUps: z.array(setUpSchema).describe('Clampings, in the order in which they are first used.'),
  route: z.array(stepSchema).describe('Every step of the work, in order.'),
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
