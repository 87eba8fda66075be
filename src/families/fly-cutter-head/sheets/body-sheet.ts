import type { DimensionRequest } from '../../../drawing/dimensions/request.ts'
import type { Point } from '../../../drawing/entity.ts'
import {
  allMarks,
  axisMark,
  crossMark,
  cutMark,
  lookMark,
  originMark,
  turningMark,
} from '../../../drawing/plan/marks.ts'
import type { SheetPlan, ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView, hatchedFaces } from '../../../drawing/plan/view-lines.ts'
import type { DrawingStyle } from '../../../drawing/style.ts'
import type { ViewFrame } from '../../../edges/entity.ts'
import { sectionOf } from '../../../edges/section.ts'
import { viewOf } from '../../../edges/view.ts'
import { pointFrom } from '../../../geometry/frame.ts'
import { dot, type Vec3 } from '../../../geometry/vector.ts'
import { solidOf } from '../../../part/part.ts'
import type { HeadDesign } from '../design.ts'
import { faceFrame } from '../frames.ts'
import { circumscribed } from '../section.ts'
import { bodyCoordinates } from './body-coordinates.ts'
import { bodyNotes } from './body-notes.ts'
import { Sizes } from './sizes.ts'
import { threadEnd, threadSide } from './thread-lines.ts'
import { headViews, onView, pieceOfPart } from './views.ts'
import { written } from './words.ts'

/** Everything that the views of the head are drawn from. */
interface Body {
  readonly design: HeadDesign
  readonly style: DrawingStyle
  readonly sizes: Sizes
  readonly views: ReturnType<typeof headViews>
  /** A point of the face frame in a view. */
  readonly inFace: (view: ViewFrame, p: Vec3) => Point
}

const hatchAngle = Math.PI / 4

/** The head to machine from: datums A mounting face, B bore axis, C mid-plane of the flats, O where B meets the face. */
export function bodySheet(design: HeadDesign, style: DrawingStyle): SheetPlan {
  const face = faceFrame(design.layout.faceAngle, design.layout.depthOnAxis)
  const body: Body = {
    design,
    style,
    sizes: new Sizes(design, 'body'),
    views: headViews(design),
    inFace: (view, p) => onView(view, pointFrom(face, p)),
  }
  const first = design.parameters.drawing.projection === 'first-angle'
  const [side, below] = [sideView(body), belowView(body)]
  return {
    id: 'body',
    part: design.part('body').label,
    material: design.layout.materials.body.title,
    mass: written(design, 'mass', design.mass('body')),
    groups: [
      { rows: first ? [[below], [side]] : [[side], [below]] },
      { rows: [[axisSection(body)]] },
      { rows: [[faceView(body)]] },
      { rows: [[screwSection(body)]] },
      { rows: [[mountingView(body)]] },
      { rows: [[pictorialView(body)]] },
    ],
    blocks: [...bodyCoordinates(design), bodyNotes(design)],
  }
}

/** A datum letter in its frame. */
const datum = (view: string, letter: string, to: Point, toward: number): DimensionRequest => ({
  kind: 'note',
  id: `datum-${letter}@${view}`,
  text: [letter],
  value: 0,
  to,
  toward,
  frame: 'box',
  tip: letter === 'O' ? 'arrow' : 'triangle',
})

const [right, up, left, down] = [0, Math.PI / 2, Math.PI, -Math.PI / 2]

function sideView({ design, style, sizes, views, inFace }: Body): ViewPlan {
  const { layout: l } = design
  const frame = views.side
  const s = views.bitSide
  const [long, short] = [inFace(frame, [l.corner, 0, 0]), inFace(frame, [-l.corner, 0, 0])]
  const origin = inFace(frame, [0, 0, 0])
  const half = l.across / 2
  const onBit = s > 0 ? 'right' : 'left'
  const away = s > 0 ? 'left' : 'right'
  const tilted = l.faceAngle > 0
  return {
    id: 'side',
    caption: ['side view, on the step'],
    lines: [
      ...drawnView(viewOf([pieceOfPart(design, 'body')], frame)),
      // The face as it is before slot and step are cut: its corners carry sizes.
      { kind: 'line', layer: 'phantom', from: short, to: long },
    ],
    marks: allMarks(
      axisMark([0, 0], [0, -l.prismLength]),
      originMark(origin, style),
      cutMark(
        'B',
        inFace(frame, [l.screws.xs[0]!, 0, -1]),
        inFace(frame, [l.screws.xs[0]!, 0, l.screws.height * 2]),
        [-s * Math.cos(l.faceAngle), Math.sin(l.faceAngle)],
        style,
      ),
      lookMark('C', inFace(frame, [-0.6 * l.corner, 0, 0]), [s * Math.sin(l.faceAngle), Math.cos(l.faceAngle)], style),
    ),
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
      ...(tilted
        ? sizes.at(
            'face.angle',
            s > 0
              ? { kind: 'angle', vertex: short, from: long, to: [half, short[1]] }
              : { kind: 'angle', vertex: short, from: [-half, short[1]], to: long },
          )
        : []),
      datum('side', 'A', [-s * half * 0.6, 0], up),
      datum('side', 'B', [0, 0], up),
      datum('side', 'O', origin, down),
    ],
  }
}

