import type { Entity, Point } from '../../../drawing/entity.ts'
import { axisMark } from '../../../drawing/plan/marks.ts'
import type { ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView } from '../../../drawing/plan/view-lines.ts'
import type { LayerName } from '../../../drawing/style.ts'
import type { ViewFrame } from '../../../edges/entity.ts'
import { viewOf } from '../../../edges/view.ts'
import { arborTop } from '../assembly-dimensions.ts'
import type { HeadDesign } from '../design.ts'
import { isShrunk } from '../engineering/fit.ts'
import { isBoredInMill } from '../making/bore-operations.ts'
import { headRoute } from '../making/route.ts'
import { scribedLine } from '../making/sawing.ts'
import { isJoinedFirst, shankDiameter } from '../making/tilted-set-up.ts'
import { heldInChuck, lengthThen, type UprightId, uprightIds, uprightSetUp } from '../making/upright-set-up.ts'
import { setUpDimensions } from '../set-up-dimensions.ts'
import { boxed, phantom, visible } from './phantom.ts'
import { Sizes } from './sizes.ts'
import { headViews, pieceOfPart } from './views.ts'

/** How blank, arbor and tool are held before and after the tilt: a picture for each clamping that the route uses. */
export function heldViews(design: HeadDesign): ViewPlan[] {
  const used = new Set(headRoute(design).map((o) => o.setUp))
  const sizes = new Sizes(design, setUpDimensions(design))
  const ends = uprightIds.filter((id) => used.has(id))
  return [
    ...ends.map((id) => (isBoredInMill(design) ? uprightView(design, sizes, id) : chuckView(design, sizes, id))),
    ...(used.has('wedge') ? [wedgeView(design, sizes)] : []),
    ...(used.has('arbor') ? [arborView(design)] : []),
    ...(used.has('joining') ? [joiningView(design)] : []),
    ...(used.has('pinning') ? [pinningView(design)] : []),
  ]
}

/** Edges of the bar as they are seen along its slot, from the middle, mm; the outermost last. */
function edgesOfBar({ parameters: { stock } }: HeadDesign): number[] {
  const { shape, size } = stock
  if (shape !== 'hexagon') return [size / 2]
  return stock['slot-runs'] === 'point-to-point' ? [0, size / 2] : [size / Math.sqrt(12), size / Math.sqrt(3)]
}

/** The bar from one end to the other, `at` puts a place along and across it on the view. */
function barLines(
  design: HeadDesign,
  length: number,
  at: (along: number, across: number) => Point,
): Entity<LayerName>[] {
  const edges = edgesOfBar(design)
  const wide = edges.at(-1)!
  const across = [...new Set(edges.flatMap((x) => (x === 0 ? [0] : [x, -x])))]
  return [
    ...across.flatMap((x) => visible(at(0, x), at(length, x))),
    ...[0, length].flatMap((end) => visible(at(end, -wide), at(end, wide))),
  ]
}

const endWords: Readonly<Record<UprightId, string>> = {
  'first-end': 'first end',
  mounting: 'mounting end',
}

/** Along the jaws of the mill's vise: the blank on its end. */
function uprightView(design: HeadDesign, sizes: Sizes, id: UprightId): ViewPlan {
  const { length, opening, under, stickUp } = uprightSetUp(design, id)
  const half = opening / 2
  const jaws = design.parameters.machine.vise['jaw-height']
  const top = under + length
  return {
    id: `held-${id}`,
    caption: [`${endWords[id]} up, in the vise`, 'along the jaws'],
    lines: [
      ...barLines(design, length, (along, across) => [across, under + along]),
      ...[1, -1].flatMap((k) => [
        ...boxed([k * half, 0], [k * 1.6 * half, jaws]),
        ...(under > 0 ? boxed([k * half, 0], [k * 0.8 * half, under]) : []),
      ]),
      ...phantom([-half, 0], [half, 0]),
    ],
    marks: axisMark([0, under], [0, top]),
    requests: [
      ...sizes.at(`set-up.${id}-stick-up`, {
        kind: 'linear',
        direction: 'vertical',
        from: [half, top],
        to: [1.6 * half, top - stickUp],
        side: 'right',
      }),
      ...sizes.at(`set-up.${id}-under`, {
        kind: 'linear',
        direction: 'vertical',
        from: [-half, 0],
        to: [-half, under],
        side: 'left',
      }),
    ],
  }
}

/** From the side of the lathe, its chuck on the left. */
function chuckView(design: HeadDesign, sizes: Sizes, id: UprightId): ViewPlan {
  const length = lengthThen(design, id)
  const held = heldInChuck(design, id)
  const half = edgesOfBar(design).at(-1)!
  return {
    id: `held-${id}`,
    caption: [`${endWords[id]} out, in the lathe`, 'from the side of the operator; chuck on the left'],
    lines: [
      ...barLines(design, length, (along, across) => [along, across]),
      ...boxed([-0.8 * half, -1.7 * half], [0, 1.7 * half]),
      ...[1, -1].flatMap((k) => boxed([0, k * half], [held, k * 1.5 * half])),
    ],
    marks: axisMark([-0.8 * half, 0], [length, 0]),
    requests: sizes.at(`set-up.${id}-held`, {
      kind: 'linear',
      direction: 'horizontal',
      from: [0, -1.5 * half],
      to: [held, -1.5 * half],
      side: 'below',
    }),
  }
}

