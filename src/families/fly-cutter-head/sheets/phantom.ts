import type { Entity, Point } from '../../../drawing/entity.ts'
import type { LayerName } from '../../../drawing/style.ts'

const linesOn =
  (layer: LayerName) =>
  (...points: readonly Point[]): Entity<LayerName>[] =>
    points.slice(1).map((to, i) => ({ kind: 'line', layer, from: points[i]!, to }))

export const visible = linesOn('visible')

/** Jaws, bed, parallels and the like: drawn where they hold, their other sizes only for the picture. */
export const phantom = linesOn('phantom')

export const boxed = ([x, y]: Point, [u, v]: Point): Entity<LayerName>[] =>
  phantom([x, y], [u, y], [u, v], [x, v], [x, y])
