import { type Curve, crossings } from './curve.ts'
import { arcOf, type Entity, ellipseOf, pointOf, rangeOf, type Vec2 } from './entity.ts'
import { flat, type Quadric } from './quadric.ts'
import type { ViewLines } from './view.ts'

/** What a partial view or a detail shows: all within a rectangle or a circle of the drawing plane, mm. */
export type Window =
  | { readonly kind: 'rectangle'; readonly low: Vec2; readonly high: Vec2 }
  | { readonly kind: 'circle'; readonly centre: Vec2; readonly radius: number }

/** The part of a view that is within the window. */
export const partialView = (lines: ViewLines, window: Window): ViewLines => ({
  visible: clipped(lines.visible, window),
  smooth: clipped(lines.smooth, window),
  hidden: clipped(lines.hidden, window),
})

/** Entities cut off at the border of the window; they keep their lines, centres and axes to the last digit. */
export function clipped(entities: readonly Entity[], window: Window): Entity[] {
  const borders = bordersOf(window)
  return entities.flatMap((e) => {
    const [from, to] = rangeOf(e)
    const curve = curveOf(e)
    const at = [...borders.flatMap((b) => crossings(curve, b, from, to)), to].sort((a, b) => a - b)
    const kept: [number, number][] = []
    let start = from
    for (const end of at) {
      if (end - start > 1e-9 && isIn(window, pointOf(e, (start + end) / 2))) {
        const last = kept[kept.length - 1]
        if (last && start - last[1] < 1e-8) last[1] = end
        else kept.push([start, end])
      }
      start = Math.max(start, end)
    }
    if (kept.length === 1 && kept[0]![0] === from && kept[0]![1] === to) return [e]
    return kept.map(([a, b]) => stretch(e, a, b))
  })
}

function stretch(e: Entity, from: number, to: number): Entity {
  if (e.kind === 'line') return { kind: 'line', from: pointOf(e, from), to: pointOf(e, to) }
  return e.kind === 'ellipse' ? ellipseOf(e.centre, e.major, e.ratio, from, to) : arcOf(e.centre, e.radius, from, to)
}

function bordersOf(w: Window): Quadric[] {
  if (w.kind === 'circle') {
    const k = 1 / (2 * w.radius)
    const [x, y] = w.centre
    return [{ a: [k, k, 0, 0, 0, 0], b: [-k * x, -k * y, 0], c: k * (x * x + y * y) - w.radius / 2 }]
  }
  return [flat([1, 0, 0], w.low[0]), flat([1, 0, 0], w.high[0]), flat([0, 1, 0], w.low[1]), flat([0, 1, 0], w.high[1])]
}

function isIn(w: Window, [x, y]: Vec2): boolean {
  if (w.kind === 'circle') return Math.hypot(x - w.centre[0], y - w.centre[1]) <= w.radius
  return x >= w.low[0] && x <= w.high[0] && y >= w.low[1] && y <= w.high[1]
}

/** The entity as a curve in space, at z = 0, with the same parameter. */
function curveOf(e: Entity): Curve {
  if (e.kind === 'line') {
    const [dx, dy] = [e.to[0] - e.from[0], e.to[1] - e.from[1]]
    const size = Math.hypot(dx, dy)
    return { kind: 'line', point: [...e.from, 0], direction: [dx / size, dy / size, 0] }
  }
  const centre = [...e.centre, 0] as const
  if (e.kind !== 'ellipse') return { kind: 'ellipse', centre, u: [e.radius, 0, 0], v: [0, e.radius, 0] }
  const [x, y] = e.major
  return { kind: 'ellipse', centre, u: [x, y, 0], v: [-y * e.ratio, x * e.ratio, 0] }
}
