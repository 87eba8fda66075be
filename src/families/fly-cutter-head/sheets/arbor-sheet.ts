import type { DimensionRequest } from '../../../drawing/dimensions/request.ts'
import type { Entity, Point } from '../../../drawing/entity.ts'
import { axisMark, crossMark } from '../../../drawing/plan/marks.ts'
import type { SheetPlan, ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView, hatchedFaces } from '../../../drawing/plan/view-lines.ts'
import type { LayerName } from '../../../drawing/style.ts'
import type { ViewFrame } from '../../../edges/entity.ts'
import { sectionOf } from '../../../edges/section.ts'
import { viewOf } from '../../../edges/view.ts'
import { solidOf } from '../../../part/part.ts'
import { formatAngle } from '../../../quantity/format-angle.ts'
import { formatNumber } from '../../../quantity/format-number.ts'
import { minorDiameter } from '../../../tables/thread-geometry.ts'
import { arborTop } from '../assembly-dimensions.ts'
import type { HeadDesign } from '../design.ts'
import { written } from '../words.ts'
import { arborNotes } from './arbor-notes.ts'
import { longPart } from './sheet-share.ts'
import { Sizes } from './sizes.ts'
import { threadSide } from './thread-lines.ts'
import { pieceOfPart } from './views.ts'

/** As it lies in the lathe: spigot to the right, where the tailstock is; a vent flat faces the eye. */
const lying: ViewFrame = { origin: [0, 0, 0], x: [0, 0, -1], y: [0, 1, 0], z: [1, 0, 0] }
/** Onto the end of the spigot, folded out of the view beside it: a vent flat on the left. */
const onSpigot: ViewFrame = { origin: [0, 0, 0], x: [-1, 0, 0], y: [0, 1, 0], z: [0, 0, -1] }

const lies = 'as it lies in the lathe: head end to the right, turned last'

/** The arbor to turn. */
export function arborSheet(design: HeadDesign): SheetPlan {
  const sizes = new Sizes(design, 'arbor')
  const { arbor, bore, drawing } = design.parameters
  const withEnd = bore.kind === 'blind' && bore.vent === 'flat'
  const side = arbor['bore-through'] === undefined ? outside(design, sizes) : throughAxis(design, sizes)
  return {
    id: 'arbor',
    part: design.part('arbor').label,
    material: design.layout.materials.arbor.title,
    mass: written(design, 'mass', design.mass('arbor')),
    share: longPart,
    groups: [{ rows: [withEnd ? besides(side, end(design, sizes), drawing.projection) : [side]] }],
    blocks: [arborNotes(design)],
  }
}

/** The view onto the right end stands on the left in first angle, on the right in third (ISO 5456-2, from memory). */
const besides = (side: ViewPlan, onEnd: ViewPlan, projection: 'first-angle' | 'third-angle'): ViewPlan[] =>
  projection === 'first-angle' ? [onEnd, side] : [side, onEnd]

function outside(design: HeadDesign, sizes: Sizes): ViewPlan {
  return {
    id: 'arbor',
    caption: ['arbor', lies],
    lines: [...drawnView(viewOf([pieceOfPart(design, 'arbor')], lying)), ...thread(design)],
    marks: axis(design),
    requests: turned(design, sizes),
  }
}

function throughAxis(design: HeadDesign, sizes: Sizes): ViewPlan {
  const hole = design.parameters.arbor['bore-through']! / 2
  const top = arborTop(design)
  const { lines, faces } = sectionOf([{ id: 'arbor', solid: solidOf(design.part('arbor')), cut: true }], lying)
  return {
    id: 'arbor',
    caption: ['arbor, cut along its axis', lies],
    lines: [...drawnView(lines, false), ...hatchedFaces(faces, () => -Math.PI / 4), ...thread(design)],
    marks: axis(design),
    requests: [
      ...turned(design, sizes),
      ...sizes.at(
        'arbor-bore.diameter',
        { kind: 'linear', direction: 'vertical', from: [-top, -hole], to: [-top, hole], side: 'left' },
        { after: 'through' },
      ),
    ],
  }
}

/** Onto the end of the spigot, so that the flat is seen; where it was round, as it was. */
function end(design: HeadDesign, sizes: Sizes): ViewPlan {
  const { bore } = design.parameters
  const r = bore.diameter / 2
  const deep = bore.kind === 'blind' ? bore['vent-size'] : 0
  const half = Math.acos((r - deep) / r)
  return {
    id: 'arbor-end',
    caption: ['onto the head end'],
    lines: [
      ...drawnView(viewOf([pieceOfPart(design, 'arbor')], onSpigot), false),
      { kind: 'arc', layer: 'phantom', center: [0, 0], radius: r, start: Math.PI - half, end: Math.PI + half },
    ],
    marks: crossMark([0, 0], r),
    requests: sizes.at(
      'vent-flat.depth',
      { kind: 'linear', direction: 'horizontal', from: [-r, 0], to: [deep - r, 0], side: 'below' },
      { after: 'flat, up to the seat' },
    ),
  }
}

