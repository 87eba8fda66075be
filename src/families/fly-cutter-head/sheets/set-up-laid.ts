import { allMarks, coordinateChoices, crossMark } from '../../../drawing/plan/marks.ts'
import type { ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView } from '../../../drawing/plan/view-lines.ts'
import type { DrawingStyle } from '../../../drawing/style.ts'
import { viewOf } from '../../../edges/view.ts'
import { pointFrom } from '../../../geometry/frame.ts'
import type { HeadDesign } from '../design.ts'
import { faceFrame } from '../frames.ts'
import { datumOn, up } from './body-views.ts'
import { threadEnd } from './thread-lines.ts'
import { headViews, onView, pieceOfPart } from './views.ts'

/** Laid down with the step up and level, as the spindle sees it: the screw holes and what they are measured from. */
export function laidView(design: HeadDesign, style: DrawingStyle): ViewPlan {
  const { layout: l } = design
  const { side: frame, bitSide: b } = headViews(design)
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const { xs, height, thread } = l.screws
  const holes = xs.map((x) => onView(frame, pointFrom(face, [x, 0, height])))
  const half = l.across / 2
  return {
    id: 'set-up-laid',
    caption: ['from above, laid down', 'step up and level; screws by their numbers in the table'],
    lines: [
      ...drawnView(viewOf([pieceOfPart(design, 'body')], frame), false),
      ...holes.flatMap((at) => threadEnd(at, thread.majorDiameter / 2)),
    ],
    marks: allMarks(...holes.map((at) => crossMark(at, thread.majorDiameter / 2))),
    choices: [
      coordinateChoices('from B', [-b * half, 0], [b * half, 0], style),
      coordinateChoices('from A', [0, 0], [0, -l.depthOnAxis], style),
    ],
    requests: [
      datumOn('set-up-laid', 'A', [-b * half, 0], { to: [0, 0], side: b }),
      datumOn('set-up-laid', 'B', [0, 0], { along: up }),
      ...holes.map((to, i) => ({
        kind: 'note' as const,
        id: `screw-${i + 1}@set-up-laid`,
        text: [`${i + 1}`],
        value: 0,
        to,
        frame: 'circle' as const,
        tip: 'dot' as const,
      })),
    ],
  }
}
