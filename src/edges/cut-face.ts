import { outwardAt } from '../geometry/surface.ts'
import { along, dot, type Vec3 } from '../geometry/vector.ts'
import { type Curve, crossings, pointAt, tangentAt } from './curve.ts'
import type { Border } from './cut-border.ts'
import { between, quadricsOf } from './edges-of.ts'
import { apart2, cross2, type Entity, flattened, pointOf, rangeOf, type Vec2, type ViewFrame } from './entity.ts'
import { directionAt, type Loop, loopsOf, type Step } from './loop.ts'
import { merged } from './merge.ts'
import { projected } from './project.ts'
import { sweptSection } from './quadric.ts'
import { isInTheWay } from './sight.ts'
import { probe } from './tolerance.ts'
import { crossedBy, itemOf, overlap, type Piece, parametersAt, type ViewItem } from './view-item.ts'

/** A part that is left whole, and its edges and outlines as far as it stands before the cutting plane. */
export interface Standing {
  readonly piece: Piece
  readonly items: readonly ViewItem[]
}

/**
 * The cut faces of one part as loops: what its borders enclose, without what is hidden behind parts that stand in front.
 */
export function cutLoops(
  piece: Piece,
  borders: readonly Border[],
  standing: readonly Standing[],
  view: ViewFrame,
): Loop[] {
  const own = borders.map((border) => ({ border, item: itemOf(view, { piece, ...border, faces: [], kind: 'edge' }) }))
  const box = {
    low: [0, 1].map((k) => Math.min(...own.map((o) => o.item.low[k]!))) as unknown as Vec2,
    high: [0, 1].map((k) => Math.max(...own.map((o) => o.item.high[k]!))) as unknown as Vec2,
  }
  const before = standing.filter(({ items }) => items.some((i) => overlap(i, box)))
  const items = before.flatMap((s) => s.items)
  const bare: Bare = { piece, before, view }
  const steps: Step[] = own.flatMap(({ border, item }) => {
    const { curve, from, to } = border
    const shown =
      before.length === 0
        ? ([[from, to]] as [number, number][])
        : holding(between(curve, from, to, crossedByAll(view, item, items)), (t) => !isCovered(bare, border, t))
    return shown.flatMap(([a, b]) => projected(view, curve, a, b, []).map((e) => walked(e, border, view)))
  })
  if (items.length === 0) return loopsOf(steps)
  const swept = quadricsOf(piece.lines.skin).map((q) => sweptSection(q, view.z, dot(view.z, view.origin)))
  const found: Step[] = []
  const fits: Entity[] = []
  for (const item of items) {
    if (!overlap(item, box)) continue
    const { curve, from, to } = item
    const ts = [...crossedByAll(view, item, items), ...endsOn(view, item, items)]
    for (const q of swept) ts.push(...crossings(curve, q, from, to, item.samples))
    for (const [a, b] of holding(between(curve, from, to, ts), (t) => bordersAt(bare, curve, t))) {
      for (const entity of projected(view, curve, a, b, item.faces)) {
        if (curve.kind !== 'meeting') found.push(...facing(bare, entity, beside))
        else if (!fits.some((f) => sameEntity(f, entity))) {
          fits.push(entity)
          steps.push(...facing(bare, entity, besideFitted))
        }
      }
    }
  }
  return loopsOf([...steps, ...once(found)])
}

/** The steps, those that lie on top of each other once: the rims of both ends of a pin seen along its axis. */
function once(steps: readonly Step[]): Step[] {
  // Lines all run the same way, so that two of them are walked alike where the metal is on the same side.
  const alike = steps.map((step): Step => {
    const { entity, reversed } = step
    if (entity.kind !== 'line') return step
    const [dx, dy] = directionAt(entity, 0)
    return 0.8 * dx + 0.6001 * dy > 0
      ? step
      : { entity: { kind: 'line', from: entity.to, to: entity.from }, reversed: !reversed }
  })
  return [true, false].flatMap((reversed) =>
    merged([alike.filter((s) => s.reversed === reversed).map((s) => s.entity)])[0]!.map((entity) => ({
      entity,
      reversed,
    })),
  )
}

/** What is needed to say of a place of the drawing plane whether cut metal is seen there. */
interface Bare {
  readonly piece: Piece
  readonly before: readonly Standing[]
  readonly view: ViewFrame
}

/** How far beside a curve it is looked, mm; farther beside fitted arcs, which lie beside the true curve themselves. */
const beside = 1e-5
const besideFitted = 0.02

/** The stretches for which `holds` in their middles. */
const holding = (stretches: readonly [number, number][], holds: (t: number) => boolean): [number, number][] =>
  stretches.filter(([a, b]) => holds((a + b) / 2))

const crossedByAll = (view: ViewFrame, item: ViewItem, others: readonly ViewItem[]): number[] =>
  others.flatMap((other) => crossedBy(view, item, other, false))