const axis = (design: HeadDesign) => axisMark([-arborTop(design), 0], [design.parameters.arbor['spigot-length'], 0])

/** What the lathe makes: diameters at the ends of their stretches, lengths from the seat. */
function turned(design: HeadDesign, sizes: Sizes): DimensionRequest[] {
  const { parameters: p, layout: l } = design
  const r = p.bore.diameter / 2
  const long = p.arbor['spigot-length']
  const lead = p.arbor['lead-in']
  const across = (id: string, x: number, radius: number, side: 'left' | 'right'): DimensionRequest[] =>
    sizes.at(id, { kind: 'linear', direction: 'vertical', from: [x, -radius], to: [x, radius], side })
  const along = (id: string, from: Point, to: Point, side: 'above' | 'below' = 'below'): DimensionRequest[] =>
    sizes.at(id, { kind: 'linear', direction: 'horizontal', from, to, side })
  const requests: DimensionRequest[] = [
    ...(l.spigotThread
      ? sizes.at(
          'spigot.diameter',
          { kind: 'thread', from: [long / 2, -r], to: [long / 2, r], toward: Math.PI / 3 },
          { thread: { designation: sizes.threadOf('spigot.diameter') ?? l.spigotThread.name } },
        )
      : across('spigot.diameter', long - lead, r, 'right')),
    ...along('spigot.length', [0, -r], [long, -(r - lead)]),
    ...sizes.at('spigot.lead-in', { kind: 'chamfer', from: [long, r - lead], to: [long - lead, r], toward: 0.6 }),
  ]
  if (p.arbor.kind === 'straight') {
    return [...requests, ...along('spigot.length-above', [0, -r], [-p.arbor['length-above'], -r])]
  }
  const [thick, wide] = [p.arbor['shoulder-thickness'], p.arbor['shoulder-diameter'] / 2]
  requests.push(...across('shoulder.diameter', 0, wide, 'right'))
  requests.push(...along('shoulder.thickness', [-thick, wide], [0, wide], 'above'))
  let from = thick
  l.shank!.profile.forEach((piece, i) => {
    const which = i === 0 ? '' : `-${i + 1}`
    const to = from + piece.length
    requests.push(
      ...across(`shank.diameter${which}`, -to, piece.from / 2, 'left'),
      ...sizes.at(
        `shank.gauge-diameter${which}`,
        {
          kind: 'linear',
          direction: 'vertical',
          from: [-from, -piece.from / 2],
          to: [-from, piece.from / 2],
          side: 'left',
        },
        { after: 'at the gauge line' },
      ),
      ...across(`shank.small-diameter${which}`, -to, piece.to / 2, 'left'),
      ...along(`shank.length${which}`, [-to, -piece.to / 2], [-from, -piece.from / 2]),
    )
    from = to
  })
  return [...requests, ...shankSaid(design, thick)]
}

/** The taper, and the thread for the drawbar, which are no sizes of the drawing. */
function shankSaid({ layout: { shank } }: HeadDesign, from: number): DimensionRequest[] {
  const { taper, taperLength, gaugeDiameter, smallDiameter, length, drawbarThreads, profile } = shank!
  const said = (id: string, text: readonly string[], to: Point, toward: number): DimensionRequest => ({
    kind: 'note',
    id: `${id}@arbor`,
    text,
    value: 0,
    to,
    toward,
  })
  return [
    ...(taper !== undefined && taperLength !== undefined
      ? [
          said(
            'taper',
            taperWords(taper),
            [-(from + taperLength / 2), (gaugeDiameter + smallDiameter) / 4],
            (2 * Math.PI) / 3,
          ),
        ]
      : []),
    ...(drawbarThreads.length > 0
      ? [said('drawbar', ['drawbar thread'], [-(from + length), profile.at(-1)!.to / 4], (5 * Math.PI) / 6)]
      : []),
  ]
}

/** A taper as the trade gives it: on the diameter, and what the top slide is swung to. */
function taperWords(taper: number): string[] {
  const ratio = Math.abs(taper - 7 / 24) < 1e-9 ? '7:24' : `1:${formatNumber(1 / taper, 3, { trim: true })}`
  return [`taper ${ratio}`, `half angle ${formatAngle(Math.atan(taper / 2), { minutes: true, decimals: 1 })}`]
}

/** A thread is a mark: thin lines at its minor diameter (ISO 6410-1). */
function thread({ parameters: p, layout: l }: HeadDesign): Entity<LayerName>[] {
  if (!l.spigotThread) return []
  return threadSide([0, 0], [p.arbor['spigot-length'] - p.arbor['lead-in'], 0], minorDiameter(l.spigotThread))
}
