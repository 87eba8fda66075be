import type { Point } from '../../../drawing/entity.ts'
import { allMarks, axisMark, coordinateChoices } from '../../../drawing/plan/marks.ts'
import type { ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView } from '../../../drawing/plan/view-lines.ts'
import type { Entity } from '../../../edges/entity.ts'
import { viewOf } from '../../../edges/view.ts'
import type { HeadDesign } from '../design.ts'
import { type Body, datumAt, datumOn, down, faceEndAt, halfWide, left, letters, right } from './body-views.ts'
import { onView, pieceOfPart } from './views.ts'

/** Square to the angled face: where slot, step and screws lie in the tilted set-up, with its axes. */
export function faceView({ design, style, sizes, views, inFace }: Body): ViewPlan {
  const { layout: l, parameters: p } = design
  const frame = views.face
  const s = views.bitSide
  const at = (x: number, y: number): Point => inFace(frame, [x, y, 0])
  const { slot, step, screws, hand } = l
  // Beside the face the bar is seen up to the mounting face.
  const far = onView(frame, [-l.across / 2, 0, 0])
  const end: Point = Math.abs(far[0]) > Math.abs(at(-l.corner, 0)[0]) ? far : at(-l.corner, 0)
  const half = p.stock.size / 2
  const wide = halfWide(design)
  const [out, back] = s > 0 ? (['right', 'left'] as const) : (['left', 'right'] as const)
  const endAt = (y: number) => faceEndAt(design, y)
  // A stopped slot has walls on the bit side only.
  const [slotSide, slotEnd] = slot.end ? ([out, 1] as const) : ([back, -1] as const)
  const { visible, smooth, hidden } = viewOf([pieceOfPart(design, 'body')], frame)
  const holes = hidden.filter((e) => isScrewHole(e, design, at))
  return {
    id: 'face',
    caption: [letters.face, 'true size, square to the angled face'],
    lines: drawnView({ visible, smooth, hidden: holes }),
    marks: allMarks(...screws.xs.map((x) => axisMark(at(x, screws.seat), at(x, step.wall + step.towards * 2)))),
    choices: [
      coordinateChoices('X', end, at(l.corner, 0), style),
      coordinateChoices('Y', at(0, -wide), at(0, wide), style),
    ],
    requests: [
      ...screws.xs.flatMap((x, i) =>
        sizes.at(`screw-hole-${i + 1}.x`, {
          kind: 'linear',
          direction: 'horizontal',
          from: i === 0 ? at(0, step.towards * wide) : at(screws.xs[0]!, step.wall),
          to: at(x, step.wall),
          side: 'above',
        }),
      ),
      ...sizes.at('slot.width', {
        kind: 'linear',
        direction: 'vertical',
        from: at(endAt(slot.leading), slot.leading),
        to: at(endAt(slot.trailing), slot.trailing),
        side: out,
      }),
      ...sizes.at('slot.ahead', {
        kind: 'linear',
        direction: 'vertical',
        from: at(slotEnd * l.corner, 0),
        to: at(slotEnd * endAt(slot.leading), slot.leading),
        side: slotSide,
      }),
      ...sizes.at('slot.from-flat', {
        kind: 'linear',
        direction: 'vertical',
        from: at(slotEnd * endAt(half), hand * half),
        to: at(slotEnd * endAt(slot.leading), slot.leading),
        side: slotSide,
      }),
      ...sizes.at('step.wall', {
        kind: 'linear',
        direction: 'vertical',
        from: at(endAt(screws.seat), screws.seat),
        to: at(endAt(step.wall), step.wall),
        side: out,
      }),
      ...(slot.end
        ? sizes.at('slot.beyond-axis', {
            kind: 'linear',
            direction: 'horizontal',
            from: at(0, -step.towards * wide),
            to: at(slot.end.x, (slot.leading + slot.trailing) / 2),
            side: 'below',
          })
        : []),
      datumOn('face', 'C', end, { along: s > 0 ? left : right }),
      datumAt('face', 'O', at(0, 0), down, 'origin'),
    ],
    ...(slot.end && {
      details: [
        {
          letter: letters.slotEnd,
          says: 'corner of the slot end',
          ...slotCorner(at, l),
          smallest: slot.end.radius,
          requests: sizes.at('slot.end-radius', slotEndRadius(at, l)),
        },
      ],
    }),
  }
}

/** Whether a hidden edge is the side of a screw hole. */
function isScrewHole(e: Entity, { layout: { screws } }: HeadDesign, at: (x: number, y: number) => Point): boolean {
  const r = screws.thread.tapDrill / 2
  if (e.kind !== 'line' || Math.abs(e.from[0] - e.to[0]) > 1e-6) return false
  return screws.xs.some((x) => Math.abs(Math.abs(e.from[0] - at(x, 0)[0]) - r) < 1e-6)
}

/** Middle of the arc that the end mill leaves at the leading wall, and room to see it in. */
function slotCorner(at: (x: number, y: number) => Point, { slot, hand }: HeadDesign['layout']) {
  const { x, radius } = slot.end!
  const k = radius * (1 - Math.SQRT1_2)
  const center = at(x + k, slot.leading - hand * k)
  const corner = at(x - radius, slot.leading + hand * radius)
  return {
    center,
    radius: 2.5 * radius,
    toward: Math.atan2(corner[1] - center[1], corner[0] - center[0]),
  }
}

/** The corner of a stopped slot's end: on its leading wall. */
function slotEndRadius(at: (x: number, y: number) => Point, { slot, hand }: HeadDesign['layout']) {
  const { x, radius } = slot.end!
  const center = at(x + radius, slot.leading - hand * radius)
  const [a, b] = [at(x, slot.leading - hand * radius), at(x + radius, slot.leading)]
  const angle = (q: Point) => Math.atan2(q[1] - center[1], q[0] - center[0])
  const [p, q] = [angle(a), angle(b)]
  const turn = (((q - p) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
  return { kind: 'radius' as const, center, radius, start: turn < Math.PI ? p : q, end: turn < Math.PI ? q : p }
}