function belowView({ design, style, sizes, views, inFace }: Body): ViewPlan {
  const { parameters: p } = design
  const frame = views.below
  const half = circumscribed(p.stock)
  const flat = p.stock.size / 2
  const round = p.stock.shape === 'round'
  const acrossY = !round && (p.stock.shape === 'square' || p.stock['slot-runs'] === 'point-to-point')
  // Seen from below, a tool that turns clockwise seen from the spindle turns the other way.
  const anticlockwise = p.rotation === 'clockwise'
  return {
    id: 'below',
    caption: [
      'from below',
      `turns ${anticlockwise ? 'anticlockwise' : 'clockwise'} seen so, ${p.rotation} seen from the spindle`,
    ],
    lines: drawnView(viewOf([pieceOfPart(design, 'body')], frame)),
    marks: allMarks(
      axisMark([-half, 0], [half, 0]),
      axisMark([0, -half], [0, half]),
      cutMark('A', [-half, 0], [half, 0], [0, -1], style, 9),
      turningMark([0, 0], half, anticlockwise, style, anticlockwise ? Math.PI / 5 : 0.45 * Math.PI),
    ),
    requests: [
      ...(round
        ? sizes.at('stock.size', { kind: 'diameter', center: [0, 0], radius: flat, toward: (3 * Math.PI) / 4 })
        : sizes.at(
            'stock.size',
            acrossY
              ? {
                  kind: 'linear',
                  direction: 'vertical',
                  from: [0, -flat],
                  to: [0, flat],
                  side: views.bitSide > 0 ? 'left' : 'right',
                }
              : { kind: 'linear', direction: 'horizontal', from: [-flat, 0], to: [flat, 0], side: 'below' },
            { after: 'across flats' },
          )),
      datum('below', 'B', [0, 0], down),
      datum('below', 'C', [-views.bitSide * half, 0], views.bitSide > 0 ? left : right),
      datum('below', 'O', inFace(frame, [0, 0, 0]), up),
    ],
  }
}

function faceView({ design, style, sizes, views, inFace }: Body): ViewPlan {
  const { layout: l, parameters: p } = design
  const frame = views.face
  const s = views.bitSide
  const at = (x: number, y: number): Point => inFace(frame, [x, y, 0])
  const half = p.stock.size / 2
  const { slot, step, screws, hand } = l
  const far = circumscribed(p.stock)
  const out = s > 0 ? 'right' : 'left'
  const back = s > 0 ? 'left' : 'right'
  const stepSide = step.towards
  const outX = 0.55 * l.corner
  return {
    id: 'face',
    caption: ['C', 'true size, square to the angled face'],
    lines: drawnView(viewOf([pieceOfPart(design, 'body')], frame)),
    marks: allMarks(
      axisMark(at(-l.corner, 0), at(l.corner, 0)),
      axisMark(at(0, -far), at(0, far)),
      originMark(at(0, 0), style),
      ...screws.xs.map((x) => axisMark(at(x, screws.seat), at(x, step.wall + stepSide * 2))),
    ),
    requests: [
      ...screws.xs.flatMap((x, i) =>
        sizes.at(`screw-hole-${i + 1}.x`, {
          kind: 'linear',
          direction: 'horizontal',
          from: i === 0 ? at(0, 0) : at(screws.xs[i - 1]!, step.wall),
          to: at(x, step.wall),
          side: 'above',
        }),
      ),
      ...sizes.at('slot.width', {
        kind: 'linear',
        direction: 'vertical',
        from: at(outX, slot.leading),
        to: at(outX, slot.trailing),
        side: out,
      }),
      ...sizes.at('slot.ahead', {
        kind: 'linear',
        direction: 'vertical',
        from: at(0, 0),
        to: at(-outX, slot.leading),
        side: back,
      }),
      ...sizes.at('slot.from-flat', {
        kind: 'linear',
        direction: 'vertical',
        from: at(0, hand * half),
        to: at(-outX, slot.leading),
        side: back,
      }),
      ...sizes.at('step.wall', {
        kind: 'linear',
        direction: 'vertical',
        from: at(outX, screws.seat),
        to: at(outX, step.wall),
        side: out,
      }),
      ...(slot.end
        ? [
            ...sizes.at('slot.beyond-axis', {
              kind: 'linear',
              direction: 'horizontal',
              from: at(0, 0),
              to: at(slot.end.x, (slot.leading + slot.trailing) / 2),
              side: 'below',
            }),
            ...sizes.at(
              'slot.end-radius',
              slotEndRadius((q) => at(...q), l),
            ),
          ]
        : []),
      datum('face', 'C', at(-l.corner * 0.9, 0), s > 0 ? left : right),
      datum('face', 'O', at(0, 0), down),
    ],
  }
}

