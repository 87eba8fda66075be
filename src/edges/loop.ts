import { fullTurn } from './curve.ts'
import { apart2, arcOf, cross2, dot2, type Entity, ellipseOf, endsOf, rangeOf, type Vec2 } from './entity.ts'

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

export const startOf = ({ entity, reversed }: Step): Vec2 => endsOf(entity)[reversed ? 1 : 0]
export const endOf = ({ entity, reversed }: Step): Vec2 => endsOf(entity)[reversed ? 0 : 1]

/** How far apart ends that belong together may be, mm. */
const joint = 1e-4

/** Steps in any order, each with the metal on its left, as closed loops. */
export function loopsOf(steps: readonly Step[]): Loop[] {
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
    const joinedUp = withoutJoints(walk)
    loops.push({ steps: joinedUp, area: joinedUp.reduce((sum, s) => sum + areaUnder(s), 0) })
  }
  return loops
}

/** How sharply left one step turns into the next: where metal touches metal in a corner, each loop keeps to its own. */
function turnBetween(a: Step, b: Step): number {
  const [u, v] = [leaving(a, true), leaving(b, false)]
  return Math.atan2(cross2(u, v), dot2(u, v))
}

function leaving({ entity, reversed }: Step, atEnd: boolean): Vec2 {
  const [from, to] = rangeOf(entity)
  const d = directionAt(entity, atEnd !== reversed ? to : from)
  return reversed ? [-d[0], -d[1]] : d
}

/** Direction in which an entity runs at a parameter, of any length. */
export function directionAt(e: Entity, t: number): Vec2 {
  if (e.kind === 'line') return [e.to[0] - e.from[0], e.to[1] - e.from[1]]
  const [k, s] = [Math.cos(t), Math.sin(t)]
  if (e.kind !== 'ellipse') return [-s, k]
  return [-e.major[0] * s - e.major[1] * e.ratio * k, -e.major[1] * s + e.major[0] * e.ratio * k]
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

/** Steps that run on along one line, circle or ellipse become one. */
function withoutJoints(walk: readonly Step[]): Step[] {
  const out: Step[] = []
  for (const step of walk) {
    const last = out[out.length - 1]
    const one = last && runOn(last, step)
    if (one) out[out.length - 1] = one
    else out.push(step)
  }
  while (out.length > 1) {
    const last = out[out.length - 1]!
    const one = apart2(endOf(last), startOf(out[0]!)) < joint && runOn(last, out[0]!)
    if (!one) break
    out[0] = one
    out.pop()
  }
  return out
}

const same = 2e-6

function runOn(a: Step, b: Step): Step | undefined {
  const [p, q] = [a.entity, b.entity]
  if (p.kind === 'line' || q.kind === 'line') {
    if (p.kind !== q.kind) return undefined
    const [from, mid, to] = [startOf(a), startOf(b), endOf(b)]
    const [u, v]: Vec2[] = [
      [mid[0] - from[0], mid[1] - from[1]],
      [to[0] - from[0], to[1] - from[1]],
    ]
    const size = Math.hypot(...v!)
    // Straight on, not back over itself.
    if (dot2(u!, v!) <= 0 || Math.hypot(...u!) >= size || Math.abs(cross2(u!, v!)) > same * size) return undefined
    return { entity: { kind: 'line', from, to }, reversed: false }
  }
  if (p.kind === 'circle' || q.kind === 'circle' || a.reversed !== b.reversed) return undefined
  if (p.kind !== q.kind || apart2(p.centre, q.centre) > same) return undefined
  const [first, second] = a.reversed ? [q, p] : [p, q]
  // The second of them may be counted a turn earlier, or from another end of the major axis.
  const sweep = p.end - p.start + (q.end - q.start)
  if (sweep > fullTurn + 1e-6) return undefined
  const end = sweep > fullTurn - 1e-6 ? first.start + fullTurn : first.start + sweep
  if (first.kind === 'arc' && second.kind === 'arc') {
    if (Math.abs(first.radius - second.radius) > same) return undefined
    return { entity: arcOf(first.centre, first.radius, first.start, end), reversed: a.reversed }
  }
  if (first.kind !== 'ellipse' || second.kind !== 'ellipse') return undefined
  if (apart2(first.major, second.major) > same || Math.abs(first.ratio - second.ratio) > 1e-8) return undefined
  return { entity: ellipseOf(first.centre, first.major, first.ratio, first.start, end), reversed: a.reversed }
}
