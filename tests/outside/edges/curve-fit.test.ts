import { describe, expect, it } from 'vitest'
import type { ArcEntity, Entity, ViewFrame } from '../../../src/edges/entity.ts'
import { pieceOf, viewOf } from '../../../src/edges/view.ts'
import { type Cell, cellOf } from '../../../src/geometry/cell.ts'
import { cone, cylinder, plane } from '../../../src/geometry/surface.ts'
import { cross, dot, unit, type Vec3 } from '../../../src/geometry/vector.ts'
import { bar, block, eyeAt, solid, up } from '../../edges/solids.ts'

type Vec2 = readonly [number, number]
type Round = { readonly at: Vec3; readonly axis: Vec3; readonly radius: number }

/** mm: how near a drawn arc lies to the curve that it stands for. */
const fit = 0.005

const deg = Math.PI / 180
const tilted = (angle: number): Vec3 => [Math.sin(angle * deg), 0, Math.cos(angle * deg)]
const hole = ({ at, axis, radius }: Round): Cell => cellOf(cylinder('hole', at, axis, radius))

/** Two round faces or a round and a flat one that meet in a curve which no ARC or ELLIPSE is. */
interface Crossing {
  readonly says: string
  readonly stock: readonly Cell[]
  readonly cuts: readonly Cell[]
  /** Where the two surfaces meet in space, worked out here: stretches of points close to each other. */
  readonly curve: readonly (readonly Vec3[])[]
  /** Which of it is an edge of the part; left out: all of it. */
  readonly isEdge?: (p: Vec3) => boolean
}

const shaft: Round = { at: [0, 0, 0], axis: up, radius: 10 }
const shaftBar = bar([0, 0, -80], up, 160, 10)
const crossHole = (says: string, drilled: Round): Crossing => ({
  says,
  stock: [shaftBar],
  cuts: [hole(drilled)],
  curve: meeting(drilled, (p) => p[0] ** 2 + p[1] ** 2 - shaft.radius ** 2),
})

const bore: Round = { at: [0, 0, 0], axis: up, radius: 10 }
const slotEnd: Round = { at: [9, 0, -20], axis: tilted(7), radius: 5 }
const screwHole: Round = { at: [2, 0, -14], axis: [0, 1, 0], radius: 3 }
const plate = block([-25, -25, -40], [25, 25, 0])
const inPlate = ([x, y, z]: Vec3) => Math.max(Math.abs(x), Math.abs(y)) < 25 && z > -40 && z < 0
/** The point of a drill of 118° that went 24 deep, its apex below that. */
const apex: Vec3 = [0, 0, -24 - 10 / Math.tan(59 * deg)]
const drilledBore = [cellOf(cylinder('bore', [0, 0, 0], up, 10), cone('drill point', apex, up, 59 * deg))] as const
const onCone = ([x, y, z]: Vec3) => x * x + y * y - ((z - apex[2]) * Math.tan(59 * deg)) ** 2

