import type { DimensionRequest } from '../../../drawing/dimensions/request.ts'
import type { Entity, Point } from '../../../drawing/entity.ts'
import { cutChoices } from '../../../drawing/plan/marks.ts'
import type { Detail, ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView } from '../../../drawing/plan/view-lines.ts'
import type { LayerName } from '../../../drawing/style.ts'
import { viewOf } from '../../../edges/view.ts'
import type { Vec3 } from '../../../geometry/vector.ts'
import type { BitFace } from '../../../mechanics/angles/ground-bit.ts'
import type { BitCuts } from './bit-sections.ts'
import {
  across,
  type BitDrawing,
  type BitView,
  bitLetters,
  ends,
  motionChoices,
  readable,
  tipCircle,
  tipMark,
  upright,
} from './bit-views.ts'
import { pieceOfPart } from './views.ts'

const drawn = (bit: BitDrawing, { frame }: BitView, hidden = true) =>
  drawnView(viewOf([pieceOfPart(bit.design, 'bit')], frame), hidden)

/** Square to the leading side: the length of the blank, and the tip with what is ground off its end and its work side. */
export function leadingView(bit: BitDrawing, cuts: BitCuts): ViewPlan {
  const { design, sizes, blank, outwards, fromLeading: view, style } = bit
  const to = (x: number, z: number) => view.at([x, 0, z])
  const side = ends(bit)
  const reach = design.layout.bit.groundLength
  const nose = noseIn(bit)
  const whole: DimensionRequest[] = sizes.at(
    'bit.length',
    across(to(blank.inner, blank.back), to(blank.outer, blank.back), 'above'),
  )
  const tip: DimensionRequest[] = [
    ...sizes.at('bit.ground-length', across(to(-reach, blank.work), to(0, 0), 'below')),
    ...sizes.at('bit.off-end', across(to(0, 0), to(blank.outer, blank.work), 'below')),
    ...sizes.at('bit.off-underside', upright(to(blank.outer, blank.work), to(0, 0), side.tip)),
    ...nose.requests,
    tipMark('leading', outwards > 0 ? -0.7 : Math.PI + 0.7),
  ]
  const cut = cuts.acrossCut
  return {
    id: 'bit-leading',
    caption: ['from the leading side', 'the bit moves towards the eye; work side down, as it sits in the head'],
    lines: [
      ...drawn(bit, view),
      ...nose.lines,
      ...was(bit, [to(blank.outer, blank.work), to(blank.outer, blank.back)], blank.outer),
      ...was(bit, [to(-reach, blank.work), to(blank.outer, blank.work)], blank.work),
    ],
    ...(cut && {
      choices: cutChoices(
        bitLetters.acrossCut,
        to(cut.at, blank.work),
        to(cut.at, blank.back),
        [-outwards, 0],
        style,
        4,
      ),
    }),
    requests: bit.isGround ? whole : [...whole, ...tip],
    ...(bit.isGround && {
      details: [
        detail(bit, view, bitLetters.leading, 'tip, from the leading side', blank.work - blank.back, {
          toward: outwards > 0 ? -0.6 : Math.PI + 0.6,
          requests: tip,
        }),
      ],
    }),
  }
}

/** Square to the work side. */
export function workView(bit: BitDrawing): ViewPlan {
  const { design, sizes, blank, outwards, fromWork: view, style } = bit
  const to = (x: number, y: number) => view.at([x, y, 0])
  const reach = design.layout.bit.groundLength
  return {
    id: 'bit-work-side',
    caption: ['from the work side', 'leading side up'],
    lines: [
      ...drawn(bit, view),
      ...was(bit, [to(-reach, blank.leading), to(blank.outer, blank.leading)], blank.leading),
      ...was(bit, [to(blank.outer, blank.leading), to(blank.outer, blank.trailing)], blank.outer),
    ],
    choices: [motionChoices(to((blank.inner + blank.outer) / 2, blank.leading), [0, 1], style)],
    requests: [],
    details: [
      detail(bit, view, bitLetters.work, 'tip, from the work side', blank.leading - blank.trailing, {
        toward: outwards > 0 ? 0.6 : Math.PI - 0.6,
        requests: [
          ...sizes.at('bit.off-leading', upright(to(-reach, blank.leading), to(0, 0), ends(bit).tip)),
          tipMark('work', outwards > 0 ? -0.7 : Math.PI + 0.7),
        ],
      }),
    ],
  }
}