/** The blank with the line that the saw follows, from the side of the step. */
function wedgeView(design: HeadDesign, sizes: Sizes): ViewPlan {
  const { layout: l } = design
  const { bitSide: b } = headViews(design)
  const { short, long, inward } = scribedLine(design)
  const half = l.across / 2
  const end: Point = [b * (half - (inward ?? 0)), -long]
  const [onBit, away] = b > 0 ? (['right', 'left'] as const) : (['left', 'right'] as const)
  return {
    id: 'held-wedge',
    caption: ['line to saw along', `from the side of the step; mounting face up, the bit side is on the ${onBit}`],
    lines: [
      ...visible([-half, 0], [half, 0], [half, -l.prismLength], [-half, -l.prismLength], [-half, 0]),
      ...visible([-b * half, -short], end),
    ],
    marks: axisMark([0, 0], [0, -l.prismLength]),
    requests: [
      ...sizes.at('set-up.wedge-short', {
        kind: 'linear',
        direction: 'vertical',
        from: [-b * half, 0],
        to: [-b * half, -short],
        side: away,
      }),
      ...sizes.at('set-up.wedge-long', {
        kind: 'linear',
        direction: 'vertical',
        from: [b * half, 0],
        to: [b * half, -long],
        side: onBit,
      }),
      ...sizes.at('set-up.wedge-inward', {
        kind: 'linear',
        direction: 'horizontal',
        from: [b * half, -l.prismLength],
        to: end,
        side: 'below',
      }),
    ],
  }
}

/** Lying with the spindle end on the right, a flat beside the slot up. */
const lying: ViewFrame = { origin: [0, 0, 0], x: [0, 0, 1], y: [0, 1, 0], z: [-1, 0, 0] }

function arborView(design: HeadDesign): ViewPlan {
  const [low, high] = [-design.parameters.arbor['spigot-length'], arborTop(design)]
  const size = shankDiameter(design) / 4
  const centre = (tip: number, way: 1 | -1) =>
    phantom([tip, 0], [tip + way * 2 * size, size], [tip + way * 2 * size, -size], [tip, 0])
  return {
    id: 'held-arbor',
    caption: ['arbor between centres', 'spindle end on the right'],
    lines: [...drawnView(viewOf([pieceOfPart(design, 'arbor')], lying), false), ...centre(low, -1), ...centre(high, 1)],
    marks: axisMark([low, 0], [high, 0]),
    requests: [],
  }
}

const both = (design: HeadDesign) => [pieceOfPart(design, 'body'), pieceOfPart(design, 'arbor')]

/** How head and arbor come together: what stands still below, in phantom. */
function joiningView(design: HeadDesign): ViewPlan {
  const { layout: l, parameters: p } = design
  const top = arborTop(design)
  const half = l.across / 2
  if (isShrunk(design)) {
    const frame: ViewFrame = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 0, -1], z: [0, 1, 0] }
    const r = shankDiameter(design) / 2
    return {
      id: 'held-joining',
      caption: ['head on its arbor', 'arbor upright in soft jaws, the hot head from above'],
      lines: [
        ...drawnView(viewOf(both(design), frame), false),
        ...[1, -1].flatMap((k) => boxed([k * r, -0.9 * top], [k * (r + half / 2), -0.4 * top])),
      ],
      marks: axisMark([0, -top], [0, l.depthOnAxis]),
      requests: [],
    }
  }
  const frame: ViewFrame = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 0, 1], z: [0, -1, 0] }
  const rise = half * Math.tan(l.faceAngle)
  const square = isJoinedFirst(design) || p.fit.kind === 'threaded' || l.faceAngle === 0
  const bed = square ? -l.prismLength : -(l.depthOnAxis + rise) - half / 4
  const wide = 1.3 * half
  // A cup as high as the short side stands, its floor under the whole face.
  const lip = -(l.depthOnAxis - rise) / 2
  const outside = wide * Math.tan(l.faceAngle)
  return {
    id: 'held-joining',
    caption: [
      'head and arbor',
      square ? 'the head on its square end on the bed' : 'the head in a cup bored to its face',
    ],
    lines: [
      ...drawnView(viewOf(both(design), frame), false),
      ...(square
        ? phantom([half, 0], [half, bed], [-half, bed], [-half, 0])
        : phantom(
            [-wide, bed],
            [-wide, lip],
            [-half, lip],
            [-half, -(l.depthOnAxis - rise)],
            [half, -(l.depthOnAxis + rise)],
            [half, lip],
            [wide, lip],
            [wide, bed],
          )),
      ...phantom([-wide - outside, bed], [wide + outside, bed]),
    ],
    marks: axisMark([0, bed], [0, top]),
    requests: [],
  }
}

/** The tool lying in a V-block, for the hole of the catch pin. */
function pinningView(design: HeadDesign): ViewPlan {
  const top = arborTop(design)
  const r = shankDiameter(design) / 2
  return {
    id: 'held-pinning',
    caption: ['for the catch pin', 'shank in a V-block, from the side; spindle end on the right'],
    lines: [...drawnView(viewOf(both(design), lying), false), ...boxed([0.3 * top, -0.4 * r], [0.95 * top, -2.5 * r])],
    marks: axisMark([-design.layout.depthOnAxis, 0], [top, 0]),
    requests: [],
  }
}
