import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { arcLength, crossings, type Ellipse, pointAt } from '../../src/edges/curve.ts'
import { meetingsOf } from '../../src/edges/meeting.ts'
import { quadricOf, valueAt } from '../../src/edges/quadric.ts'
import { cone, coneThrough, cylinder, depthOf, plane, type Surface } from '../../src/geometry/surface.ts'
import { cross, dot, length, unit, type Vec3 } from '../../src/geometry/vector.ts'

const up: Vec3 = [0, 0, 1]
const only = (s: Surface, t: Surface) => {
  const found = meetingsOf(s, t)
  expect(found).toHaveLength(1)
  return found[0]!.curve
}
const axes = (e: Ellipse) => [length(e.u), length(e.v)]

describe('two surfaces meet', () => {
  it('in an ellipse where a face cuts a bore at a slant: semi-axes r and r/cos a', () => {
    for (const degrees of [0.5, 7, 10, 30, 60]) {
      const a = (degrees * Math.PI) / 180
      const e = only(cylinder('bore', [3, -2, 0], up, 9.37), plane('face', [0, 0, -40], [Math.sin(a), 0, Math.cos(a)]))
      expect(e.kind).toBe('ellipse')
      const [long, short] = axes(e as Ellipse)
      expect(Math.abs(long! - 9.37 / Math.cos(a))).toBeLessThan(1e-9)
      expect(Math.abs(short! - 9.37)).toBeLessThan(1e-9)
      expect(Math.abs(dot((e as Ellipse).u, (e as Ellipse).v))).toBeLessThan(1e-9)
    }
  })

  it('in a circle where the face is square to the axis', () => {
    const e = only(plane('face', [0, 0, 5], up), cylinder('bore', [1, 2, 0], [0, 0, -1], 4)) as Ellipse
    expect(e.centre).toEqual([1, 2, 5])
    expect(axes(e)).toEqual([4, 4])
    expect(arcLength(e, 0, 2 * Math.PI)).toBeCloseTo(8 * Math.PI, 12)
    const c = only(plane('face', [0, 0, 5], up), coneThrough('point', [0, 0, 0], 0, [0, 0, 10], 6)) as Ellipse
    axes(c).forEach((r) => {
      expect(r).toBeCloseTo(3, 12)
    })
  })

  it('in an ellipse where a face cuts a cone at a slant, by the two ends of its long axis', () => {
    // Half angle 30°, plane z = 10 + x/2: the generators in the XZ plane meet it at z = 10/(1 ∓ tan 30°/2).
    const k = Math.tan(Math.PI / 6)
    const e = only(cone('cone', [0, 0, 0], up, Math.PI / 6), plane('cut', [0, 0, 10], [-0.5, 0, 1])) as Ellipse
    const [z1, z2] = [10 / (1 - k / 2), 10 / (1 + k / 2)]
    expect(axes(e)[0]).toBeCloseTo(Math.hypot(k * (z1 + z2), z1 - z2) / 2, 10)
    // Dandelin: the short semi-axis is the geometric mean of the cone's radii at those ends.
    expect(axes(e)[1]).toBeCloseTo(Math.sqrt(k * z1 * k * z2), 10)
  })

  it('in a hyperbola where a flat of a chamfered hexagon cuts the chamfer: lowest in the middle of the flat', () => {
    const chamfer = cone('chamfer', [0, 0, 20], [0, 0, -1], Math.PI / 3)
    const found = meetingsOf(plane('flat', [0, 12, 0], [0, 1, 0]), chamfer)
    expect(found).toHaveLength(1)
    const { curve, from, to } = found[0]!
    const p = pointAt(curve, (from + to) / 2)
    expect(p[0]).toBeCloseTo(0, 9)
    expect(p[2]).toBeCloseTo(20 - 12 / Math.tan(Math.PI / 3), 9)
  })

  it('in two lines, in one where they are tangent, and not at all beyond that', () => {
    const c = cylinder('round', [0, 0, 0], up, 5)
    const flat = (x: number) => plane('flat', [x, 0, 0], [1, 0, 0])
    expect(meetingsOf(flat(3), c).map(({ curve }) => Math.abs(pointAt(curve, 7)[1]))).toEqual([4, 4])
    expect(meetingsOf(flat(5), c)).toHaveLength(1)
    expect(meetingsOf(flat(5 + 5e-7), c)).toHaveLength(1)
    expect(meetingsOf(flat(5.001), c)).toHaveLength(0)
    const other = (x: number, r: number) => cylinder('other', [x, 0, 9], [0, 0, -1], r)
    expect(meetingsOf(c, other(8, 5)).map(({ curve }) => Math.abs(pointAt(curve, 0)[1]))).toEqual([3, 3])
    expect(meetingsOf(c, other(7, 2))).toHaveLength(1)
    expect(pointAt(meetingsOf(c, other(3, 2))[0]!.curve, 0)[0]).toBeCloseTo(5, 12)
    expect(pointAt(meetingsOf(c, other(-3, 2))[0]!.curve, 0)[0]).toBeCloseTo(-5, 12)
    expect(meetingsOf(c, other(1, 2))).toHaveLength(0)
  })

  it('in two ellipses where equal cylinders cross, with semi-axes r and r·√2 when they cross square', () => {
    const found = meetingsOf(cylinder('a', [0, 0, 4], [1, 0, 0], 3), cylinder('b', [2, 0, 0], up, 3))
    expect(found.map(({ curve }) => curve.kind)).toEqual(['ellipse', 'ellipse'])
    for (const { curve } of found) {
      expect(axes(curve as Ellipse)[0]).toBeCloseTo(3 * Math.SQRT2, 10)
      expect(axes(curve as Ellipse)[1]).toBeCloseTo(3, 10)
    }
  })

  it('in two closed curves where a cross hole goes right through, in one where it is half beside the bar', () => {
    const shaft = cylinder('shaft', [0, 0, 0], up, 10)
    const through = meetingsOf(shaft, cylinder('hole', [0, 1, 0], [1, 0, 0], 3))
    expect(through).toHaveLength(2)
    expect(meetingsOf(shaft, cylinder('hole', [0, 9, 0], [1, 0, 0], 3))).toHaveLength(1)
    expect(meetingsOf(shaft, cylinder('hole', [0, 14, 0], [1, 0, 0], 3))).toHaveLength(0)
  })

  it('in a circle where a drill point ends its hole, coaxial cone and cylinder', () => {
    const e = only(cylinder('hole', [0, 0, 0], up, 4), coneThrough('point', [0, 0, -12], 0, [0, 0, -10], 4)) as Ellipse
    expect(e.centre[2]).toBeCloseTo(-10, 12)
    const two = only(
      coneThrough('a', [0, 0, 0], 2, [0, 0, 4], 6),
      coneThrough('b', [0, 0, 0], 7, [0, 0, 5], 2),
    ) as Ellipse
    // 2 + z = 7 − z.
    expect(two.centre[2]).toBeCloseTo(2.5, 12)
    expect(axes(two)[0]).toBeCloseTo(4.5, 12)
  })

  it('nowhere but on both of them, whatever they are', () => {
    const number = (min: number, max: number) =>
      fc.integer({ min: Math.round(min * 1000), max: Math.round(max * 1000) }).map((n) => n / 1000)
    const point = fc.tuple(number(-10, 10), number(-10, 10), number(-10, 10))
    const direction = fc
      .tuple(number(-1, 1), number(-1, 1), number(-1, 1))
      .filter((v) => Math.hypot(...v) > 0.1)
      .map((v) => unit(v))
    const surface: fc.Arbitrary<Surface> = fc.oneof(
      fc.tuple(point, direction).map(([p, d]) => plane('p', p, d)),
      fc.tuple(point, direction, number(1, 12)).map(([p, d, r]) => cylinder('c', p, d, r)),
      fc.tuple(point, direction, number(0.1, 1.4)).map(([p, d, a]) => cone('k', p, d, a)),
    )
    let seen = 0
    fc.assert(
      fc.property(surface, surface, (s, t) => {
        for (const { curve, from, to } of meetingsOf(s, t)) {
          for (let i = 0; i <= 20; i++) {
            const p = pointAt(curve, Math.max(from, -60) + ((Math.min(to, 60) - Math.max(from, -60)) * i) / 20)
            // What lies far off or on the wrong nappe is sorted out by whoever asks.
            if (length(p) > 60) continue
            for (const x of [s, t]) {
              const q = quadricOf(x)
              if (x.kind === 'cone' && dot(x.axis, [p[0] - x.apex[0], p[1] - x.apex[1], p[2] - x.apex[2]]) < 0) {
                expect(Math.abs(valueAt(q, p))).toBeLessThan(1e-5)
              } else expect(Math.abs(depthOf(x, p))).toBeLessThan(1e-6)
            }
            seen++
          }
        }
      }),
      { numRuns: 400, seed: 7 },
    )
    expect(seen).toBeGreaterThan(5000)
  })

  it('wherever a dense search along one of them finds that it crosses the other', () => {
    // Generators of a cylinder against a slanting cylinder and a cone: every crossing lies on one of the curves.
    const shaft = cylinder('shaft', [0, 0, 0], up, 6)
    const others = [
      cylinder('hole', [1, 2, 3], unit([1, 0.4, 0.7]), 4),
      cylinder('wide', [1, 2, 3], unit([1, 0.4, 0.7]), 9),
      cone('cone', [14, 1, 2], unit([-1, 0.1, 0.3]), 0.4),
    ]
    for (const other of others) {
      const curves = meetingsOf(shaft, other)
      let crossed = 0
      for (let i = 0; i < 90; i++) {
        const theta = (i * Math.PI) / 45 + 0.01
        const line = {
          kind: 'line',
          point: [6 * Math.cos(theta), 6 * Math.sin(theta), 0] as Vec3,
          direction: up,
        } as const
        for (const t of crossings(line, quadricOf(other), -50, 50)) {
          const p = pointAt(line, t)
          if (Math.abs(depthOf(other, p)) > 1e-6) continue
          crossed++
          // On the curve where the half plane of that generator cuts it.
          const half = cross(up, line.point)
          const cut = quadricOf(plane('half', [0, 0, 0], half))
          const near = curves.flatMap(({ curve, from, to }) =>
            crossings(curve, cut, from, to).map((s) => pointAt(curve, s)),
          )
          expect(Math.min(...near.map((q) => Math.hypot(q[0] - p[0], q[1] - p[1], q[2] - p[2])))).toBeLessThan(1e-6)
        }
      }
      expect(crossed).toBeGreaterThan(10)
    }
  })
})