/** Onto the outer end: width and height of the blank. */
export function endView(bit: BitDrawing, cuts: BitCuts): ViewPlan {
  const { sizes, blank, outwards, fromEnd: view, style } = bit
  const to = (y: number, z: number) => view.at([0, y, z])
  const { alongCut, uprightCut } = cuts
  const [leading, trailing] = outwards > 0 ? (['left', 'right'] as const) : (['right', 'left'] as const)
  return {
    id: 'bit-end',
    caption: ['onto the end', `leading side ${leading}, work side down`],
    lines: drawn(bit, view, false),
    ...(bit.isGround && { smallest: readable(Math.max(blank.leading - blank.trailing, blank.work - blank.back)) }),
    choices: [
      motionChoices(to(blank.leading, blank.back + (blank.work - blank.back) / 4), [-outwards, 0], style),
      ...(alongCut
        ? cutChoices(
            bitLetters.alongCut,
            to(blank.trailing, alongCut.at),
            to(blank.leading, alongCut.at),
            [0, 1],
            style,
          )
        : []),
      ...(uprightCut
        ? cutChoices(
            bitLetters.uprightCut,
            to(uprightCut.at, blank.work),
            to(uprightCut.at, blank.back),
            [outwards, 0],
            style,
          )
        : []),
    ],
    requests: [
      ...sizes.at('bit.width', across(to(blank.leading, blank.back), to(blank.trailing, blank.back), 'above')),
      ...sizes.at('bit.height', upright(to(blank.trailing, blank.back), to(blank.trailing, blank.work), trailing)),
      tipMark('end', outwards > 0 ? -2.4 : -0.7),
    ],
  }
}

function detail(
  bit: BitDrawing,
  view: BitView,
  letter: string,
  says: string,
  wide: number,
  more: Pick<Detail, 'toward' | 'requests'>,
): Detail {
  return { letter, says, ...tipCircle(bit, view, wide), ...more }
}

/** The outline of the blank where it is ground away. */
const was = (bit: BitDrawing, [from, to]: readonly [Point, Point], off: number): Entity<LayerName>[] =>
  bit.isGround && off > 1e-6 ? [{ kind: 'line', layer: 'phantom', from, to }] : []

/** The nose as it is honed, seen from the leading side, where both edges are long enough for it. */
function noseIn({ design, sizes, ground, outwards, fromLeading }: BitDrawing): {
  readonly lines: Entity<LayerName>[]
  readonly requests: DimensionRequest[]
} {
  const radius = design.parameters.bit['nose-radius']
  const end = farEnd(ground.head.edges, 'rake face', 'end flank')
  const side = farEnd(ground.head.edges, 'rake face', 'work-side flank')
  const said = () => sizes.said('bit.nose-radius', [0, 0], outwards > 0 ? -0.3 : Math.PI + 0.3)
  if (!end || !side) return { lines: [], requests: said() }
  const [a, b] = [fromLeading.at(end), fromLeading.at(side)]
  const [one, two] = [Math.atan2(a[1], a[0]), Math.atan2(b[1], b[0])]
  const between = Math.acos(Math.cos(one - two))
  const taken = radius / Math.tan(between / 2)
  if (!(taken < Math.min(Math.hypot(...a), Math.hypot(...b)))) return { lines: [], requests: said() }
  const middle = Math.atan2(Math.sin(one) + Math.sin(two), Math.cos(one) + Math.cos(two))
  const away = radius / Math.sin(between / 2)
  const center: Point = [away * Math.cos(middle), away * Math.sin(middle)]
  // The arc between its tangent points faces the tip.
  const half = (Math.PI - between) / 2
  const arc = { center, radius, start: middle + Math.PI - half, end: middle + Math.PI + half }
  return {
    lines: [{ kind: 'arc', layer: 'thread', ...arc }],
    requests: sizes.at('bit.nose-radius', { kind: 'radius', ...arc, toward: outwards > 0 ? -0.3 : Math.PI + 0.3 }),
  }
}

/** Where the edge of two facets that starts at the tip ends. */
function farEnd(edges: BitDrawing['ground']['head']['edges'], one: BitFace, other: BitFace): Vec3 | undefined {
  const size = ([x, y, z]: Vec3) => Math.hypot(x, y, z)
  return edges
    .filter((pair) => pair.every(({ between }) => between.includes(one) && between.includes(other)))
    .flatMap((pair) => pair.map(({ at }) => at))
    .sort((p, q) => size(q) - size(p))[0]
}