/** Where ends of other curves lie on this one in the view: where two run on top of each other for a while. */
const endsOn = (view: ViewFrame, item: ViewItem, others: readonly ViewItem[]): number[] =>
  others.flatMap((o) =>
    o === item
      ? []
      : [o.from, o.to].flatMap((t) => {
          const p = pointAt(o.curve, t)
          const q = flattened(view, p)
          return parametersAt(view, item, p).filter((s) => apart2(flattened(view, pointAt(item.curve, s)), q) < 1e-6)
        }),
  )

/** A border's entity, walked with the metal on the left. */
function walked(entity: Entity, { surface, side }: Border, view: ViewFrame): Step {
  const [from, to] = rangeOf(entity)
  const t = (from + to) / 2
  const [x, y] = pointOf(entity, t)
  const n = outwardAt(surface, along(along(view.origin, view.x, x), view.y, y))
  return {
    entity,
    reversed: cross2(directionAt(entity, t), [side * dot(n, view.x), side * dot(n, view.y)]) > 0,
  }
}

/** Whether a standing part hides the metal just beside a border. */
function isCovered(bare: Bare, { curve, surface, side }: Border, t: number): boolean {
  const { view } = bare
  const p = pointAt(curve, t)
  const n = outwardAt(surface, p)
  const flat: Vec2 = [-side * dot(n, view.x), -side * dot(n, view.y)]
  const size = Math.hypot(...flat)
  const [x, y] = flattened(view, p)
  return hides(bare, [x + (beside * flat[0]) / size, y + (beside * flat[1]) / size])
}

const inSpace = ({ view }: Bare, [x, y]: Vec2): Vec3 => along(along(view.origin, view.x, x), view.y, y)

function hides(bare: Bare, at: Vec2): boolean {
  const origin = inSpace(bare, at)
  return bare.before.some(({ piece }) => isInTheWay(piece.lines.skin.solid, origin, bare.view.z))
}

/** Whether the plane cuts metal there: a face in the very plane is not cut. */
function isCut(bare: Bare, at: Vec2): boolean {
  const p = inSpace(bare, at)
  const { skin } = bare.piece.lines
  return skin.inMetal(along(p, bare.view.z, probe)) && skin.inMetal(along(p, bare.view.z, -probe))
}

/** Whether cut metal is seen on the left and on the right of a place, `reach` mm beside it; `way`: unit direction. */
function seenBeside(bare: Bare, [x, y]: Vec2, [dx, dy]: Vec2, reach: number) {
  const places: Vec2[] = [
    [x - reach * dy, y + reach * dx],
    [x + reach * dy, y - reach * dx],
  ]
  return places.map((at) => {
    const cut = isCut(bare, at)
    return { cut, seen: cut && !hides(bare, at) }
  })
}

/** Whether a curve that is no border of the cut metal itself parts what is seen of it from what is not. */
function bordersAt(bare: Bare, curve: Curve, t: number): boolean {
  const { view } = bare
  const tangent = tangentAt(curve, t)
  const d: Vec2 = [dot(tangent, view.x), dot(tangent, view.y)]
  const size = Math.hypot(...d)
  if (size < 1e-9) return false
  const p = flattened(view, pointAt(curve, t))
  const [left, right] = seenBeside(bare, p, [d[0] / size, d[1] / size], beside) as [Sight, Sight]
  if (left.seen === right.seen) return false
  // The metal's own border is there already.
  return left.cut === right.cut
}

type Sight = ReturnType<typeof seenBeside>[number]

function facing(bare: Bare, entity: Entity, reach: number): Step[] {
  const [from, to] = rangeOf(entity)
  const t = (from + to) / 2
  const d = directionAt(entity, t)
  const size = Math.hypot(...d)
  const [left, right] = seenBeside(bare, pointOf(entity, t), [d[0] / size, d[1] / size], reach) as [Sight, Sight]
  return left.seen === right.seen ? [] : [{ entity, reversed: right.seen }]
}

/** Whether two pieces of line work lie on top of each other from end to end. */
function sameEntity(a: Entity, b: Entity): boolean {
  if (a.kind !== b.kind) return false
  const places = (e: Entity): [Vec2, Vec2, Vec2] => {
    const [from, to] = rangeOf(e)
    return [pointOf(e, from), pointOf(e, (from + to) / 2), pointOf(e, to)]
  }
  const near = (p: Vec2, q: Vec2) => apart2(p, q) < 2e-6
  if (a.kind === 'circle' && b.kind === 'circle')
    return near(a.centre, b.centre) && Math.abs(a.radius - b.radius) < 2e-6
  const [p, q] = [places(a), places(b)]
  return near(p[1], q[1]) && ((near(p[0], q[0]) && near(p[2], q[2])) || (near(p[0], q[2]) && near(p[2], q[0])))
}
