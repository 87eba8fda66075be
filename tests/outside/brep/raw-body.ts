import {
  basicFaceExtrusion,
  draw,
  type Face,
  makeBox,
  makeCylinder,
  makePolygon,
  type Shape3D,
  type Sketch,
  Vector,
} from 'replicad'
import { laidOnFace } from './face-frame.ts'
import type { Figures } from './raw-figures.ts'
import { revolved } from './revolved.ts'

/** Farther out than any of the judge's heads. */
const far = 400

/** What makes the head: the figures without bit and arbor. */
export type BodyFigures = Omit<Figures, 'bit' | 'arbor'>

/** The head: a piece of bar, and every cut in the order in which it is made. */
export function rawBody(figures: BodyFigures): Shape3D {
  const onFace = [faceCut(), slotCut(figures), stepCut(figures), ...screwHoles(figures)]
  const cuts = [...onFace.map((cut) => laidOnFace(figures, cut)), revolved(boreOutline(figures))]
  return cuts.reduce<Shape3D>((metal, cut) => metal.cut(cut), bar(figures))
}

function bar({ shape, pointed, size, across, blank }: BodyFigures): Shape3D {
  if (shape === 'round') return makeCylinder(size / 2, blank, [0, 0, -blank])
  // The first corner as seen from the axis, and how many there are.
  const [radius, start, count] =
    shape === 'square' ? [size / Math.SQRT2, 45, 4] : [size / Math.sqrt(3), pointed ? 0 : 30, 6]
  const corners = Array.from({ length: count }, (_, i): [number, number, number] => {
    const turn = ((start + (360 / count) * i) * Math.PI) / 180
    return [radius * Math.cos(turn), radius * Math.sin(turn), 0]
  })
  const widest = 2 * Math.max(...corners.map(([x]) => x))
  if (Math.abs(widest - across) > 1e-9) throw new Error('the bar lies the wrong way round')
  return basicFaceExtrusion(makePolygon(corners) as Face, new Vector([0, 0, -blank]))
}

const faceCut = (): Shape3D => makeBox([-far, -far, -far], [far, far, 0])

/** Box between two distances in the direction of motion, in the frame of the face. */
const ahead = ({ hand }: BodyFigures, from: number, to: number, depth: number): Shape3D =>
  makeBox([-far, Math.min(hand * from, hand * to), -1], [far, Math.max(hand * from, hand * to), depth])

function slotCut(figures: BodyFigures): Shape3D {
  const { ahead: leading, width, depth, stop } = figures.slot
  if (stop === undefined) return ahead(figures, leading, leading - width, depth)
  const middle = figures.hand * (leading - width / 2)
  const [low, high] = [middle - width / 2, middle + width / 2]
  const end = -stop.beyond
  const r = stop.cutter / 2
  const outline =
    r > width / 2 - 1e-9
      ? draw([far, low])
          .lineTo([end + r, low])
          .threePointsArcTo([end + r, high], [end, middle])
          .lineTo([far, high])
          .close()
      : draw([far, low])
          .lineTo([end + r, low])
          .threePointsArcTo([end, low + r], [end + r * (1 - Math.SQRT1_2), low + r * (1 - Math.SQRT1_2)])
          .lineTo([end, high - r])
          .threePointsArcTo([end + r, high], [end + r * (1 - Math.SQRT1_2), high - r * (1 - Math.SQRT1_2)])
          .lineTo([far, high])
          .close()
  return (outline.sketchOnPlane('XY', -1) as Sketch).extrude(depth + 1)
}

function stepCut(figures: BodyFigures): Shape3D {
  const { ahead: leading, width } = figures.slot
  const { wall, depth, leading: onLeadingSide } = figures.step
  return onLeadingSide
    ? ahead(figures, leading + wall, far, depth)
    : ahead(figures, leading - width - wall, -far, depth)
}

function screwHoles(figures: BodyFigures): Shape3D[] {
  const { hand, slot, step, screws, corner } = figures
  const side = step.leading ? hand : -hand
  const slotWall = hand * (step.leading ? slot.ahead : slot.ahead - slot.width)
  return Array.from({ length: screws.count }, (_, i) =>
    makeCylinder(
      screws.tap / 2,
      step.wall,
      [corner - screws.first - i * screws.spacing, slotWall, screws.height],
      [0, side, 0],
    ),
  )
}

/** Bore, mouth chamfer, drill point and vent hole as one turned outline; above the mounting face it just runs on. */
function boreOutline({ bore }: BodyFigures): [number, number][] {
  const { radius: r, chamfer, depth, pointAngle } = bore
  const mouth: [number, number][] =
    chamfer > 0
      ? [
          [0, 1],
          [r + chamfer + 1, 1],
          [r, -chamfer],
        ]
      : [
          [0, 1],
          [r, 1],
        ]
  if (depth === undefined) return [...mouth, [r, -far], [0, -far]]
  const vent = bore.vent === 'hole' ? bore.ventSize / 2 : 0
  const bottom = pointAngle === undefined ? depth : depth + (r - vent) / Math.tan((pointAngle * Math.PI) / 360)
  const end: [number, number][] =
    vent > 0
      ? [
          [vent, -bottom],
          [vent, -far],
          [0, -far],
        ]
      : [[0, -bottom]]
  return [...mouth, [r, -depth], ...end]
}
