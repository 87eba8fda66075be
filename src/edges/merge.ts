import { fullTurn } from './curve.ts'
import { apart2, arcOf, cross2, dot2, type Entity, ellipseOf, pointOf, rangeOf, type Vec2 } from './entity.ts'

/** Nearer than this two pieces of line work are on one line, mm. */
const same = 2e-6

/** A straight line, circle or ellipse without ends, and what is drawn of it, layer by layer. */
interface Carrier {
  readonly entity: Entity
  /** Stretches by layer, in the carrier's own parameter. */
  readonly drawn: [number, number][][]
}

/**
 * Line work of several layers, the most important first (visible, tangent, hidden): pieces of one line or circle that
 * touch or overlap become one, and nothing is drawn where a more important layer already draws. The order follows from
 * the order in which pieces are given.
 */
export function merged(layers: readonly (readonly Entity[])[]): Entity[][] {
  const carriers: Carrier[] = []
  // Longest first: the direction of a short piece is not well known.
  const all = layers.flatMap((entities, layer) => entities.map((entity) => ({ entity, layer, size: sizeOf(entity) })))
  const order = all.sort((a, b) => b.size - a.size)
  for (const { entity, layer } of order) {
    let carrier = carriers.find((c) => carries(c.entity, entity))
    if (!carrier) {
      carrier = { entity, drawn: layers.map(() => []) }
      carriers.push(carrier)
    }
    carrier.drawn[layer]!.push(rangeOn(carrier.entity, entity))
  }
  const out: Entity[][] = layers.map(() => [])
  for (const { entity, drawn } of carriers) {
    const round = entity.kind !== 'line'
    const slack = same / (round ? radiusOf(entity) : 1)
    let covered: [number, number][] = []
    drawn.forEach((stretches, layer) => {
      const here = united(round ? stretches.flatMap(withinTurn) : stretches, slack)
      const rest = without(here, covered, slack)
      covered = united([...covered, ...here], slack)
      for (const [from, to] of round ? acrossStart(rest, slack) : rest) out[layer]!.push(part(entity, from, to))
    })
  }
  return out
}

const radiusOf = (e: Entity): number =>
  e.kind === 'ellipse' ? Math.hypot(...e.major) : e.kind === 'line' ? 1 : e.radius

function sizeOf(e: Entity): number {
  const [from, to] = rangeOf(e)
  return (to - from) * radiusOf(e)
}

/** Whether a piece lies on the line, circle or ellipse of another, longer one. */
function carries(carrier: Entity, e: Entity): boolean {
  if (carrier.kind === 'line') {
    if (e.kind !== 'line') return false
    const d: Vec2 = [carrier.to[0] - carrier.from[0], carrier.to[1] - carrier.from[1]]
    const size = Math.hypot(...d)
    return [e.from, e.to].every(
      (p) => Math.abs(cross2(d, [p[0] - carrier.from[0], p[1] - carrier.from[1]])) < same * size,
    )
  }
  if (e.kind === 'line' || (e.kind === 'ellipse') !== (carrier.kind === 'ellipse')) return false
  if (apart2(carrier.centre, e.centre) > same) return false
  if (carrier.kind !== 'ellipse' || e.kind !== 'ellipse') {
    return carrier.kind !== 'ellipse' && e.kind !== 'ellipse' && Math.abs(carrier.radius - e.radius) < same
  }
  const [a, b] = [carrier.major, e.major]
  const [la, lb] = [Math.hypot(...a), Math.hypot(...b)]
  return (
    Math.abs(la - lb) < same &&
    Math.abs(la * carrier.ratio - lb * e.ratio) < same &&
    // A nearly round one may lie any way: its axes count as far as they are seen.
    (Math.abs(cross2(a, b)) / la) * (1 - carrier.ratio) < same
  )
}

/** Where on its carrier a piece lies. */
function rangeOn(carrier: Entity, e: Entity): [number, number] {
  if (carrier.kind === 'line' && e.kind === 'line') {
    const d: Vec2 = [carrier.to[0] - carrier.from[0], carrier.to[1] - carrier.from[1]]
    const size = Math.hypot(...d)
    const at = (p: Vec2) => dot2(d, [p[0] - carrier.from[0], p[1] - carrier.from[1]]) / size
    const [a, b] = [at(e.from), at(e.to)]
    return a < b ? [a, b] : [b, a]
  }
  const [from, to] = rangeOf(e)
  if (carrier.kind !== 'ellipse' || e.kind !== 'ellipse') return [from, to]
  const turn = Math.atan2(cross2(carrier.major, e.major), dot2(carrier.major, e.major))
  return [from + turn, to + turn]
}

/** The same stretch as one or two between 0 and a full turn. */
function withinTurn([from, to]: [number, number]): [number, number][] {
  if (to - from >= fullTurn - 1e-9) return [[0, fullTurn]]
  const start = from - Math.floor(from / fullTurn) * fullTurn
  const end = start + (to - from)
  return end <= fullTurn
    ? [[start, end]]
    : [
        [start, fullTurn],
        [0, end - fullTurn],
      ]
}

/** A stretch that ends at a full turn and one that starts at 0 are one. */
function acrossStart(stretches: [number, number][], slack: number): [number, number][] {
  const [first, last] = [stretches[0], stretches[stretches.length - 1]]
  if (!first || !last || first[0] > slack || last[1] < fullTurn - slack) return stretches
  if (first === last) return [[0, fullTurn]]
  return [...stretches.slice(1, -1), [last[0], first[1] + fullTurn]]
}

function united(stretches: readonly [number, number][], slack: number): [number, number][] {
  const out: [number, number][] = []
  for (const [from, to] of [...stretches].sort((a, b) => a[0] - b[0])) {
    const last = out[out.length - 1]
    if (last && from <= last[1] + slack) last[1] = Math.max(last[1], to)
    else out.push([from, to])
  }
  return out
}

function without(
  stretches: readonly [number, number][],
  covered: readonly [number, number][],
  slack: number,
): [number, number][] {
  let rest = [...stretches]
  for (const [from, to] of covered) {
    rest = rest.flatMap(([a, b]): [number, number][] =>
      to <= a || from >= b
        ? [[a, b]]
        : [
            [a, from],
            [to, b],
          ],
    )
  }
  return rest.filter(([a, b]) => b - a > 2 * slack)
}

function part(e: Entity, from: number, to: number): Entity {
  if (e.kind === 'line') return { kind: 'line', from: pointOf(e, from), to: pointOf(e, to) }
  return e.kind === 'ellipse' ? ellipseOf(e.centre, e.major, e.ratio, from, to) : arcOf(e.centre, e.radius, from, to)
}
