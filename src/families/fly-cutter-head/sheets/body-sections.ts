import type { DimensionRequest } from '../../../drawing/dimensions/request.ts'
import type { Point } from '../../../drawing/entity.ts'
import { axisMark } from '../../../drawing/plan/marks.ts'
import type { ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView, hatchedFaces } from '../../../drawing/plan/view-lines.ts'
import type { ViewFrame } from '../../../edges/entity.ts'
import { sectionOf } from '../../../edges/section.ts'
import { pointFrom } from '../../../geometry/frame.ts'
import type { Vec3 } from '../../../geometry/vector.ts'
import { solidOf } from '../../../part/part.ts'
import { boreToSlot } from '../bore-to-slot.ts'
import { faceFrame } from '../frames.ts'
import { halfLengthAt } from '../section.ts'
import { type Body, datumAt, datumOn, down, letters, up } from './body-views.ts'
import { threadSide } from './thread-lines.ts'
import { onView } from './views.ts'

const hatchAngle = Math.PI / 4

const cutLines = (body: Body, frame: ViewFrame) => {
  const { lines, faces } = sectionOf([{ id: 'body', solid: solidOf(body.design.part('body')), cut: true }], frame)
  return [...drawnView(lines, false), ...hatchedFaces(faces, () => hatchAngle)]
}

const captionOf = (letter: string) => `${letter}–${letter}`

/** Through the axis, seen from the step's side: the bore with its bottom, and what is left under it. */
export function axisSection(body: Body): ViewPlan {
  const { design, sizes, views, inFace } = body
  const { layout: l, parameters: p } = design
  const frame = views.side
  const s = views.bitSide
  const r = p.bore.diameter / 2
  const drilled = l.spigotThread ? l.spigotThread.tapDrill / 2 : r
  const out = s > 0 ? 'right' : 'left'
  const origin = inFace(frame, [0, 0, 0])
  const half = l.across / 2
  const deep = p.bore.kind === 'blind' ? p.bore.depth : undefined
  const requests: DimensionRequest[] = [
    datumOn('axis-section', 'A', [-s * half, 0], { to: [-s * (r + p.bore.chamfer), 0], side: s }),
    datumOn('axis-section', 'B', [0, 0], { along: up }),
    datumAt('axis-section', 'O', origin, down, 'origin'),
  ]
  if (p.bore.kind === 'blind') {
    requests.push(
      ...sizes.at('bore.depth', {
        kind: 'linear',
        direction: 'vertical',
        from: [s * half, 0],
        to: [s * drilled, -p.bore.depth],
        side: out,
      }),
    )
    if (p.bore.bottom === 'drill-point') {
      const point: Point = [0, -p.bore.depth - r / Math.tan(p.bore['point-angle'] / 2)]
      requests.push(
        ...sizes.at('bore.point-angle', {
          kind: 'angle',
          vertex: point,
          from: [r, -p.bore.depth],
          to: [-r, -p.bore.depth],
        }),
      )
    }
  }
  const toSlot = boreToSlot(p, l)
  if (toSlot) {
    const [x, z] = toSlot.from
    const from: Point = [s * x, z]
    const to: Point = [from[0] - s * toSlot.wall * Math.sin(l.faceAngle), from[1] - toSlot.wall * Math.cos(l.faceAngle)]
    requests.push(...sizes.at('bore.wall-to-slot', { kind: 'linear', direction: 'aligned', from, to }))
  }
  const c = p.bore.chamfer
  const foot = l.spigotThread ? -Math.min(deep ?? l.depthOnAxis, l.depthOnAxis) : undefined
  return {
    id: 'axis-section',
    caption: [captionOf(letters.axisSection), 'through the axis'],
    lines: [...cutLines(body, frame), ...(foot === undefined ? [] : threadSide([0, -c], [0, foot], p.bore.diameter))],
    marks: axisMark([0, 0], origin),
    requests,
    ...(c > 0 && {
      details: [
        {
          letter: letters.chamfer,
          says: 'mouth of the bore',
          center: [s * (r + c / 2), -c / 2],
          radius: 2.5 * c,
          toward: s > 0 ? 0.6 : Math.PI - 0.6,
          smallest: c,
          requests: sizes.at('bore.chamfer', {
            kind: 'chamfer',
            from: [s * (r + c), 0],
            to: [s * r, -c],
            toward: s > 0 ? 0.9 : Math.PI - 0.9,
          }),
        },
      ],
    }),
  }
}

