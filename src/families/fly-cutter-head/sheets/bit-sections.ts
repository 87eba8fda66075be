import type { DimensionRequest } from '../../../drawing/dimensions/request.ts'
import type { Point } from '../../../drawing/entity.ts'
import { border, insideCircle } from '../../../drawing/plan/details.ts'
import type { ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView, hatchedFaces } from '../../../drawing/plan/view-lines.ts'
import { sectionOf } from '../../../edges/section.ts'
import type { Vec3 } from '../../../geometry/vector.ts'
import type { BitFace } from '../../../mechanics/angles/ground-bit.ts'
import { solidOf } from '../../../part/part.ts'
import { facetAngles } from '../bit.ts'
import { type BitDrawing, type BitView, bitLetters, frameAt, readable, tipCircle } from './bit-views.ts'
import { type CutThrough, clearestCut } from './facet-traces.ts'

type Cut = 'alongCut' | 'acrossCut' | 'uprightCut'

/** Planes through the ground end that are parallel to two sides of the blank each; those that show no angle are left out. */
export type BitCuts = Readonly<Partial<Record<Cut, CutThrough>>>

interface Angle {
  readonly id: (typeof facetAngles)[number]['id']
  readonly facet: BitFace
  /** Where the facet would run if it did not lean: away from the tip, bit's own frame. */
  readonly square: Vec3
}

interface Kind {
  /** Axis of the bit's own frame that the plane is square to. */
  readonly axis: 0 | 1 | 2
  readonly angles: readonly [Angle, Angle]
}

/** Every facet leans two ways, and each lean is true in one of three planes. */
const kinds: Readonly<Record<Cut, Kind>> = {
  alongCut: {
    axis: 2,
    angles: [
      { id: 'rake-along', facet: 'rake face', square: [-1, 0, 0] },
      { id: 'end-relief', facet: 'end flank', square: [0, -1, 0] },
    ],
  },
  acrossCut: {
    axis: 0,
    angles: [
      { id: 'rake-across', facet: 'rake face', square: [0, 0, -1] },
      { id: 'work-side-relief', facet: 'work-side flank', square: [0, -1, 0] },
    ],
  },
  uprightCut: {
    axis: 1,
    angles: [
      { id: 'end-edge-angle', facet: 'end flank', square: [0, 0, -1] },
      { id: 'work-side-edge-angle', facet: 'work-side flank', square: [-1, 0, 0] },
    ],
  },
}
const cutNames = Object.keys(kinds) as Cut[]

/** Angles that can be seen as one, rad: less is written only. */
const seen = (0.5 * Math.PI) / 180

const isSeen = ({ design }: BitDrawing, { id }: Angle): boolean => {
  const { facet } = facetAngles.find((f) => f.id === id)!
  return Math.abs(design.layout.bit.facets[facet]) >= seen
}

const drawn = (bit: BitDrawing, { angles }: Kind): readonly Angle[] => angles.filter((a) => isSeen(bit, a))

/** Where the bit is cut so that the angles of its facets are seen true. */
export function bitCuts(bit: BitDrawing): BitCuts {
  const { blank, ground } = bit
  const shortest = 0.05 * Math.min(blank.leading - blank.trailing, blank.work - blank.back)
  return Object.fromEntries(
    cutNames.flatMap((name) => {
      const angles = drawn(bit, kinds[name])
      if (angles.length === 0) return []
      const facets = angles.map(({ facet }) => facet)
      const cut = clearestCut(ground.head, kinds[name].axis, facets, shortest)
      return cut ? [[name, cut]] : []
    }),
  )
}

/** Letters of the sections, in the order in which they are drawn. */
export const cutLetters = (cuts: BitCuts): string[] =>
  cutNames.flatMap((name) => (cuts[name] ? [bitLetters[name]] : []))

/** The sections that show the angles true. */
export function bitSections(bit: BitDrawing, cuts: BitCuts): ViewPlan[] {
  const { blank } = bit
  const [wide, high] = [blank.leading - blank.trailing, blank.work - blank.back]
  const { alongCut, acrossCut, uprightCut } = cuts
  return [
    ...(alongCut
      ? [
          section(
            bit,
            'alongCut',
            alongCut,
            bit.fromWork,
            ['parallel to the work side, seen from it', 'leading side up'],
            wide,
          ),
        ]
      : []),
    ...(acrossCut
      ? [
          section(
            bit,
            'acrossCut',
            acrossCut,
            bit.fromEnd,
            ['square to the bit, seen from the end', 'work side down'],
            Math.min(wide, high),
          ),
        ]
      : []),
    ...(uprightCut
      ? [
          section(
            bit,
            'uprightCut',
            uprightCut,
            bit.fromLeading,
            ['parallel to the leading side, seen from it', 'work side down'],
            high,
          ),
        ]
      : []),
  ]
}

/** Angles that no section shows, in words at the tip. */
export const anglesSaid = (bit: BitDrawing, cuts: BitCuts): DimensionRequest[] =>
  cutNames.flatMap((name) =>
    kinds[name].angles
      .filter((angle) => !cuts[name] || !isSeen(bit, angle))
      .flatMap(({ id }) => bit.sizes.said(`bit.${id}`, [0, 0])),
  )

function section(
  bit: BitDrawing,
  name: Cut,
  cut: CutThrough,
  view: BitView,
  says: readonly string[],
  wide: number,
): ViewPlan {
  // All three planes look down their own axis from its positive end.
  const solid = solidOf(bit.design.part('bit'))
  const { lines, faces } = sectionOf([{ id: 'bit', solid, cut: true }], frameAt(view, cut.at))
  const all = [...drawnView(lines, false), ...hatchedFaces(faces, () => Math.PI / 4)]
  const circle = tipCircle(bit, view, wide)
  const letter = bitLetters[name]
  return {
    id: `bit-${letter}`,
    caption: [`${letter}–${letter}`, ...says],
    lines:
      name === 'acrossCut'
        ? all
        : [...all.flatMap((e) => insideCircle(e, circle.center, circle.radius)), border(circle)],
    smallest: name === 'acrossCut' ? readable(wide) : circle.smallest,
    requests: drawn(bit, kinds[name]).flatMap((angle) => {
      const trace = cut.traces.get(angle.facet)!
      return bit.sizes.at(`bit.${angle.id}`, { kind: 'angle', ...between(view, trace, angle.square) })
    }),
  }
}

/** From the end of a trace that is nearer to the tip: along it, and square. */
function between(view: BitView, [p, q]: readonly [Vec3, Vec3], square: Vec3) {
  const run = (point: Vec3) => point[0] * square[0] + point[1] * square[1] + point[2] * square[2]
  const [near, far] = run(p) < run(q) ? [p, q] : [q, p]
  const vertex = view.at(near)
  const along = view.at(far)
  // No edge lies there: an extension line starts close to the vertex.
  const short = 1e-3
  const plain = view.at([0, 1, 2].map((k) => near[k]! + short * square[k]!) as [number, number, number])
  const turn = (along[0] - vertex[0]) * (plain[1] - vertex[1]) - (along[1] - vertex[1]) * (plain[0] - vertex[0])
  const [from, to]: [Point, Point] = turn > 0 ? [along, plain] : [plain, along]
  return { vertex, from, to }
}
