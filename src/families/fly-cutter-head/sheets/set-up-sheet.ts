import type { SheetPlan } from '../../../drawing/plan/sheet-plan.ts'
import type { DrawingStyle } from '../../../drawing/style.ts'
import type { HeadDesign } from '../design.ts'
import { written } from '../words.ts'
import { bodyCoordinates } from './body-coordinates.ts'
import { heldViews } from './set-up-held.ts'
import { laidView } from './set-up-laid.ts'
import { setUpNotes } from './set-up-notes.ts'
import { alongJaws, fromAbove, tiltedView } from './set-up-tilted.ts'

/** How blank, head and tool are held: at the tilt, laid down for the screw holes, and before and after that; coordinates for the readout. */
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
      ...heldViews(design).map((view) => ({ rows: [[view]] })),
    ],
    blocks: [...bodyCoordinates(design, 'by the arrows'), ...setUpNotes(design)],
  }
}
