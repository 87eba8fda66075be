import type { Entity, Point } from '../entity.ts'
import type { DrawingStyle, LayerName } from '../style.ts'

/** Radius of the sign on paper, mm. */
export const originRadius = (style: DrawingStyle): number => style.textHeight / 2

/** A small circle and a cross round a point that is no edge: the origin of a set-up; mm on paper. */
export function originSign(at: Point, style: DrawingStyle): Entity<LayerName>[] {
  const r = originRadius(style)
  const line = (from: Point, to: Point): Entity<LayerName> => ({ kind: 'line', layer: 'datum', from, to })
  return [
    { kind: 'circle', layer: 'datum', center: at, radius: r },
    line([at[0] - r, at[1]], [at[0] + r, at[1]]),
    line([at[0], at[1] - r], [at[0], at[1] + r]),
  ]
}