const crossings: readonly Crossing[] = [
  crossHole('a cross hole square to its shaft', { at: [0, 0, 0], axis: [1, 0, 0], radius: 4 }),
  crossHole('a cross hole nearly as large as its shaft', { at: [0, 0, 0], axis: [1, 0, 0], radius: 9.9 }),
  crossHole('a small cross hole', { at: [0, 0, 0], axis: [1, 0, 0], radius: 0.75 }),
  crossHole('a cross hole beside the axis', { at: [0, 4, 0], axis: [1, 0, 0], radius: 3 }),
  crossHole('a cross hole that breaks out at the side', { at: [0, 8, 0], axis: [1, 0, 0], radius: 4 }),
  crossHole('an oblique hole', { at: [0, 1, 0], axis: tilted(40), radius: 3 }),
  crossHole('a hole on a slant of 15° to its shaft', { at: [0, 0, 0], axis: tilted(15), radius: 2 }),
  {
    says: 'a bore through the round end of a slot milled at 7°',
    stock: [plate],
    cuts: [hole(bore), hole(slotEnd)],
    curve: meeting(slotEnd, (p) => p[0] ** 2 + p[1] ** 2 - 100),
    isEdge: inPlate,
  },
  {
    says: 'a screw hole into a bore',
    stock: [plate],
    cuts: [hole(bore), hole(screwHole)],
    curve: meeting(screwHole, (p) => p[0] ** 2 + p[1] ** 2 - 100),
  },
  {
    says: 'a screw hole into the point of a drilled bore',
    stock: [plate],
    cuts: [...drilledBore, hole({ ...screwHole, at: [2, 0, -25.5], radius: 1 })],
    curve: meeting({ ...screwHole, at: [2, 0, -25.5], radius: 1 }, onCone),
  },
  {
    says: 'the point of a drilled bore through a slot’s walls',
    stock: [plate],
    cuts: [
      ...drilledBore,
      cellOf(
        plane('leading wall', [0, 3, 0], [0, 1, 0]),
        plane('trailing wall', [0, -6, 0], [0, -1, 0]),
        plane('floor', [0, 0, -25], tilted(7)),
      ),
    ],
    curve: [3, -6].map(coneCutAt),
    isEdge: ([x, y, z]) => Math.hypot(x, y) < 10 && tilted(7)[0] * x + tilted(7)[2] * (z + 25) < 0,
  },
]

const views: readonly (readonly [string, ViewFrame])[] = [
  ['from the front', eyeAt([0, -1, 0])],
  ['from the side', eyeAt([1, 0, 0])],
  ['from a corner', eyeAt([0.75, -1, -0.55])],
  ['on a slant from above', eyeAt([0.6, 0.9, 0.47])],
]

describe.each(crossings)('the curve of $says', ({ stock, cuts, curve, isEdge = () => true }) => {
  const pieces = [pieceOf('part', solid(stock, cuts))]
  it.each(views)('is drawn within 0.005 mm, and whole, %s', (_, view) => {
    const { visible, smooth, hidden } = viewOf(pieces, view)
    const drawn = [...visible, ...smooth, ...hidden]
    const onPaper = (p: Vec3): Vec2 => [dot(p, view.x), dot(p, view.y)]
    const flat = curve.map((stretch) => stretch.map(onPaper))
    const segments = flat.flatMap((stretch) => stretch.slice(1).map((q, i) => [stretch[i]!, q] as const))
    const near = finder(segments)
    for (const arc of drawn.filter((e) => e.kind === 'arc')) {
      expect(Math.max(...pointsOn(arc, 150).map(near)), JSON.stringify(arc)).toBeLessThan(fit)
    }
    // A place of the curve lies on one of the lines that are drawn, whichever stands for it.
    const every = curve.flatMap((stretch) => stretch.filter((p, i) => i % 12 === 0 && isEdge(p)).map(onPaper))
    expect(every.length).toBeGreaterThan(40)
    expect(Math.max(...every.map((p) => Math.min(...drawn.map((e) => offDrawn(e, p)))))).toBeLessThan(fit)
  })
})

/** Where the drill point is cut by the plane y = `y`. */
function coneCutAt(y: number): Vec3[] {
  return Array.from({ length: 4001 }, (_, i): Vec3 => {
    const x = -12 + (24 * i) / 4000
    return [x, y, apex[2] + Math.hypot(x, y) / Math.tan(59 * deg)]
  })
}

/**
 * Where a round hole meets a quadric f = 0: on each of its generators the two roots. Joined round the hole where every
 * generator meets it; else out along one root and back along the other, closer together where they run into each other.
 */
