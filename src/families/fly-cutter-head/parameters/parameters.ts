import { z } from 'zod'
import { type Fields, fields } from '../../../input/fields.ts'
import type { Units } from '../../../quantity/kind.ts'
import { arborSection, fitSection } from './arbor.ts'
import { bitSection } from './bit.ts'
import { boreSection, faceSection, screwsSection, slotSection, stepSection, stockSection } from './body.ts'
import { drawingSection, machineSection, mockUpSection, shopSection, workSection } from './job.ts'
import { makingSection } from './making.ts'
import { settingsSection } from './settings.ts'

/** Schema of a parameter set of a fly-cutter head; a bare number takes `units`. Made once for each. */
export const parametersSchema = (units: Units) => {
  made[units] ??= makeSchema(units)
  return made[units]
}

const made: { [units in Units]?: ReturnType<typeof makeSchema> } = {}

function makeSchema(units: Units) {
  const f: Fields = fields(units)
  return z.strictObject({
    family: z.literal('fly-cutter-head').describe('Kind of tool.'),
    title: f.text({ says: 'Name of the job, for the title block.' }),
    'drawing-number': f.text({ says: 'Your own number. Left out: none.', optional: true }),
    units: f.choice(['mm', 'in'], { says: 'Unit of every bare length in this file.' }),
    rotation: f.choice(['clockwise', 'anticlockwise'], {
      says: 'Which way the spindle turns, seen from the spindle looking down at the work.',
    }),
    stock: stockSection(f),
    face: faceSection(f),
    bit: bitSection(f),
    slot: slotSection(f),
    step: stepSection(f),
    screws: screwsSection(f),
    bore: boreSection(f),
    arbor: arborSection(f),
    fit: fitSection(f),
    work: workSection(f),
    machine: machineSection(f),
    shop: shopSection(f),
    making: makingSection(f),
    drawing: drawingSection(f),
    'mock-up': mockUpSection(f),
    settings: settingsSection(f),
  })
}

/** A parameter set as read: lengths in mm, angles in rad, everything else as `quantity/kind.ts` says. */
export type Parameters = z.output<ReturnType<typeof parametersSchema>>
