import { expect } from 'vitest'
import { apart2, type Entity, endsOf, pointOf, rangeOf, type Vec2 } from '../../src/edges/entity.ts'
import type { CutFace } from '../../src/edges/section.ts'

/** Every loop runs on from step to step and back to its start. */
export function expectClosed(faces: readonly CutFace[]): void {
  for (const { loops } of faces) {
    for (const { steps } of loops) {
      steps.forEach(({ entity, reversed }, i) => {
        const next = steps[(i + 1) % steps.length]!
        const end = endsOf(entity)[reversed ? 0 : 1]
        expect(apart2(end, endsOf(next.entity)[next.reversed ? 1 : 0])).toBeLessThan(1e-4)
      })
    }
  }
}

/** Loops as polygons; round ones within 0.01 mm. */
export const polygonsOf = ({ loops }: CutFace): Vec2[][] =>
  loops.map((l) =>
    l.steps.flatMap(({ entity, reversed }) => {
      const [from, to] = rangeOf(entity)
      const n = entity.kind === 'line' ? 1 : 120
      return Array.from({ length: n }, (_, i) =>
        pointOf(entity, reversed ? to - ((to - from) * i) / n : from + ((to - from) * i) / n),
      )
    }),
  )

/** Whether a point lies within an odd number of polygons, as hatch fills them. */
export const isHatched = (polygons: readonly (readonly Vec2[])[], [x, y]: Vec2): boolean =>
  polygons.flatMap((ps) =>
    ps.filter((a, i) => {
      const b = ps[(i + 1) % ps.length]!
      return a[1] <= y !== b[1] <= y && x < a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1])
    }),
  ).length %
    2 ===
  1

/** Whether a point lies that near to a border. */
export const isByBorder = (polygons: readonly (readonly Vec2[])[], [x, y]: Vec2, reach: number): boolean =>
  polygons.some((ps) =>
    ps.some(([ax, ay], i) => {
      const [bx, by] = ps[(i + 1) % ps.length]!
      const [dx, dy] = [bx - ax, by - ay]
      const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)))
      return Math.hypot(x - ax - t * dx, y - ay - t * dy) < reach
    }),
  )

export const kindsOf = (entities: readonly Entity[]): string =>
  entities
    .map((e) => e.kind)
    .sort()
    .join(' ')
