import { type Cone, type Cylinder, type Plane, plane, type Surface } from '../geometry/surface.ts'
import { coincident } from '../geometry/tolerance.ts'
import {
  add,
  along,
  cross,
  distance,
  dot,
  length,
  middle,
  scale,
  squareTo,
  subtract,
  unit,
  type Vec3,
} from '../geometry/vector.ts'
import { branchEnds, type Curve, fullTurn, generator, type Meeting } from './curve.ts'
import { quadricOf, valueAt } from './quadric.ts'
import { far, parallel } from './tolerance.ts'

/** A curve and the stretch of its parameter on which it is defined. */
export interface Stretch {
  readonly curve: Curve
  readonly from: number
  readonly to: number
}

/**
 * Everywhere two different surfaces meet. Tangent surfaces (within 1e-6 mm) meet in a line. Ordered as flat, cylinder,
 * cone; a curve on the wrong nappe of a cone may be among them, since whoever asks looks at the neighbourhood anyway.
 */
export function meetingsOf(s: Surface, t: Surface): Stretch[] {
  const [a, b] = rank[s.kind] <= rank[t.kind] ? [s, t] : [t, s]
  if (a.kind === 'plane') {
    if (b.kind === 'plane') return planes(a, b)
    return b.kind === 'cylinder' ? planeCylinder(a, b) : planeCone(a, b)
  }
  if (b.kind === 'cylinder') return a.kind === 'cylinder' ? cylinders(a, b) : []
  if (b.kind === 'plane') return []
  if (a.kind === 'cone') return cones(a, b)
  return coaxial(a.point, a.axis, b)
    ? [circle(along(b.apex, b.axis, a.radius / b.slope), b.axis, a.radius)]
    : general(a, b)
}

const rank = { plane: 0, cylinder: 1, cone: 2 } as const

const line = (point: Vec3, direction: Vec3, from = -far): Stretch => ({
  curve: { kind: 'line', point, direction },
  from,
  to: far,
})

const ellipse = (centre: Vec3, u: Vec3, v: Vec3): Stretch => ({
  curve: { kind: 'ellipse', centre, u, v },
  from: 0,
  to: fullTurn,
})

const circle = (centre: Vec3, axis: Vec3, radius: number): Stretch => {
  const x = squareTo(axis)
  return ellipse(centre, scale(x, radius), scale(cross(axis, x), radius))
}

function planes(a: Plane, b: Plane): Stretch[] {
  const d = cross(a.normal, b.normal)
  const sine = length(d)
  if (sine < parallel) return []
  const direction = scale(d, 1 / sine)
  const point = scale(add(scale(cross(b.normal, d), a.offset), scale(cross(d, a.normal), b.offset)), 1 / (sine * sine))
  return [line(point, direction)]
}

function planeCylinder(p: Plane, c: Cylinder): Stretch[] {
  const cosine = dot(p.normal, c.axis)
  if (Math.abs(cosine) < parallel) {
    const depth = p.offset - dot(p.normal, c.point)
    if (Math.abs(depth) > c.radius + coincident) return []
    const foot = along(c.point, p.normal, depth)
    if (Math.abs(depth) > c.radius - coincident) return [line(foot, c.axis)]
    const across = unit(cross(c.axis, p.normal))
    const half = Math.sqrt(c.radius * c.radius - depth * depth)
    return [line(along(foot, across, half), c.axis), line(along(foot, across, -half), c.axis)]
  }
  const centre = along(c.point, c.axis, (p.offset - dot(p.normal, c.point)) / cosine)
  const across = cross(c.axis, p.normal)
  if (length(across) < parallel) return [circle(centre, c.axis, c.radius)]
  const minor = unit(across)
  return [ellipse(centre, scale(cross(minor, p.normal), c.radius / Math.abs(cosine)), scale(minor, c.radius))]
}