/** The corner of a stopped slot's end: on its leading wall. */
function slotEndRadius(at: (p: [number, number]) => Point, { slot, hand }: HeadDesign['layout']) {
  const { x, radius } = slot.end!
  const center = at([x + radius, slot.leading - hand * radius])
  const [a, b] = [at([x, slot.leading - hand * radius]), at([x + radius, slot.leading])]
  const angle = (q: Point) => Math.atan2(q[1] - center[1], q[0] - center[0])
  const [p, q] = [angle(a), angle(b)]
  const turn = (((q - p) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
  return { kind: 'radius' as const, center, radius, start: turn < Math.PI ? p : q, end: turn < Math.PI ? q : p }
}

function axisSection({ design, style, sizes, views, inFace }: Body): ViewPlan {
  const { layout: l, parameters: p } = design
  const frame = views.side
  const s = views.bitSide
  const { lines, faces } = sectionOf([{ id: 'body', solid: solidOf(design.part('body')), cut: true }], frame)
  const r = p.bore.diameter / 2
  const out = s > 0 ? 'right' : 'left'
  const origin = inFace(frame, [0, 0, 0])
  const deep = p.bore.kind === 'blind' ? p.bore.depth : undefined
  const requests: DimensionRequest[] = [
    ...sizes.at('slot.depth', {
      kind: 'linear',
      direction: 'aligned',
      from: inFace(frame, [-0.62 * l.corner, 0, 0]),
      to: inFace(frame, [-0.62 * l.corner, 0, l.slot.depth]),
    }),
    datum('axis-section', 'A', [-s * (l.across / 2) * 0.75, 0], up),
    datum('axis-section', 'B', [0, 0], up),
    datum('axis-section', 'O', origin, down),
  ]
  if (p.bore.chamfer > 0) {
    const c = p.bore.chamfer
    requests.push(
      ...sizes.at('bore.chamfer', {
        kind: 'chamfer',
        from: [s * (r + c), 0],
        to: [s * r, -c],
        toward: s > 0 ? 0.5 : Math.PI - 0.5,
      }),
    )
  }
  if (deep !== undefined) {
    requests.push(
      ...sizes.at('bore.depth', {
        kind: 'linear',
        direction: 'vertical',
        from: [s * (r + p.bore.chamfer), 0],
        to: [s * r, -deep],
        side: out,
      }),
    )
    if (p.bore.kind === 'blind' && p.bore.bottom === 'drill-point') {
      const point: Point = [0, -deep - r / Math.tan(p.bore['point-angle'] / 2)]
      requests.push(
        ...sizes.at('bore.point-angle', { kind: 'angle', vertex: point, from: [r, -deep], to: [-r, -deep] }),
      )
    }
  }
  return {
    id: 'axis-section',
    caption: ['A–A', 'through the axis'],
    lines: [...drawnView(lines, false), ...hatchedFaces(faces, () => hatchAngle)],
    marks: allMarks(axisMark([0, 0], [0, -l.prismLength]), originMark(origin, style)),
    requests,
  }
}

function screwSection({ design, sizes, views }: Body): ViewPlan {
  const { layout: l } = design
  const x = l.screws.xs[0]!
  const frame = views.across(x)
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const at = (y: number, z: number): Point => {
    const p = pointFrom(face, [x, y, z])
    return [
      dot([p[0] - frame.origin[0], p[1] - frame.origin[1], p[2] - frame.origin[2]], frame.x),
      dot([p[0] - frame.origin[0], p[1] - frame.origin[1], p[2] - frame.origin[2]], frame.y),
    ]
  }
  const { lines, faces } = sectionOf([{ id: 'body', solid: solidOf(design.part('body')), cut: true }], frame)
  const { screws, step } = l
  const onStep = step.towards > 0 ? 'right' : 'left'
  const away = step.towards > 0 ? 'left' : 'right'
  const h = screws.height
  const { majorDiameter, tapDrill } = screws.thread
  const count = screws.xs.length
  return {
    id: 'screw-section',
    caption: ['B–B', count > 1 ? 'through the first screw hole' : 'through the screw hole'],
    lines: [
      ...drawnView(lines, false),
      ...hatchedFaces(faces, () => hatchAngle),
      ...threadSide(at(screws.seat, h), at(step.wall, h), majorDiameter),
    ],
    marks: axisMark(at(screws.seat, h), at(step.wall, h)),
    requests: [
      ...sizes.at('screw-hole-1.height', {
        kind: 'linear',
        direction: 'vertical',
        from: at(screws.seat, 0),
        to: at(step.wall, h),
        side: onStep,
      }),
      ...sizes.at('step.depth', {
        kind: 'linear',
        direction: 'vertical',
        from: at(screws.seat, 0),
        to: at(step.wall + step.towards * 3, step.depth),
        side: onStep,
      }),
      ...sizes.at(
        'screw-hole-1.thread',
        {
          kind: 'thread',
          from: at((screws.seat + step.wall) / 2, h - majorDiameter / 2),
          to: at((screws.seat + step.wall) / 2, h + majorDiameter / 2),
          toward: step.towards > 0 ? 0.9 : Math.PI - 0.9,
        },
        { count, thread: { designation: screws.thread.name } },
      ),
      ...sizes.at(
        'screw-hole-1.tap-drill',
        {
          kind: 'linear',
          direction: 'vertical',
          from: at(screws.seat, h - tapDrill / 2),
          to: at(screws.seat, h + tapDrill / 2),
          side: away,
        },
        { count, after: 'drill' },
      ),
      datum('screw-section', 'O', at(0, 0), step.towards > 0 ? -2.2 : -0.9),
      datum('screw-section', 'C', at(0, l.slot.depth / 2), down),
    ],
  }
}

function mountingView({ design, sizes, views }: Body): ViewPlan {
  const { parameters: p, layout: l } = design
  const frame = views.above
  const half = circumscribed(p.stock)
  const r = p.bore.diameter / 2
  const threaded = p.fit.kind === 'threaded'
  const lines = viewOf([pieceOfPart(design, 'body')], frame)
  return {
    id: 'mounting',
    caption: ['mounting side, from above'],
    lines: [...drawnView(lines, false), ...(threaded ? threadEnd([0, 0], p.bore.diameter / 2) : [])],
    marks: crossMark([0, 0], half),
    requests: [
      ...(threaded
        ? [
            ...sizes.at(
              'bore.diameter',
              {
                kind: 'thread',
                from: [-r * Math.SQRT1_2, -r * Math.SQRT1_2],
                to: [r * Math.SQRT1_2, r * Math.SQRT1_2],
                toward: Math.PI / 4,
              },
              { thread: { designation: l.spigotThread!.name } },
            ),
            ...sizes.at('bore.tap-drill', {
              kind: 'diameter',
              center: [0, 0],
              radius: l.spigotThread!.tapDrill / 2,
              toward: -Math.PI / 4,
            }),
          ]
        : sizes.at('bore.diameter', { kind: 'diameter', center: [0, 0], radius: r, toward: Math.PI / 4 })),
      ...(p.bore.kind === 'blind' && p.bore.vent === 'hole'
        ? sizes.at('vent.diameter', {
            kind: 'diameter',
            center: [0, 0],
            radius: p.bore['vent-size'] / 2,
            toward: (-3 * Math.PI) / 4,
          })
        : []),
      datum('mounting', 'B', [0, 0], (3 * Math.PI) / 4),
      datum('mounting', 'C', [half, 0], right),
    ],
  }
}

function pictorialView({ design, views }: Body): ViewPlan {
  return {
    id: 'pictorial',
    caption: ['pictorial, seen from below'],
    pictorial: true,
    lines: drawnView(viewOf([pieceOfPart(design, 'body')], views.pictorial), false),
    requests: [],
  }
}
