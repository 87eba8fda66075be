import type { SheetPlan, ViewGroup } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView } from '../../../drawing/plan/view-lines.ts'
import type { DrawingStyle } from '../../../drawing/style.ts'
import { viewOf } from '../../../edges/view.ts'
import type { HeadDesign } from '../design.ts'
import { written } from '../words.ts'
import { belowView } from './body-below.ts'
import { bodyCoordinates } from './body-coordinates.ts'
import { faceView } from './body-face.ts'
import { mountingView } from './body-mounting.ts'
import { bodyNotes } from './body-notes.ts'
import { axisSection, screwSection, slotSection } from './body-sections.ts'
import { sideView } from './body-side.ts'
import { bodyIn, slotOnAxis } from './body-views.ts'
import { pieceOfPart } from './views.ts'

/** The head to machine from: datums A mounting face, B bore axis, C mid-plane of the flats, O where B meets the face. */
export function bodySheet(design: HeadDesign, style: DrawingStyle): SheetPlan {
  const body = bodyIn(design, style)
  const first = design.parameters.drawing.projection === 'first-angle'
  const [side, below] = [sideView(body), belowView(body)]
  const alone: ViewGroup[] = [
    axisSection(body),
    ...(slotOnAxis(design) ? [] : [slotSection(body)]),
    faceView(body),
    screwSection(body),
    mountingView(body),
    {
      id: 'pictorial',
      caption: ['pictorial, seen from below'],
      pictorial: true,
      lines: drawnView(viewOf([pieceOfPart(design, 'body')], body.views.pictorial), false),
      requests: [],
    },
  ].map((view) => ({ rows: [[view]] }))
  return {
    id: 'body',
    part: design.part('body').label,
    material: design.layout.materials.body.title,
    mass: written(design, 'mass', design.mass('body')),
    groups: [{ rows: first ? [[below], [side]] : [[side], [below]] }, ...alone],
    blocks: [...bodyCoordinates(design), bodyNotes(design)],
  }
}
