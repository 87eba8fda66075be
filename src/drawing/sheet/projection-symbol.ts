import type { Entity, Point } from '../entity.ts'
import type { LayerName } from '../style.ts'

export type Projection = 'first angle' | 'third angle'

/**
 * The symbol of the method of projection, `size` mm high, its middle at `at`: a frustum seen from the side, small end to
 * the left, and the view on its small end. In third angle that view stands beside the small end, on the left of the
 * frustum; in first angle beyond the large end, on the right (derived from where each method puts the view; ISO 5456-2
 * from memory).
 */
export function projectionSymbol(method: Projection, at: Point, size: number): Entity<LayerName>[] {
  const [large, small, long] = [size / 2, size / 4, size]
  const gap = size / 2
  const whole = long + gap + size
  const third = method === 'third angle'
  const left = at[0] - whole / 2 + (third ? size + gap : 0)
  const right = left + long
  const circles: Point = [at[0] + (third ? -1 : 1) * (whole / 2 - large), at[1]]
  const line = (from: Point, to: Point, layer: LayerName = 'datum'): Entity<LayerName> => ({
    kind: 'line',
    layer,
    from,
    to,
  })
  const [x, y] = at
  const over = size / 5
  return [
    line([left, y - small], [left, y + small]),
    line([left, y + small], [right, y + large]),
    line([right, y + large], [right, y - large]),
    line([right, y - large], [left, y - small]),
    { kind: 'circle', layer: 'datum', center: circles, radius: large },
    { kind: 'circle', layer: 'datum', center: circles, radius: small },
    line([x - whole / 2 - over, y], [x + whole / 2 + over, y], 'centre'),
    line([circles[0], y - large - over], [circles[0], y + large + over], 'centre'),
  ]
}
