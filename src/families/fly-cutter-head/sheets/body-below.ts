import { allMarks, axisMark, cutChoices, turningMark } from '../../../drawing/plan/marks.ts'
import type { ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView } from '../../../drawing/plan/view-lines.ts'
import { viewOf } from '../../../edges/view.ts'
import { circumscribed } from '../section.ts'
import { type Body, datumAt, datumOn, halfWide, left, letters, right, slotOnAxis } from './body-views.ts'
import { pieceOfPart } from './views.ts'

/** How far outside the outline a section is marked, mm on paper: the datum on the centre line stands nearer. */
const [cutOut, nextCutOut] = [20, 36]

/** From the work's side: slot and step, which way the head turns, where it is cut along its axis. */
export function belowView({ design, style, views, inFace }: Body): ViewPlan {
  const { parameters: p, layout: l } = design
  const frame = views.below
  const s = views.bitSide
  const [long, wide] = [l.across / 2, halfWide(design)]
  // Seen from below, a tool that turns clockwise seen from the spindle turns the other way.
  const anticlockwise = p.rotation === 'clockwise'
  const turns = turningMark(
    [0, 0],
    circumscribed(p.stock),
    anticlockwise,
    style,
    anticlockwise ? Math.PI / 5 : 0.45 * Math.PI,
  )
  const middle = inFace(frame, [0, (l.slot.leading + l.slot.trailing) / 2, 0])[1]
  const cuts = cutChoices(letters.axisSection, [-long, 0], [long, 0], [0, -1], style, cutOut)
  if (!slotOnAxis(design)) {
    cuts.push(...cutChoices(letters.slotSection, [-long, middle], [long, middle], [0, -1], style, nextCutOut))
  }
  const bore = p.bore.diameter / 2
  const toward = (-3 * Math.PI) / 4
  return {
    id: 'below',
    caption: [
      'from below',
      `turns ${anticlockwise ? 'anticlockwise' : 'clockwise'} seen so, ${p.rotation} seen from the spindle`,
    ],
    lines: drawnView(viewOf([pieceOfPart(design, 'body')], frame)),
    marks: allMarks(axisMark([-long, 0], [long, 0]), axisMark([0, -wide], [0, wide]), turns),
    choices: cuts,
    requests: [
      // The arrows of the section stand above: the letter goes below.
      datumOn('below', 'C', [-s * long, 0], { along: s > 0 ? left : right, side: s }),
      datumAt('below', 'B', [bore * Math.cos(toward), bore * Math.sin(toward)], toward, 'triangle'),
      datumAt('below', 'O', inFace(frame, [0, 0, 0]), -Math.PI / 4, 'origin'),
    ],
  }
}
