import type { Arrow, Curve, Entity, Point, Polyline } from './entity.ts'

/** The three corners of an arrowhead: tip first, then left and right of it looking along it. */
export function arrowCorners({ tip, direction, length, width }: Arrow<string>): readonly [Point, Point, Point] {
  const [c, s] = [Math.cos(direction), Math.sin(direction)]
  const corner = (side: number): Point => [
    tip[0] - length * c - (side * width * s) / 2,
    tip[1] - length * s + (side * width * c) / 2,
  ]
  return [tip, corner(1), corner(-1)]
}

/** The entity enlarged by `scale` about the origin, then moved by `shift`. Heights, arrows and layers stay. */
export function placed<L extends string>(entity: Entity<L>, scale: number, shift: Point): Entity<L> {
  const to = (p: Point): Point => [p[0] * scale + shift[0], p[1] * scale + shift[1]]
  switch (entity.kind) {
    case 'hatch':
      return { ...entity, loops: entity.loops.map((loop) => loop.map((edge) => placedCurve(edge, scale, shift))) }
    case 'polyline':
      return { ...entity, points: entity.points.map(to) }
    case 'text':
      return { ...entity, at: to(entity.at) }
    case 'arrow':
      return { ...entity, tip: to(entity.tip) }
    default:
      return placedCurve(entity, scale, shift)
  }
}

function placedCurve<L extends string>(curve: Curve<L>, scale: number, shift: Point): Curve<L> {
  const to = (p: Point): Point => [p[0] * scale + shift[0], p[1] * scale + shift[1]]
  switch (curve.kind) {
    case 'line':
      return { ...curve, from: to(curve.from), to: to(curve.to) }
    case 'ellipse':
      return { ...curve, center: to(curve.center), major: [curve.major[0] * scale, curve.major[1] * scale] }
    default:
      return { ...curve, center: to(curve.center), radius: curve.radius * scale }
  }
}

/** Angle in the turn that begins at `start`: at least `start`, less than a turn beyond it. */
export function turnedPast(start: number, angle: number): number {
  const turn = 2 * Math.PI
  return angle + Math.ceil((start - angle) / turn) * turn
}

/** Sweep of an arc or a piece of ellipse, above 0, at most 2π. */
export function sweepOf(curve: { readonly start: number; readonly end: number }): number {
  const sweep = turnedPast(curve.start, curve.end) - curve.start
  return sweep === 0 ? 2 * Math.PI : sweep
}

/** The point of an ellipse at parameter `t`. */
export function ellipsePoint(curve: Curve<string> & { kind: 'ellipse' }, t: number): Point {
  const [c, s] = [Math.cos(t), curve.ratio * Math.sin(t)]
  return [
    curve.center[0] + c * curve.major[0] - s * curve.major[1],
    curve.center[1] + c * curve.major[1] + s * curve.major[0],
  ]
}

/** The curve as straight pieces that leave it by at most `tolerance` mm: for finding room, never for drawing. */
export function flattened(curve: Curve<string> | Polyline<string>, tolerance: number): readonly Point[] {
  switch (curve.kind) {
    case 'line':
      return [curve.from, curve.to]
    case 'polyline':
      return curve.closed && curve.points.length > 0 ? [...curve.points, curve.points[0]!] : curve.points
    case 'circle':
      return flattened({ ...curve, kind: 'arc', start: 0, end: 2 * Math.PI }, tolerance)
    default: {
      const radius = curve.kind === 'arc' ? curve.radius : Math.hypot(...curve.major)
      const sweep = sweepOf(curve)
      const step = 2 * Math.acos(Math.max(0.5, 1 - tolerance / Math.max(radius, tolerance)))
      const count = Math.max(1, Math.ceil(sweep / step))
      return Array.from({ length: count + 1 }, (_, i): Point => {
        const t = curve.start + (sweep * i) / count
        if (curve.kind === 'ellipse') return ellipsePoint(curve, t)
        return [curve.center[0] + radius * Math.cos(t), curve.center[1] + radius * Math.sin(t)]
      })
    }
  }
}
