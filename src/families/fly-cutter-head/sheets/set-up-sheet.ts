import type { SheetPlan } from '../../../drawing/plan/sheet-plan.ts'
import type { DrawingStyle } from '../../../drawing/style.ts'
import type { HeadDesign } from '../design.ts'
import { bodyCoordinates } from './body-coordinates.ts'
import { laidView } from './set-up-laid.ts'
import { setUpNotes } from './set-up-notes.ts'
import { alongJaws, fromAbove, tiltedView } from './set-up-tilted.ts'
import { written } from './words.ts'

/** How the head is held while it is milled: at the tilt, and laid down for the screw holes; coordinates for the readout. */
export function setUpSheet(design: HeadDesign, style: DrawingStyle): SheetPlan {
  return {
    id: 'set-up',
    part: 'Set-ups',
    material: design.layout.materials.body.title,
    mass: written(design, 'mass', design.mass('body')),
    groups: [
      { rows: [[tiltedView(design), alongJaws(design)]] },
      { rows: [[fromAbove(design, style)]] },
      { rows: [[laidView(design, style)]] },
    ],
    blocks: [...bodyCoordinates(design, 'by the arrows'), ...setUpNotes(design)],
  }
}
