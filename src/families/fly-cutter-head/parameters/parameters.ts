import { z } from 'zod'
import { type Fields, fields } from '../../../input/fields.ts'
import { unitsMeant } from '../../../input/file-units.ts'
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
    units: f.choice(['mm', 'in'], { says: 'Unit of every bare length in this file.', meaning: unitsMeant }),
    rotation: f.choice(['clockwise', 'anticlockwise'], {
      says: 'Which way the spindle turns, seen from the spindle looking down at the work.',
    }),
    stock: stockSection(f).describe('Bar that the head is cut from.'),
    face: faceSection(f).describe('Angled face at the working end, which the slot is milled into.'),
    bit: bitSection(f).describe('Tool bit: its blank, how far it stands out, and what is ground on it.'),
    slot: slotSection(f).describe('Slot that the bit lies in.'),
    step: stepSection(f).describe('Step beside the slot, which leaves the wall for the set screws.'),
    screws: screwsSection(f).describe('Set screws that hold the bit.'),
    bore: boreSection(f).describe('Bore in the mounting face, for the arbor.'),
    arbor: arborSection(f).describe('Arbor that goes into the bore and into the spindle.'),
    fit: fitSection(f).describe('How head and arbor are fitted, joined and kept together.'),
    work: workSection(f).describe('The cut to be taken.'),
    machine: machineSection(f).describe('What the mill has and can do.'),
    shop: shopSection(f).describe('What lies in the drawer: set-ups and measuring are planned with it.'),
    making: makingSection(f).describe('How the head is made: order of joining, machines, and data of the cutters.'),
    drawing: drawingSection(f).describe('How the drawings are laid out.'),
    'mock-up': mockUpSection(f).describe('The printed mock-up, to be turned by hand only.'),
    settings: settingsSection(f).describe('Rules of thumb of the trade, which the shop may change.'),
  })
}

/** A parameter set as read: lengths in mm, angles in rad, everything else as `quantity/kind.ts` says. */
export type Parameters = z.output<ReturnType<typeof parametersSchema>>