function meeting({ at, axis, radius }: Round, f: (p: Vec3) => number): Vec3[][] {
  const u = unit(cross(axis, Math.abs(axis[2]) < 0.9 ? [0, 0, 1] : [0, 1, 0]))
  const v = cross(axis, u)
  const generator = (angle: number) => {
    const [k, s] = [radius * Math.cos(angle), radius * Math.sin(angle)]
    const on = (t: number) => at.map((from, n) => from + k * u[n]! + s * v[n]! + t * axis[n]!) as unknown as Vec3
    // f is of the second degree along the generator: three values tell it.
    const [low, mid, high] = [f(on(-1)), f(on(0)), f(on(1))]
    const [a, b] = [(low + high) / 2 - mid, (high - low) / 2]
    const disc = b * b - 4 * a * mid
    return { disc, root: (sign: number) => on((-b + sign * Math.sqrt(Math.max(0, disc))) / (2 * a)) }
  }
  const steps = 6000
  const turns = Array.from({ length: steps + 1 }, (_, i) => (2 * Math.PI * i) / steps)
  const meets = (angle: number) => generator(angle).disc > 0
  if (turns.every(meets)) return [1, -1].map((sign) => turns.map((angle) => generator(angle).root(sign)))
  const ends = turns
    .slice(1)
    .flatMap((to, i) => (meets(to) === meets(turns[i]!) ? [] : [changeBetween(meets, turns[i]!, to)]))
  return ends.flatMap((from, i) => {
    const to = ends[i + 1] ?? ends[0]! + 2 * Math.PI
    const middle = (from + to) / 2
    if (!meets(middle)) return []
    return [turns.map((t) => generator(middle - ((to - from) / 2) * Math.cos(t)).root(Math.sign(Math.sin(t))))]
  })
}

function changeBetween(test: (x: number) => boolean, from: number, to: number): number {
  let [low, high] = [from, to]
  for (let i = 0; i < 60; i++) {
    const mid = (low + high) / 2
    if (test(mid) === test(from)) low = mid
    else high = mid
  }
  return (low + high) / 2
}

function pointsOn({ centre, radius, start, end }: ArcEntity, count: number): Vec2[] {
  return Array.from({ length: count + 1 }, (_, i): Vec2 => {
    const angle = start + ((end - start) * i) / count
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)]
  })
}

/** Distance to the nearest of many short segments, found in squares of the plane. */
function finder(segments: readonly (readonly [Vec2, Vec2])[]): (p: Vec2) => number {
  const size = 0.1
  const squares = new Map<string, (readonly [Vec2, Vec2])[]>()
  const cellAt = (x: number) => Math.floor(x / size)
  for (const segment of segments) {
    const [[ax, ay], [bx, by]] = segment
    for (let i = cellAt(Math.min(ax, bx)) - 1; i <= cellAt(Math.max(ax, bx)) + 1; i++) {
      for (let k = cellAt(Math.min(ay, by)) - 1; k <= cellAt(Math.max(ay, by)) + 1; k++) {
        const square = squares.get(`${i} ${k}`)
        if (square) square.push(segment)
        else squares.set(`${i} ${k}`, [segment])
      }
    }
  }
  return (p) =>
    Math.min(Infinity, ...(squares.get(`${cellAt(p[0])} ${cellAt(p[1])}`) ?? []).map(([a, b]) => toSegment(p, a, b)))
}

function toSegment(p: Vec2, a: Vec2, b: Vec2): number {
  const [x, y] = [b[0] - a[0], b[1] - a[1]]
  const along = x * x + y * y
  const t = along === 0 ? 0 : Math.max(0, Math.min(1, ((p[0] - a[0]) * x + (p[1] - a[1]) * y) / along))
  return Math.hypot(p[0] - a[0] - t * x, p[1] - a[1] - t * y)
}

/** How far a place lies from what is drawn; none of these curves is seen as an ellipse. */
function offDrawn(e: Entity, p: Vec2): number {
  if (e.kind === 'line') return toSegment(p, e.from, e.to)
  if (e.kind === 'ellipse') return Infinity
  const away = Math.abs(Math.hypot(p[0] - e.centre[0], p[1] - e.centre[1]) - e.radius)
  if (e.kind === 'circle') return away
  const turn = (Math.atan2(p[1] - e.centre[1], p[0] - e.centre[0]) - e.start + 4 * Math.PI) % (2 * Math.PI)
  if (turn <= e.end - e.start) return away
  const ends = pointsOn(e, 1)
  return Math.min(...ends.map(([x, y]) => Math.hypot(p[0] - x, p[1] - y)))
}
