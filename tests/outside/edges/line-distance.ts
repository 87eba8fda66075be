import { type Entity, lengthOf, pointOf, rangeOf } from '../../../src/edges/entity.ts'
import type { JudgedEdge } from './judged-view.ts'

type Vec2 = readonly [number, number]

/** A chord and how far what it stands for may be beside it, mm. */
type Chord = readonly [Vec2, Vec2, number]

export const chordsOf = (edges: readonly JudgedEdge[]): Chord[] =>
  edges.flatMap(({ points, chords }) => {
    const sagittas = chords ? sagittasOf(points) : undefined
    return points.slice(1).map((p, i): Chord => [points[i]!, p, sagittas?.[i] ?? 0])
  })

/**
 * Arrow height over each chord from the turns at its two corners: an eighth of chord and turn on a circle, and a quarter
 * more; where the curve turns sharply, all that two tangents leave open.
 */
function sagittasOf(corners: readonly Vec2[]): number[] {
  const turn = (i: number) => {
    const [a, b, c] = [corners[i - 1], corners[i], corners[i + 1]]
    if (!a || !b || !c) return 0
    const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]]
    return Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy))
  }
  return corners.slice(1).map(([x, y], i) => {
    const chord = Math.hypot(x - corners[i]![0], y - corners[i]![1])
    // What the curve does at its very end no corner tells: up to three times the turn of the next one was seen.
    const most = i === 0 ? 3 * turn(1) : i === corners.length - 2 ? 3 * turn(i) : Math.max(turn(i), turn(i + 1))
    return most < 0.6 ? (1.25 * chord * most) / 8 : (chord * Math.tan(Math.min(most, 2) / 2)) / 2
  })
}

/** Points along an edge of the judge's, `spacing` mm apart or nearer, without its ends; of chords only the corners. */
export function judgedPoints({ points, chords }: JudgedEdge, spacing: number): Vec2[] {
  if (chords) return points.slice(1, -1)
  return points.flatMap((p, i): Vec2[] => {
    const before = points[i - 1]
    if (!before) return []
    const n = Math.max(1, Math.ceil(Math.hypot(p[0] - before[0], p[1] - before[1]) / spacing))
    const inner = Array.from({ length: n - 1 }, (_, k): Vec2 => {
      const t = (k + 1) / n
      return [before[0] + t * (p[0] - before[0]), before[1] + t * (p[1] - before[1])]
    })
    return i < points.length - 1 ? [...inner, p] : inner
  })
}

/** Our entities as chords: within 0.001 mm of arcs of any radius up to 60 mm. */
export const chordsOfEntities = (entities: readonly Entity[]): Chord[] =>
  entities.flatMap((e) => {
    if (e.kind === 'line') return [[e.from, e.to, 0] as const]
    const points = pointsOn(e, 0.4)
    return points.slice(1).map((p, i): Chord => [points[i]!, p, 0])
  })

/** Points along an entity, `spacing` mm apart or nearer, with both ends. */
export function pointsOn(e: Entity, spacing: number): Vec2[] {
  const [from, to] = rangeOf(e)
  const n = Math.max(e.kind === 'line' ? 2 : 60, Math.ceil(lengthOf(e) / spacing))
  return Array.from({ length: n + 1 }, (_, i) => pointOf(e, from + ((to - from) * i) / n))
}

/** Side of the squares in which chords are looked up, mm. */
const square = 2

/** Points farther than `reach` mm from all chords. */
export function strays(points: readonly Vec2[], chords: readonly Chord[], reach: number): Vec2[] {
  const found = new Map<string, Chord[]>()
  for (const chord of chords)
    for (const key of squaresOf(chord, reach)) found.set(key, [...(found.get(key) ?? []), chord])
  return points.filter(
    (p) =>
      !found
        .get(p.map((v) => Math.floor(v / square)).join())
        ?.some(([a, b, sagitta]) => isNear(p, a, b, reach + sagitta)),
  )
}

/** The squares that a chord may come near to: those of points along it, and all that touch them. */
function squaresOf([a, b, sagitta]: Chord, reach: number): Set<string> {
  const keys = new Set<string>()
  const far = reach + sagitta
  const n = Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / square) + 1
  const around = Math.ceil((far + square / 2) / square)
  for (let i = 0; i <= n; i++) {
    const [x, y] = [0, 1].map((k) => Math.floor((a[k]! + ((b[k]! - a[k]!) * i) / n) / square)) as [number, number]
    for (let dx = -around; dx <= around; dx++)
      for (let dy = -around; dy <= around; dy++) keys.add(`${x + dx},${y + dy}`)
  }
  return keys
}

function isNear([x, y]: Vec2, [ax, ay]: Vec2, [bx, by]: Vec2, reach: number): boolean {
  const [dx, dy, vx, vy] = [bx - ax, by - ay, x - ax, y - ay]
  const size = dx * dx + dy * dy
  const t = size > 0 ? Math.max(0, Math.min(1, (vx * dx + vy * dy) / size)) : 0
  return (vx - t * dx) ** 2 + (vy - t * dy) ** 2 <= reach * reach
}
