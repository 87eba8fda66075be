import type { Entity, Point } from '../../../drawing/entity.ts'
import type { LayerName } from '../../../drawing/style.ts'

/** A thread seen from the side: thin lines at its major diameter, mm (ISO 6410-1). */
export function threadSide(from: Point, to: Point, majorDiameter: number): Entity<LayerName>[] {
  const size = Math.hypot(to[0] - from[0], to[1] - from[1])
  const off: Point = [
    (-(to[1] - from[1]) / size) * (majorDiameter / 2),
    ((to[0] - from[0]) / size) * (majorDiameter / 2),
  ]
  return [1, -1].map((k) => ({
    kind: 'line',
    layer: 'thread',
    from: [from[0] + k * off[0], from[1] + k * off[1]],
    to: [to[0] + k * off[0], to[1] + k * off[1]],
  }))
}

/** A thread seen along its axis: three quarters of a thin circle, the gap away from the centre lines (ISO 6410-1). */
export const threadEnd = (center: Point, radius: number): Entity<LayerName>[] => [
  { kind: 'arc', layer: 'thread', center, radius, start: 0.15, end: 0.15 + 1.5 * Math.PI },
]
