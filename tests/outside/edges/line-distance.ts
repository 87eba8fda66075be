import { type Entity, lengthOf, pointOf, rangeOf } from '../../../src/edges/entity.ts'
import type { JudgedEdge } from './judged-view.ts'

type Vec2 = readonly [number, number]

/** A chord and how far what it stands for may be beside it, mm. */
type Chord = readonly [Vec2, Vec2, number]

export const chordsOf = (edges: readonly JudgedEdge[]): Chord[] =>
  edges.flatMap(({ points, sagittas }) => points.slice(1).map((p, i): Chord => [points[i]!, p, sagittas[i]!]))

/** Our entities as chords: within 0.001 mm of arcs of any radius up to 60 mm. */
export const chordsOfEntities = (entities: readonly Entity[]): Chord[] =>
  entities.flatMap((e) => {
    const points = pointsOn(e, 0.4)
    return points.slice(1).map((p, i): Chord => [points[i]!, p, 0])
  })

/** Points along an entity, `spacing` mm apart or nearer, with both ends. */
export function pointsOn(e: Entity, spacing: number): Vec2[] {
  const [from, to] = rangeOf(e)
  const n = Math.max(e.kind === 'line' ? 2 : 60, Math.ceil(lengthOf(e) / spacing))
  return Array.from({ length: n + 1 }, (_, i) => pointOf(e, from + ((to - from) * i) / n))
}

/** Points farther than `reach` mm from all chords. */
export const strays = (points: readonly Vec2[], chords: readonly Chord[], reach: number): Vec2[] =>
  points.filter((p) => !chords.some(([a, b, sagitta]) => isNear(p, a, b, reach + sagitta)))

function isNear([x, y]: Vec2, [ax, ay]: Vec2, [bx, by]: Vec2, reach: number): boolean {
  const [dx, dy, vx, vy] = [bx - ax, by - ay, x - ax, y - ay]
  const size = dx * dx + dy * dy
  const t = size > 0 ? Math.max(0, Math.min(1, (vx * dx + vy * dy) / size)) : 0
  return (vx - t * dx) ** 2 + (vy - t * dy) ** 2 <= reach * reach
}
