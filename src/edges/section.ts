import type { Solid } from '../geometry/solid.ts'
import { outwardAt, type Plane, plane } from '../geometry/surface.ts'
import { along, dot, negate, type Vec3 } from '../geometry/vector.ts'
import { type Edge, outwards } from './edges-of.ts'
import { apart2, cross2, type Entity, endsOf, pointOf, rangeOf, type Vec2, type ViewFrame } from './entity.ts'
import { projected } from './project.ts'
import { pieceOf, type ViewLines, viewOf } from './view.ts'
import type { Piece } from './visibility.ts'

/** A part that a section may cut. Shafts, pins and screws are by convention (ISO 128) left whole along their axis. */
export interface SectionPart {
  readonly id: string
  readonly solid: Solid
  readonly cut: boolean
}

export interface Section {
  /** The outlines of the cut faces and all that lies beyond them. */
  readonly lines: ViewLines
  readonly faces: readonly CutFace[]
}

/** What the cut lays bare of one part, to be hatched. */
export interface CutFace {
  readonly id: string
  readonly loops: readonly Loop[]
  /** mm² */
  readonly area: number
}

/** A closed outline walked with the metal on the left: anticlockwise round metal, clockwise round a hole. */
export interface Loop {
  readonly steps: readonly Step[]
  /** Enclosed area, mm²; negative for a hole. */
  readonly area: number
}

export interface Step {
  readonly entity: Entity
  /** Whether it is walked from its end to its start. */
  readonly reversed: boolean
}

/**
 * The section along the plane z = 0 of the view: of the parts to be cut, all that is nearer to the eye is taken away.
 * A part with a face in that very plane shows the cut face and the face as one.
 */
export function sectionOf(parts: readonly SectionPart[], view: ViewFrame): Section {
  const knife = plane('section', view.origin, negate(view.z))
  const pieces = parts.map((p) => pieceOf(p.id, p.cut ? cutBy(p.solid, knife) : p.solid))
  const faces = pieces
    .filter((_, i) => parts[i]!.cut)
    .map((piece) => cutFaceOf(piece, knife, view))
    .filter((f) => f.loops.length > 0)
  return { lines: viewOf(pieces, view), faces }
}

const cutBy = ({ stock, cuts }: Solid, knife: Plane): Solid => ({ stock, cuts: [...cuts, { surfaces: [knife] }] })

function cutFaceOf({ id, lines }: Piece, knife: Plane, view: ViewFrame): CutFace {
  const loops = loopsOf(lines.edges.flatMap((e) => stepsOf(e, knife, view)))
  return { id, loops, area: loops.reduce((sum, l) => sum + l.area, 0) }
}

/** The pieces of an edge of the cut face, walked with the metal on the left. */
function stepsOf(edge: Edge, knife: Plane, view: ViewFrame): Step[] {
  if (!edge.faces.some((f) => f.surface === knife)) return []
  const other = edge.faces.find((f) => f.surface !== knife)
  if (!other) return []
  return projected(view, edge.curve, edge.from, edge.to, []).map((entity) => {
    const [from, to] = rangeOf(entity)
    const t = (from + to) / 2
    const at = pointOf(entity, t)
    const p: Vec3 = along(along(view.origin, view.x, at[0]), view.y, at[1])
    const out = outwards(other, p)
    const air: Vec2 = [dot(out, view.x), dot(out, view.y)]
    return { entity, reversed: cross2(directionAt(entity, t), air) > 0 }
  })
}

/** Direction in which an entity runs at a parameter, of any length. */
function directionAt(e: Entity, t: number): Vec2 {
  if (e.kind === 'line') return [e.to[0] - e.from[0], e.to[1] - e.from[1]]
  const [k, s] = [Math.cos(t), Math.sin(t)]
  if (e.kind !== 'ellipse') return [-s, k]
  return [-e.major[0] * s - e.major[1] * e.ratio * k, -e.major[1] * s + e.major[0] * e.ratio * k]
}

const startOf = ({ entity, reversed }: Step): Vec2 => endsOf(entity)[reversed ? 1 : 0]
const endOf = ({ entity, reversed }: Step): Vec2 => endsOf(entity)[reversed ? 0 : 1]

/** How far apart ends that belong together may be, mm. */
const joint = 1e-4

function loopsOf(steps: readonly Step[]): Loop[] {
  const rest = [...steps]
  const loops: Loop[] = []
  while (rest.length > 0) {
    const walk = [rest.shift()!]
    const start = startOf(walk[0]!)
    for (;;) {
      const last = walk[walk.length - 1]!
      const end = endOf(last)
      if (apart2(end, start) < joint) break
      const next = rest
        .filter((s) => apart2(startOf(s), end) < joint)
        .map((step) => ({ step, turn: turnBetween(last, step) }))
        .sort((a, b) => b.turn - a.turn)[0]
      if (!next) break
      rest.splice(rest.indexOf(next.step), 1)
      walk.push(next.step)
    }
    loops.push({ steps: walk, area: walk.reduce((sum, s) => sum + areaUnder(s), 0) })
  }
  return loops
}

/** How sharply left one step turns into the next: where metal touches metal in a corner, each loop keeps to its own. */
function turnBetween(a: Step, b: Step): number {
  const [u, v] = [leaving(a, true), leaving(b, false)]
  return Math.atan2(cross2(u, v), u[0] * v[0] + u[1] * v[1])
}

function leaving({ entity, reversed }: Step, atEnd: boolean): Vec2 {
  const [from, to] = rangeOf(entity)
  const d = directionAt(entity, atEnd !== reversed ? to : from)
  return reversed ? [-d[0], -d[1]] : d
}

/** Half the integral of x dy − y dx along a step: exact for each kind. */
function areaUnder({ entity, reversed }: Step): number {
  const [a, b] = endsOf(entity)
  const way = reversed ? -1 : 1
  if (entity.kind === 'line') return (way * cross2(a, b)) / 2
  const [from, to] = rangeOf(entity)
  const square =
    entity.kind === 'ellipse' ? (entity.major[0] ** 2 + entity.major[1] ** 2) * entity.ratio : entity.radius ** 2
  return (way * (cross2(entity.centre, [b[0] - a[0], b[1] - a[1]]) + square * (to - from))) / 2
}

/** The frame that looks square at a flat face from outside: for true-size (auxiliary) views. `right` as near as may be. */
export function viewSquareTo(face: Plane, point: Vec3, side: 1 | -1, right: Vec3): ViewFrame {
  const n = outwardAt(face, point)
  const z = side > 0 ? n : negate(n)
  const flat = along(right, z, -dot(right, z))
  const size = Math.sqrt(dot(flat, flat))
  if (!(size > 1e-9)) throw new RangeError('viewSquareTo: that direction is not in the face')
  const x: Vec3 = [flat[0] / size, flat[1] / size, flat[2] / size]
  return { origin: point, x, y: [z[1] * x[2] - z[2] * x[1], z[2] * x[0] - z[0] * x[2], z[0] * x[1] - z[1] * x[0]], z }
}
