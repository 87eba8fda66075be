import type { DimensionRequest, Side } from '../../../drawing/dimensions/request.ts'
import type { Entity, Point } from '../../../drawing/entity.ts'
import type { MarkChoices } from '../../../drawing/plan/marks.ts'
import type { DrawingStyle, LayerName } from '../../../drawing/style.ts'
import type { ViewFrame } from '../../../edges/entity.ts'
import { pointFrom } from '../../../geometry/frame.ts'
import { cross, negate, scale, type Vec3 } from '../../../geometry/vector.ts'
import type { GroundBit } from '../../../mechanics/angles/ground-bit.ts'
import type { HeadDesign } from '../design.ts'
import { groundBitOf, isGround } from '../engineering/angles.ts'
import { faceFrame } from '../frames.ts'
import { Sizes } from './sizes.ts'

/** A way of looking at the bit: its frame, and where a point of the bit's own frame (x outward, y motion, z work) falls. */
export interface BitView {
  readonly frame: ViewFrame
  readonly at: (p: Vec3) => Point
}

/** Everything that the grinding sheet is drawn from. All views have the tip as their origin. */
export interface BitDrawing {
  readonly design: HeadDesign
  readonly style: DrawingStyle
  readonly sizes: Sizes
  readonly ground: GroundBit
  readonly isGround: boolean
  /** Sides of the blank in the bit's own frame at the tip, mm. */
  readonly blank: {
    readonly outer: number
    readonly inner: number
    readonly leading: number
    readonly trailing: number
    readonly work: number
    readonly back: number
  }
  /** +1 where the tip is on the right seen from the leading side: a tool that turns clockwise. */
  readonly outwards: 1 | -1
  readonly fromLeading: BitView
  readonly fromWork: BitView
  readonly fromEnd: BitView
}

/** Letters of details and sections: A, B, C and O are datums of the head, and I and Q are taken for figures. */
export const bitLetters = { leading: 'L', work: 'M', alongCut: 'P', acrossCut: 'R', uprightCut: 'S' } as const

/** The bit as it sits in the head: the work below, the tip to the right of a clockwise tool and to the left of the other. */
export function bitDrawing(design: HeadDesign, style: DrawingStyle): BitDrawing {
  const { layout: l, parameters: p } = design
  const face = faceFrame(l.faceAngle, l.depthOnAxis)
  const tip = pointFrom(face, l.bit.tipInFace)
  const outwards = l.hand < 0 ? 1 : -1
  const looking = (z: Vec3, x: Vec3): ViewFrame => ({ origin: tip, x, y: cross(z, x), z })
  const out = scale(face.x, outwards)
  const off = p.bit['ground-off']
  return {
    design,
    style,
    sizes: new Sizes(design, 'bit'),
    ground: groundBitOf(design),
    isGround: isGround(design),
    blank: {
      outer: off.end,
      inner: off.end - p.bit.length,
      leading: off.leading,
      trailing: off.leading - p.bit.width,
      work: off.underside,
      back: off.underside - p.bit.height,
    },
    outwards,
    fromLeading: { frame: looking([0, l.hand, 0], out), at: ([x, , z]) => [outwards * x, -z] },
    fromWork: { frame: looking(negate(face.z), out), at: ([x, y]) => [outwards * x, y] },
    fromEnd: {
      frame: { origin: tip, x: [0, 1, 0], y: face.z, z: face.x },
      at: ([, y, z]) => [-outwards * y, -z],
    },
  }
}

/** A frame moved towards the eye so that its plane lies there. */
export const frameAt = ({ frame }: BitView, towardsEye: number): ViewFrame => ({
  ...frame,
  origin: [0, 1, 2].map((k) => frame.origin[k]! + towardsEye * frame.z[k]!) as [number, number, number],
})

export const across = (from: Point, to: Point, side: Side & ('above' | 'below')) =>
  ({ kind: 'linear', direction: 'horizontal', from, to, side }) as const
export const upright = (from: Point, to: Point, side: Side & ('left' | 'right')) =>
  ({ kind: 'linear', direction: 'vertical', from, to, side }) as const

/** The sides of a view on which the tip and the tail of the bit lie. */
export const ends = ({ outwards }: BitDrawing) =>
  outwards > 0 ? ({ tip: 'right', tail: 'left' } as const) : ({ tip: 'left', tail: 'right' } as const)

/** What must be readable of something that large, mm: it then takes 32 to 80 mm of paper. */
export const readable = (large: number): number => large / 8

/** A circle round the ground end in a view where the blank is so wide, and what must be readable in it. */
export function tipCircle({ design, blank }: BitDrawing, view: BitView, wide: number) {
  const { groundLength } = design.layout.bit
  const large = Math.max(wide, groundLength)
  const center = view.at([-groundLength / 2, (blank.leading + blank.trailing) / 2, (blank.work + blank.back) / 2])
  return { center, radius: 0.75 * large, smallest: readable(large) }
}

export const tipMark = (view: string, toward: number): DimensionRequest => ({
  kind: 'note',
  id: `tip@${view}`,
  text: ['tip'],
  value: 0,
  to: [0, 0],
  toward,
})

/** Which way the bit moves: an arrow that leaves the leading side, further out where there is no room. */
export const motionChoices =
  (from: Point, direction: Point, style: DrawingStyle): MarkChoices =>
  (paperScale) =>
    Array.from({ length: 16 }, (_, i): Entity<LayerName>[] => {
      const out = (by: number): Point => [
        from[0] + (by * direction[0]) / paperScale,
        from[1] + (by * direction[1]) / paperScale,
      ]
      const foot = 4 + 4 * i
      const tip = foot + 10
      const upwards = Math.abs(direction[1]) > 0.5
      return [
        { kind: 'line', layer: 'text', from: out(foot), to: out(tip) },
        {
          kind: 'arrow',
          layer: 'text',
          tip: out(tip),
          direction: Math.atan2(direction[1], direction[0]),
          length: style.arrowLength,
          width: style.arrowWidth,
        },
        {
          kind: 'text',
          layer: 'text',
          at: out(tip + style.textHeight),
          text: 'motion',
          height: style.textHeight,
          across: upwards ? 'center' : direction[0] > 0 ? 'left' : 'right',
          up: upwards ? 'baseline' : 'middle',
          rotation: 0,
        },
      ]
    })
