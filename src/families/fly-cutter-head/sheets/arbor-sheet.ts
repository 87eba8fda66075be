import type { DimensionRequest } from '../../../drawing/dimensions/request.ts'
import type { Entity, Point } from '../../../drawing/entity.ts'
import { axisMark } from '../../../drawing/plan/marks.ts'
import type { SheetPlan, ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import { drawnView, hatchedFaces } from '../../../drawing/plan/view-lines.ts'
import type { LayerName } from '../../../drawing/style.ts'
import type { ViewFrame } from '../../../edges/entity.ts'
import { sectionOf } from '../../../edges/section.ts'
import { viewOf } from '../../../edges/view.ts'
import { solidOf } from '../../../part/part.ts'
import { minorDiameter } from '../../../tables/thread-geometry.ts'
import { arborTop } from '../assembly-dimensions.ts'
import type { HeadDesign } from '../design.ts'
import { arborNotes } from './arbor-notes.ts'
import { Sizes } from './sizes.ts'
import { threadSide } from './thread-lines.ts'
import { pieceOfPart } from './views.ts'
import { written } from './words.ts'

/** As it lies in the lathe: spigot to the right, where the tailstock is; a vent flat on top. */
const lying: ViewFrame = { origin: [0, 0, 0], x: [0, 0, -1], y: [1, 0, 0], z: [0, -1, 0] }
/** Onto the end of the spigot. */
const onSpigot: ViewFrame = { origin: [0, 0, 0], x: [0, 1, 0], y: [1, 0, 0], z: [0, 0, -1] }

/** The arbor to turn. */
export function arborSheet(design: HeadDesign): SheetPlan {
  const sizes = new Sizes(design, 'arbor')
  const { arbor, bore } = design.parameters
  const withEnd = bore.kind === 'blind' && bore.vent === 'flat'
  const side = arbor['bore-through'] === undefined ? outside(design, sizes) : throughAxis(design, sizes)
  return {
    id: 'arbor',
    part: design.part('arbor').label,
    material: design.layout.materials.arbor.title,
    mass: written(design, 'mass', design.mass('arbor')),
    groups: [{ rows: [[side]] }, ...(withEnd ? [{ rows: [[end(design)]] }] : [])],
    blocks: [arborNotes(design)],
  }
}

function outside(design: HeadDesign, sizes: Sizes): ViewPlan {
  return {
    id: 'arbor',
    caption: ['arbor', 'as it lies in the lathe, head end to the right'],
    lines: [...drawnView(viewOf([pieceOfPart(design, 'arbor')], lying)), ...thread(design)],
    marks: axis(design),
    requests: [...turned(design, sizes), ...flat(design, sizes)],
  }
}

function throughAxis(design: HeadDesign, sizes: Sizes): ViewPlan {
  const hole = design.parameters.arbor['bore-through']! / 2
  const top = arborTop(design)
  const { lines, faces } = sectionOf([{ id: 'arbor', solid: solidOf(design.part('arbor')), cut: true }], lying)
  return {
    id: 'arbor',
    caption: ['arbor, cut along its axis', 'as it lies in the lathe, head end to the right'],
    lines: [...drawnView(lines, false), ...hatchedFaces(faces, () => -Math.PI / 4), ...thread(design)],
    marks: axis(design),
    requests: [
      ...turned(design, sizes),
      ...flat(design, sizes),
      ...sizes.at(
        'arbor-bore.diameter',
        { kind: 'linear', direction: 'vertical', from: [-top, -hole], to: [-top, hole], side: 'left' },
        { after: 'through' },
      ),
    ],
  }
}

/** Onto the end of the spigot, so that the flat is seen. */
const end = (design: HeadDesign): ViewPlan => ({
  id: 'arbor-end',
  caption: ['onto the head end'],
  lines: drawnView(viewOf([pieceOfPart(design, 'arbor')], onSpigot), false),
  requests: [],
})

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
      ...across(`shank.gauge-diameter${which}`, -from, piece.from / 2, 'left'),
      ...across(`shank.small-diameter${which}`, -to, piece.to / 2, 'left'),
      ...along(`shank.length${which}`, [-to, -piece.to / 2], [-from, -piece.from / 2]),
    )
    from = to
  })
  return requests
}

function flat({ parameters: p }: HeadDesign, sizes: Sizes): DimensionRequest[] {
  if (p.bore.kind !== 'blind' || p.bore.vent !== 'flat') return []
  const r = p.bore.diameter / 2
  const x = p.arbor['spigot-length'] / 2
  return sizes.at(
    'vent-flat.depth',
    { kind: 'linear', direction: 'vertical', from: [x, r], to: [x, r - p.bore['vent-size']], side: 'right' },
    { after: 'flat' },
  )
}

/** A thread is a mark: thin lines at its minor diameter (ISO 6410-1). */
function thread({ parameters: p, layout: l }: HeadDesign): Entity<LayerName>[] {
  if (!l.spigotThread) return []
  return threadSide([0, 0], [p.arbor['spigot-length'] - p.arbor['lead-in'], 0], minorDiameter(l.spigotThread))
}
