import type { Point } from '../../../drawing/entity.ts'
import { allMarks, axisMark, crossMark, cutChoices, lookChoices } from '../../../drawing/plan/marks.ts'
import type { ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView } from '../../../drawing/plan/view-lines.ts'
import { viewOf } from '../../../edges/view.ts'
import { type Body, datumAt, datumOn, down, letters, up } from './body-views.ts'
import { threadEnd } from './thread-lines.ts'
import { pieceOfPart } from './views.ts'

/** Looking at the step: the face's angle, its heights, the screw holes end on. */
export function sideView({ design, style, sizes, views, inFace }: Body): ViewPlan {
  const { layout: l } = design
  const frame = views.side
  const s = views.bitSide
  const [long, short] = [inFace(frame, [l.corner, 0, 0]), inFace(frame, [-l.corner, 0, 0])]
  const origin = inFace(frame, [0, 0, 0])
  const half = l.across / 2
  // The view has no line square to the axis here: the angle draws its own.
  const level: Point = [short[0] + s, short[1]]
  const [onBit, away] = s > 0 ? (['right', 'left'] as const) : (['left', 'right'] as const)
  const [sin, cos] = [Math.sin(l.faceAngle), Math.cos(l.faceAngle)]
  const { xs, height, thread } = l.screws
  // The section through the first screw runs square to the face, up to the mounting face or out of the bit side.
  const aside = sin > 0 ? (half - xs[0]! * cos) / sin : Infinity
  const top = Math.max(height, Math.min((l.depthOnAxis + xs[0]! * sin) / cos, aside))
  return {
    id: 'side',
    caption: ['side view, on the step'],
    lines: [
      ...drawnView(viewOf([pieceOfPart(design, 'body')], frame)),
      ...xs.flatMap((x) => threadEnd(inFace(frame, [x, 0, height]), thread.majorDiameter / 2)),
      // The face as it is before slot and step are cut: its corners carry sizes.
      { kind: 'line', layer: 'phantom', from: short, to: long },
    ],
    marks: allMarks(
      axisMark([0, 0], origin),
      ...xs.map((x) => crossMark(inFace(frame, [x, 0, height]), thread.majorDiameter / 2)),
    ),
    choices: [
      ...cutChoices(
        letters.screwSection,
        inFace(frame, [xs[0]!, 0, 0]),
        inFace(frame, [xs[0]!, 0, top]),
        [-s * cos, sin],
        style,
      ),
      lookChoices(
        letters.face,
        [-0.3, 0.3, -0.6, 0.6].map((k) => inFace(frame, [k * l.corner, 0, 0])),
        [s * sin, cos],
        style,
      ),
    ],
    requests: [
      ...sizes.at('face.long-side', {
        kind: 'linear',
        direction: 'vertical',
        from: [s * half, 0],
        to: long,
        side: onBit,
      }),
      ...sizes.at('face.short-side', {
        kind: 'linear',
        direction: 'vertical',
        from: [-s * half, 0],
        to: short,
        side: away,
      }),
      ...sizes.at('face.depth-on-axis', {
        kind: 'linear',
        direction: 'vertical',
        from: [0, 0],
        to: origin,
        side: away,
      }),
      ...sizes.at(
        'face.angle',
        s > 0
          ? { kind: 'angle', vertex: short, from: long, to: level }
          : { kind: 'angle', vertex: short, from: level, to: long },
      ),
      datumOn('side', 'A', [-s * half, 0], { to: [0, 0], side: s }),
      datumOn('side', 'B', [0, 0], { along: up }),
      datumAt('side', 'O', origin, down, 'origin'),
    ],
  }
}
