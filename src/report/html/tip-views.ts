import type { BitFace, TipViews } from '../../figures/pictures.ts'
import { hull, type Point } from '../../geometry/polygon.ts'
import { dot, type Vec3 } from '../../geometry/vector.ts'
import { angleMark } from './angle-mark.ts'
import { type Callout, callouts } from './callouts.ts'
import { Drawing, textSize } from './drawing.ts'
import type { Picture, Show } from './picture.ts'
import { type TipSide, tipSide } from './tip-side.ts'

/** The cutting end of the bit from three sides, with the angles in use. */
export const tipViews: Picture<TipViews> = {
  title: 'Tip and facets',
  readings: ({ angles, noseRadius, ground }, make) => [
    make.angle('radial-rake', 'radial rake', angles.radialRake),
    make.angle('radial-relief', 'radial relief', angles.radialRelief),
    make.angle('axial-rake', 'axial rake', angles.axialRake),
    make.angle('axial-relief', 'axial relief', angles.axialRelief),
    make.angle('cutting-edge-angle', 'end edge to the cut surface', angles.cuttingEdgeAngle),
    make.angle('minor-cutting-edge-angle', 'work-side edge to the cut surface', angles.minorCuttingEdgeAngle),
    make.length('nose-radius', 'nose radius', noseRadius),
    ...ground.map(({ id, label, angle }) => make.angle(`ground-${id}`, label, angle)),
  ],
  draw(tip, show) {
    const drawing = new Drawing(180, 132)
    fromBelow(drawing, [0, 0], tip, show)
    fromTheEnd(drawing, [90, 0], tip, show)
    fromTheLeadingSide(drawing, [0, 66], tip, show)
    toGrind(drawing, [94, 66], tip, show)
    const says =
      'The tip large, from below, from the end and from the leading side, all at one scale. Hatched: stock that is ground ' +
      'away. Angles are angles in use: against radius, tangent and spindle axis at the tip, not against the sides of the bit.'
    return { drawing, says }
  },
}

/** Hatched blank with the ground bit before it. */
function metal(drawing: Drawing, { pieces, blank, ground }: TipViews, { onPage, toEye }: TipSide): void {
  const asBought = hull(blank.map(onPage))
  if (ground.length > 0) drawing.polygon('ground-away', asBought)
  const facing = (face: BitFace) => dot(face.out, toEye) > 1e-9
  for (const face of pieces.flat().filter(facing)) drawing.polygon('bit', face.corners.map(onPage))
  drawing.polygon('hidden', asBought)
}

/** Marks an angle at the tip, without running into the words beside it. */
const markIn =
  (drawing: Drawing, [x, y]: Point, { tip, way }: TipSide) =>
  (from: Vec3, to: Vec3, radius: number, reach: number): Point => {
    const within = { left: x + 22.5, right: x + 67.5, top: y + 6, bottom: y + 60 }
    return angleMark(drawing, tip, way(from), way(to), { radius, reach, within })
  }

function title(drawing: Drawing, [x, y]: Point, words: string): void {
  drawing.text([x, y + 4], words, { strong: true })
}

/** Words on both sides of a panel, each on the side where what they point at lies. */
function words(drawing: Drawing, [x, y]: Point, middle: number, items: readonly Required<Callout>[]): void {
  const [top, bottom] = [y + 8, y + 64]
  const isLeft = ({ at }: Required<Callout>) => at[0] < middle
  callouts(drawing, { side: 'left', x: x + 21, width: 21, top, bottom }, items.filter(isLeft))
  callouts(
    drawing,
    { side: 'right', x: x + 69, width: 20, top, bottom },
    items.filter((item) => !isLeft(item)),
  )
}

function fromBelow(drawing: Drawing, at: Point, data: TipViews, show: Show): void {
  const { radialRake, radialRelief } = data.angles
  const view = tipSide('below', at, data)
  title(drawing, at, 'From below')
  metal(drawing, data, view)
  const reach = Math.min(0.5, 30 / view.scale / data.tipRadius)
  const circle = Array.from({ length: 25 }, (_, i): Vec3 => {
    const angle = reach * (i / 20 - 0.25)
    return [data.tipRadius * (Math.cos(angle) - 1), -data.tipRadius * Math.sin(angle), 0]
  })
  drawing.polyline('circle', circle.map(view.onPage))
  const mark = markIn(drawing, at, view)
  const rake = mark([-1, 0, 0], [-Math.cos(radialRake), -Math.sin(radialRake), 0], 26, 40)
  const relief = mark([0, -1, 0], [-Math.sin(radialRelief), -Math.cos(radialRelief), 0], 20, 38)
  motion(drawing, [at[0] + 28, at[1] + 60], view.way([0, 1, 0]))
  words(drawing, at, at[0] + 50, [
    { at: rake, words: `radial rake ${show('radial-rake')}` },
    { at: relief, words: `radial relief ${show('radial-relief')}` },
    { at: view.onPage(circle.at(-1)!), words: 'tip’s circle' },
  ])
}

