import type { Point } from '../../../drawing/entity.ts'
import { axisMark, coordinateChoices } from '../../../drawing/plan/marks.ts'
import type { ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView } from '../../../drawing/plan/view-lines.ts'
import type { DrawingStyle } from '../../../drawing/style.ts'
import type { ViewFrame } from '../../../edges/entity.ts'
import { viewOf } from '../../../edges/view.ts'
import { cross, negate, scale, type Vec3 } from '../../../geometry/vector.ts'
import { arborTop } from '../assembly-dimensions.ts'
import type { HeadDesign } from '../design.ts'
import { faceFrame } from '../frames.ts'
import { isJoinedFirst, shankDiameter, type TiltedSetUp, tiltedSetUp } from '../making/tilted-set-up.ts'
import { setUpDimensions } from '../set-up-dimensions.ts'
import { datumAt, down } from './body-views.ts'
import { boxed, phantom } from './phantom.ts'
import { Sizes } from './sizes.ts'
import { headViews, onView, pieceOfPart } from './views.ts'

/** Heights of jaws, bed and parallels over the finished face, mm. */
const levelsOf = (set: TiltedSetUp) => {
  const bed = -set.stickUp - set.jawHeight
  return { jaws: -set.stickUp, bed, parallels: bed + set.under }
}

/** The head, and the arbor where it is in by then. */
const pieces = (design: HeadDesign) => [
  pieceOfPart(design, 'body'),
  ...(isJoinedFirst(design) ? [pieceOfPart(design, 'arbor')] : []),
]

/** How far jaws and bed are drawn either way along the slot, mm. */
const jawReach = ({ layout }: HeadDesign): number => 1.3 * layout.corner

/** Square to the jaws, from the side away from the step, the near jaw in phantom: the tilt, and what holds it up. */
export function tiltedView(design: HeadDesign): ViewPlan {
  const { layout: l } = design
  const set = tiltedSetUp(design)
  const { jaws, bed, parallels } = levelsOf(set)
  const sizes = new Sizes(design, setUpDimensions(design))
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const b = headViews(design).bitSide
  const up = negate(face.z)
  const z: Vec3 = [0, -l.step.towards, 0]
  const frame: ViewFrame = { origin: face.origin, x: cross(up, z), y: up, z }
  const half = l.across / 2
  const at = (x: number, height: number): Point => onView(frame, [x, 0, height])
  const [low, high] = [at(half, 0), at(-half, 0)]
  const lowest = set.heldBy === 'shank' ? at(shankDiameter(design) / 2, arborTop(design)) : low
  const long = jawReach(design)
  const [onBit, away] = b > 0 ? (['right', 'left'] as const) : (['left', 'right'] as const)
  const level: Point = [high[0], low[1]]
  return {
    id: 'set-up-tilted',
    caption: ['square to the jaws', 'from the side away from the step; jaws, parallels and blank in phantom'],
    lines: [
      ...drawnView(viewOf(pieces(design), frame), false),
      ...boxed([-long, bed], [long, jaws]),
      ...(set.under > 0 ? phantom([-long, parallels], [long, parallels]) : []),
      ...(set.tilt > 0 ? phantom(high, level) : []),
      ...phantom([b * l.corner, 0], at(half, -l.prismLength), at(-half, -l.prismLength), [-b * l.corner, 0]),
    ],
    marks: axisMark(at(0, 0), [0, 0]),
    requests: [
      ...sizes.at('set-up.stick-up', {
        kind: 'linear',
        direction: 'vertical',
        from: [b * l.corner, 0],
        to: [b * long, jaws],
        side: onBit,
      }),
      ...sizes.at('set-up.jaw-height', {
        kind: 'linear',
        direction: 'vertical',
        from: [b * long, jaws],
        to: [b * long, bed],
        side: onBit,
      }),
      ...sizes.at('set-up.lowest', {
        kind: 'linear',
        direction: 'vertical',
        from: [-b * l.corner, 0],
        to: lowest,
        side: away,
      }),
      ...sizes.at('set-up.under', {
        kind: 'linear',
        direction: 'vertical',
        from: [-b * long, parallels],
        to: [-b * long, bed],
        side: away,
      }),
      ...sizes.at(
        'set-up.tilt',
        b > 0
          ? { kind: 'angle', vertex: low, from: high, to: level }
          : { kind: 'angle', vertex: low, from: level, to: high },
      ),
      datumAt('set-up-tilted', 'O', [0, 0], -down, 'origin'),
    ],
  }
}

/** Along the jaws from the bit side: what they hold, and how far it stands out for slot and step. */
export function alongJaws(design: HeadDesign): ViewPlan {
  const { layout: l } = design
  const set = tiltedSetUp(design)
  const { jaws, bed, parallels } = levelsOf(set)
  const sizes = new Sizes(design, setUpDimensions(design))
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const up = negate(face.z)
  const frame: ViewFrame = { origin: face.origin, x: cross(up, face.x), y: up, z: face.x }
  const half = set.opening / 2
  return {
    id: 'set-up-along',
    caption: ['along the jaws', 'from the bit side'],
    lines: [
      ...drawnView(viewOf(pieces(design), frame), false),
      ...[1, -1].flatMap((k) => [
        ...boxed([k * half, bed], [k * 1.6 * half, jaws]),
        ...(set.under > 0 && !set.lowPoint ? boxed([k * half, bed], [k * 0.8 * half, parallels]) : []),
      ]),
      // What comes down on a point stands on one parallel, midway between the jaws.
      ...(set.under > 0 && set.lowPoint ? boxed([-0.1 * half, bed], [0.1 * half, parallels]) : []),
      ...phantom([-half, bed], [half, bed]),
    ],
    marks: axisMark([0, -set.lowest], [0, 0]),
    requests: [
      ...sizes.at('set-up.opening', {
        kind: 'linear',
        direction: 'horizontal',
        from: [-half, bed],
        to: [half, bed],
        side: 'below',
      }),
      datumAt('set-up-along', 'O', [0, 0], -down, 'origin'),
    ],
  }
}

/** As the spindle sees it, square to the face: zero, and which way X and Y count. */
export function fromAbove(design: HeadDesign, style: DrawingStyle): ViewPlan {
  const { face: frame, bitSide: b } = headViews(design)
  const half = tiltedSetUp(design).opening / 2
  const long = jawReach(design)
  const ends = faceFrame(design.layout.faceAngle, design.layout.depthOnAxis)
  const at = (k: Vec3, by: number): Point => {
    const [x, y] = onView({ ...frame, origin: [0, 0, 0] }, scale(k, by))
    return [x, y]
  }
  return {
    id: 'set-up-above',
    caption: ['from above, at the tilt', `the bit side is on the ${b > 0 ? 'right' : 'left'}; jaws in phantom`],
    lines: [
      ...drawnView(viewOf(pieces(design), frame), false),
      ...[1, -1].flatMap((k) => boxed([-long, k * half], [long, k * 1.3 * half])),
    ],
    choices: [
      coordinateChoices('X', at(ends.x, -long), at(ends.x, long), style),
      coordinateChoices('Y', at(ends.y, -1.3 * half), at(ends.y, 1.3 * half), style),
    ],
    requests: [datumAt('set-up-above', 'O', [0, 0], -Math.PI / 4, 'origin')],
  }
}
