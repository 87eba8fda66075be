import type { TipViews } from '../../figures/pictures.ts'
import type { Point } from '../../geometry/polygon.ts'
import { dot, type Vec3 } from '../../geometry/vector.ts'

/** How one side sees the tip: components (outward, motion, up) to the page, and the way to the eye. */
export interface TipSide {
  readonly tip: Point
  readonly onPage: (p: Vec3) => Point
  /** A direction on the page. */
  readonly way: (d: Vec3) => Point
  readonly toEye: Vec3
  /** Page units for 1 mm. */
  readonly scale: number
}

/** Motion at the bit side along this · Y: the pictures of a left-hand tool are mirror images. */
const handOf = ({ rotation }: TipViews): 1 | -1 => (rotation === 'clockwise' ? -1 : 1)

/** Directions to the right and up on the page, and to the eye, as each side sees them. */
function sidesOf(hand: 1 | -1): { readonly [side in 'below' | 'end' | 'leading']: readonly [Vec3, Vec3, Vec3] } {
  return {
    below: [
      [1, 0, 0],
      [0, -hand, 0],
      [0, 0, -1],
    ],
    end: [
      [0, hand, 0],
      [0, 0, 1],
      [1, 0, 0],
    ],
    leading: [
      [-hand, 0, 0],
      [0, 0, 1],
      [0, 1, 0],
    ],
  }
}

const wayFor =
  ([right, up]: readonly [Vec3, Vec3, Vec3]) =>
  (d: Vec3): Point => [dot(d, right), -dot(d, up)]

/** Least and largest of what is drawn, in mm on the page with the tip at 0. */
function spanOf({ blank }: TipViews, way: (d: Vec3) => Point): { readonly from: Point; readonly to: Point } {
  const points = [[0, 0] as const, ...blank.map(way)]
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)] as const
  return { from: [Math.min(...xs), Math.min(...ys)], to: [Math.max(...xs), Math.max(...ys)] }
}

/** What a panel leaves for the drawing between its words. */
const room = { left: 24, top: 10, width: 42, height: 43 }

/** One side, in the middle of its panel; all sides at one scale. */
export function tipSide(side: 'below' | 'end' | 'leading', [x, y]: Point, data: TipViews): TipSide {
  const sides = sidesOf(handOf(data))
  const sizes = Object.values(sides).flatMap((axes) => {
    const { from, to } = spanOf(data, wayFor(axes))
    return [(to[0] - from[0]) / room.width, (to[1] - from[1]) / room.height]
  })
  const scale = 1 / Math.max(...sizes)
  const way = wayFor(sides[side])
  const { from, to } = spanOf(data, way)
  const tip: Point = [
    x + room.left + room.width / 2 - (scale * (from[0] + to[0])) / 2,
    y + room.top + room.height / 2 - (scale * (from[1] + to[1])) / 2,
  ]
  const onPage = (p: Vec3): Point => [tip[0] + scale * way(p)[0], tip[1] + scale * way(p)[1]]
  return { tip, onPage, way, toEye: sides[side][2], scale }
}