function fromTheEnd(drawing: Drawing, at: Point, data: TipViews, show: Show): void {
  const { axialRake, axialRelief } = data.angles
  const view = tipSide('end', at, data)
  const { tip } = view
  title(drawing, at, 'From the end')
  metal(drawing, data, view)
  drawing.line('axis', [at[0] + 24, tip[1]], [at[0] + 66, tip[1]])
  const mark = markIn(drawing, at, view)
  const rake = mark([0, 0, 1], [0, -Math.sin(axialRake), Math.cos(axialRake)], 26, 42)
  const relief = mark([0, -1, 0], [0, -Math.cos(axialRelief), Math.sin(axialRelief)], 24, 34)
  motion(drawing, [at[0] + 45, tip[1] + 5], view.way([0, 1, 0]))
  words(drawing, at, at[0] + 45, [
    { at: rake, words: `axial rake ${show('axial-rake')}` },
    { at: relief, words: `axial relief ${show('axial-relief')}` },
  ])
}

function fromTheLeadingSide(drawing: Drawing, at: Point, data: TipViews, show: Show): void {
  const { cuttingEdgeAngle, minorCuttingEdgeAngle } = data.angles
  const view = tipSide('leading', at, data)
  const { tip } = view
  title(drawing, at, 'From the leading side')
  metal(drawing, data, view)
  drawing.line('axis', [at[0] + 24, tip[1]], [at[0] + 66, tip[1]])
  const endEdge: Vec3 = [Math.cos(cuttingEdgeAngle), 0, Math.sin(cuttingEdgeAngle)]
  const workSideEdge: Vec3 = [-Math.cos(minorCuttingEdgeAngle), 0, Math.sin(minorCuttingEdgeAngle)]
  const mark = markIn(drawing, at, view)
  const end = mark([1, 0, 0], endEdge, 4, 6)
  const workSide = mark([-1, 0, 0], workSideEdge, 28, 38)
  nose(drawing, data, view, endEdge, workSideEdge)
  drawing.text([at[0] + 45, tip[1] + 1.4 * textSize], 'cut surface', { anchor: 'middle' })
  words(drawing, at, at[0] + 45, [
    { at: end, words: `end edge to the cut ${show('cutting-edge-angle')}` },
    { at: workSide, words: `work-side edge to the cut ${show('minor-cutting-edge-angle')}` },
    { at: tip, words: `nose R ${show('nose-radius')}` },
  ])
}

/** Both edges as they cut, rounded into each other. */
function nose(
  drawing: Drawing,
  { noseRadius, angles }: TipViews,
  view: TipSide,
  endEdge: Vec3,
  workSideEdge: Vec3,
): void {
  const corner = Math.PI - angles.cuttingEdgeAngle - angles.minorCuttingEdgeAngle
  const taken = noseRadius / Math.tan(corner / 2)
  const on = (edge: Vec3, run: number): Vec3 => [edge[0] * run, 0, edge[2] * run]
  const middle: Vec3 = [endEdge[0] + workSideEdge[0], 0, endEdge[2] + workSideEdge[2]]
  const far = noseRadius / Math.sin(corner / 2) / Math.hypot(...middle)
  const centre: Vec3 = [middle[0] * far, 0, middle[2] * far]
  const steps = 12
  const round = Array.from({ length: steps + 1 }, (_, i): Vec3 => {
    const [a, b] = [on(endEdge, taken), on(workSideEdge, taken)]
    const t = i / steps
    const chord: Vec3 = [a[0] + t * (b[0] - a[0]) - centre[0], 0, a[2] + t * (b[2] - a[2]) - centre[2]]
    const k = noseRadius / Math.max(1e-9, Math.hypot(...chord))
    return [centre[0] + k * chord[0], 0, centre[2] + k * chord[2]]
  })
  const reach = Math.max(taken, 12 / view.scale)
  const path = [on(endEdge, reach), ...(noseRadius > 0 ? round : [[0, 0, 0] as const]), on(workSideEdge, reach)]
  drawing.polyline('edge', path.map(view.onPage))
}

function motion(drawing: Drawing, [x, y]: Point, way: Point): void {
  const half = 4
  drawing.line('turn', [x - half * way[0], y - half * way[1]], [x + half * way[0], y + half * way[1]], 'arrow')
  drawing.text([x + (way[0] === 0 ? 2 : half + 2), y + 1], 'motion')
}

function toGrind(drawing: Drawing, [x, y]: Point, { ground }: TipViews, show: Show): void {
  title(drawing, [x, y], ground.length === 0 ? 'Nothing is ground' : 'On the bit itself')
  const lines =
    ground.length === 0
      ? ['The bit is used as bought: the angles', 'it has in use come from how it is held.']
      : ground.map(({ id, label }) => `${label} ${show(`ground-${id}`)}`)
  lines.forEach((line, i) => {
    drawing.text([x, y + 10 + i * 5], line)
  })
  if (ground.length === 0) return
  const below = y + 10 + lines.length * 5 + 2
  drawing.polygon('ground-away', [
    [x, below],
    [x + 8, below],
    [x + 8, below + 5],
    [x, below + 5],
  ])
  drawing.text([x + 10, below + 3.6], 'ground away')
}
