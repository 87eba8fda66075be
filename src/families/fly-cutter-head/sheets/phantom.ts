import type { Entity, Point } from '../../../drawing/entity.ts'
import type { LayerName } from '../../../drawing/style.ts'

/** Jaws, bed, parallels and the like: drawn where they hold, their other sizes only for the picture. */
export const phantom = (...points: readonly Point[]): Entity<LayerName>[] =>
  points.slice(1).map((to, i) => ({ kind: 'line', layer: 'phantom', from: points[i]!, to }))

export const boxed = ([x, y]: Point, [u, v]: Point): Entity<LayerName>[] =>
  phantom([x, y], [u, y], [u, v], [x, v], [x, y])