/** Along the middle of a slot that does not lie over the axis. */
export function slotSection(body: Body): ViewPlan {
  const { design, views } = body
  const { slot } = design.layout
  const s = views.bitSide
  const middle = (slot.leading + slot.trailing) / 2
  const frame: ViewFrame = { ...views.side, origin: [0, middle, 0] }
  const end = halfLengthAt(design.parameters.stock, middle)
  return {
    id: 'slot-section',
    caption: [captionOf(letters.slotSection), 'along the slot'],
    lines: cutLines(body, frame),
    requests: [datumOn('slot-section', 'A', [-s * end, 0], { to: [0, 0], side: s })],
  }
}

/** Square to the slot through the first screw, seen from the bit: depths and heights from the angled face, the thread. */
export function screwSection(body: Body): ViewPlan {
  const { design, sizes, views } = body
  const { layout: l } = design
  const { screws, step, slot } = l
  const x = screws.xs[0]!
  const frame = views.across(x)
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const at = (y: number, z: number): Point => onView(frame, pointFrom(face, [x, y, z] satisfies Vec3))
  const [onStep, away] = step.towards > 0 ? (['right', 'left'] as const) : (['left', 'right'] as const)
  const h = screws.height
  const far = screws.seat === slot.leading ? slot.trailing : slot.leading
  const { majorDiameter, tapDrill } = screws.thread
  const count = screws.xs.length
  const deepest = Math.max(step.depth, slot.depth)
  const top = (l.depthOnAxis + x * Math.sin(l.faceAngle)) / Math.cos(l.faceAngle)
  return {
    id: 'screw-section',
    caption: [
      captionOf(letters.screwSection),
      count > 1 ? 'through the first screw hole, square to the face' : 'through the screw hole, square to the face',
    ],
    lines: [...cutLines(body, frame), ...threadSide(at(screws.seat, h), at(step.wall, h), majorDiameter)],
    marks: (scale) => [
      ...axisMark(at(screws.seat, h), at(step.wall, h))(scale),
      ...axisMark(at(0, 0), at(0, top))(scale),
    ],
    requests: [
      datumOn('screw-section', 'C', at(0, top), { along: up }),
      datumAt('screw-section', 'O', at(0, 0), down, 'origin'),
    ],
    details: [
      {
        letter: letters.screwHole,
        says: 'slot, step and screw hole',
        center: at((step.wall + far) / 2, deepest / 2),
        radius: 0.6 * Math.hypot(step.wall - far, deepest),
        toward: step.towards > 0 ? 0.7 : Math.PI - 0.7,
        smallest: tapDrill,
        requests: [
          ...sizes.at('screw-hole-1.height', {
            kind: 'linear',
            direction: 'vertical',
            from: at(step.wall, 0),
            to: at(step.wall, h),
            side: onStep,
          }),
          ...sizes.at('step.depth', {
            kind: 'linear',
            direction: 'vertical',
            from: at(step.wall, 0),
            to: at(step.wall, step.depth),
            side: onStep,
          }),
          ...sizes.at('slot.depth', {
            kind: 'linear',
            direction: 'vertical',
            from: at(far, 0),
            to: at(far, slot.depth),
            side: away,
          }),
          ...sizes.at(
            'screw-hole-1.thread',
            {
              kind: 'thread',
              from: at((screws.seat + step.wall) / 2, h - majorDiameter / 2),
              to: at((screws.seat + step.wall) / 2, h + majorDiameter / 2),
              toward: step.towards > 0 ? 0.9 : Math.PI - 0.9,
            },
            { count, after: 'through', thread: { designation: screws.thread.name } },
          ),
          ...sizes.at(
            'screw-hole-1.tap-drill',
            {
              kind: 'linear',
              direction: 'vertical',
              from: at(step.wall, h - tapDrill / 2),
              to: at(step.wall, h + tapDrill / 2),
              side: onStep,
            },
            { count, after: 'tap drill' },
          ),
        ],
      },
    ],
  }
}