function planeCone(p: Plane, c: Cone): Stretch[] {
  const depth = p.offset - dot(p.normal, c.apex)
  const cosine = dot(p.normal, c.axis)
  const across = cross(c.axis, p.normal)
  const sine = length(across)
  if (Math.abs(depth) < coincident / 10) {
    // Through the apex: two generators, one where it is tangent, or the apex alone.
    const ratio = sine < parallel ? Infinity : -cosine / (c.slope * sine)
    if (Math.abs(ratio) > 1 + 1e-12) return []
    const x = unit(cross(across, c.axis))
    const half = Math.acos(Math.max(-1, Math.min(1, ratio)))
    return [half, -half]
      .filter((_, i) => i === 0 || Math.abs(Math.sin(half)) > 1e-7)
      .map((theta) => line(c.apex, generator(c, x, cross(c.axis, x), theta).direction, 0))
  }
  if (sine < parallel) {
    const h = depth / cosine
    return h > 0 ? [circle(along(c.apex, c.axis, h), c.axis, c.slope * h)] : []
  }
  const x = unit(cross(across, c.axis))
  const steep = c.slope * dot(p.normal, x)
  if (Math.abs(cosine) > Math.abs(steep) * (1 + 1e-9)) {
    const near = depth / (cosine + steep)
    if (near < 0) return []
    const one = along(along(c.apex, c.axis, near), x, c.slope * near)
    const other = depth / (cosine - steep)
    const two = along(along(c.apex, c.axis, other), x, -c.slope * other)
    const centre = middle(one, two)
    const w = unit(across)
    const q = quadricOf(c)
    const r2 = -valueAt(q, centre) / (valueAt(q, add(centre, w)) - valueAt(q, centre))
    const u = scale(subtract(one, two), 0.5)
    const v = scale(w, Math.sqrt(Math.max(0, r2)))
    return [length(u) >= length(v) ? ellipse(centre, u, v) : ellipse(centre, v, u)]
  }
  // Parabola or hyperbola: the generators that meet the plane this side of `far`.
  const least = Math.abs(depth) / far
  const wall = Math.sqrt(1 + c.slope * c.slope)
  const ratio = (Math.sign(depth) * least * wall - cosine) / steep
  if (Math.abs(ratio) >= 1) return []
  const half = Math.acos(ratio)
  const [from, to] = depth > 0 === steep > 0 ? [-half, half] : [half, fullTurn - half]
  const curve: Meeting = {
    kind: 'meeting',
    on: c,
    x,
    y: cross(c.axis, x),
    other: p,
    quadric: quadricOf(p),
    path: 'stretch',
    branch: 1,
    middle: 0,
    half: 0,
  }
  return [{ curve, from, to }]
}

function cylinders(a: Cylinder, b: Cylinder): Stretch[] {
  const between = subtract(b.point, a.point)
  const normal = cross(a.axis, b.axis)
  const sine = length(normal)
  if (sine < parallel) {
    const square = along(between, a.axis, -dot(between, a.axis))
    const apart = length(square)
    if (apart < coincident) return []
    const out = scale(square, 1 / apart)
    const foot = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart)
    if (apart > a.radius + b.radius + coincident || apart < Math.abs(a.radius - b.radius) - coincident) return []
    const tangent = apart > a.radius + b.radius - coincident || apart < Math.abs(a.radius - b.radius) + coincident
    if (tangent) return [line(along(a.point, out, Math.sign(foot) * a.radius), a.axis)]
    const half = Math.sqrt(Math.max(0, a.radius * a.radius - foot * foot))
    const side = cross(a.axis, out)
    const at = along(a.point, out, foot)
    return [line(along(at, side, half), a.axis), line(along(at, side, -half), a.axis)]
  }
  const n = scale(normal, 1 / sine)
  if (Math.abs(dot(between, n)) < coincident / 10 && Math.abs(a.radius - b.radius) < coincident / 10) {
    // Axes that cross, equal radii: two ellipses, in the planes that halve the angles between the axes.
    const t = dot(cross(between, b.axis), n) / sine
    const at = along(a.point, a.axis, t)
    return [subtract(a.axis, b.axis), add(a.axis, b.axis)].flatMap((out) => planeCylinder(plane('halving', at, out), a))
  }
  return a.radius <= b.radius ? general(a, b) : general(b, a)
}

function cones(a: Cone, b: Cone): Stretch[] {
  if (!coaxial(a.apex, a.axis, b)) return general(a, b)
  // Radii slope·(z − apex) along a's axis.
  const same = dot(a.axis, b.axis) > 0 ? 1 : -1
  const zb = dot(subtract(b.apex, a.apex), a.axis)
  const slope = a.slope - same * b.slope
  if (Math.abs(slope) < parallel) return []
  const z = (-same * b.slope * zb) / slope
  return z > 0 && same * (z - zb) > 0 ? [circle(along(a.apex, a.axis, z), a.axis, a.slope * z)] : []
}

function coaxial(point: Vec3, axis: Vec3, c: Cone): boolean {
  if (length(cross(axis, c.axis)) > parallel) return false
  return distance(along(point, axis, dot(subtract(c.apex, point), axis)), c.apex) < coincident / 10
}

/** A generator of `on` meets `other` twice, once or not at all; where two meetings run into each other, they are one loop. */
function general(on: Cylinder | Cone, other: Surface): Stretch[] {
  const x = squareTo(on.axis)
  const y = cross(on.axis, x)
  const quadric = quadricOf(other)
  const { roots, value } = branchEnds(on, x, y, quadric)
  const common = { kind: 'meeting', on, x, y, other, quadric } as const
  const round = (branch: 1 | -1): Stretch => ({
    curve: { ...common, path: 'round', branch, middle: 0, half: 0 },
    from: 0,
    to: fullTurn,
  })
  const ends = roots.sort((p, q) => p - q).filter((r, i, all) => i === 0 || r - all[i - 1]! > 1e-9)
  if (ends.length === 0) return value(0) > 0 ? [round(1), round(-1)] : []
  return ends.flatMap((start, i) => {
    const end = i + 1 < ends.length ? ends[i + 1]! : ends[0]! + fullTurn
    const mid = (start + end) / 2
    if (!(value(mid) > 0)) return []
    const loop: Meeting = { ...common, path: 'loop', branch: 1, middle: mid, half: (end - start) / 2 }
    return [{ curve: loop, from: 0, to: fullTurn }]
  })
}
