import type { Vec3 } from '../geometry/vector.ts'
import type { Curve } from './curve.ts'
import type { Entity } from './entity.ts'
import { flat, type Quadric, sweptEllipse } from './quadric.ts'

/** The entity as a curve in space, at z = 0, with the same parameter. */
export function curveOf(e: Entity): Curve {
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

/** The wall that an entity's line, circle or ellipse sweeps square to the drawing plane. */
export function wallOf(e: Entity): Quadric {
  if (e.kind === 'line') {
    const [dx, dy] = [e.to[0] - e.from[0], e.to[1] - e.from[1]]
    const size = Math.hypot(dx, dy)
    const normal: Vec3 = [-dy / size, dx / size, 0]
    return flat(normal, normal[0] * e.from[0] + normal[1] * e.from[1])
  }
  const curve = curveOf(e)
  const wall = curve.kind === 'ellipse' && sweptEllipse(curve.centre, curve.u, curve.v, [0, 0, 1])
  if (!wall) throw new RangeError('wallOf: an entity of no size')
  return wall
}
