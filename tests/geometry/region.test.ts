import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { box, type Cell, cellFrom, cellOf, rod } from '../../src/geometry/cell.ts'
import { frameOf } from '../../src/geometry/frame.ts'
import { largestRadius, leastDepth, reach, regionOf, separation } from '../../src/geometry/region.ts'
import { coneThrough, cylinder, plane } from '../../src/geometry/surface.ts'
import { unit, type Vec3 } from '../../src/geometry/vector.ts'

const sides = ['−x', '+x', '−y', '+y', '−z', '+z'] as const
const names = { wall: 'wall', start: 'start', end: 'end' }
const along = (start: Vec3, axis: Vec3, length: number, radius: number) => rod(names, start, axis, length, radius)
const region = (...cells: Cell[]) => {
  const found = regionOf(cells, [0, 0, 0])
  if (!found) throw new Error('empty')
  return found
}
const apart = (a: Cell, b: Cell) => separation(region(a), region(b))!.distance
const z: Vec3 = [0, 0, 1]

describe('the distance of two bodies', () => {
  it('is that of facing caps', () => {
    expect(apart(along([0, 0, 20], z, 10, 5), along([0, 0, 0], z, 10, 3))).toBeCloseTo(10, 8)
  })
  it('is that of a cone’s apex from a face', () => {
    const cone = cellOf(coneThrough('cone', [0, 0, -1], 0, [0, 0, 5], 6), plane('top', [0, 0, 5], z))
    expect(apart(cone, box(sides, [-20, -20, -10], [20, 20, -3.25]))).toBeCloseTo(2.25, 8)
  })
  it('is that of crossed cylinders less both radii', () => {
    expect(apart(along([-10, 0, 0], [1, 0, 0], 20, 2), along([0, -10, 7], [0, 1, 0], 20, 3))).toBeCloseTo(2, 8)
  })
  it('is that of parallel cylinders less both radii', () => {
    expect(apart(along([0, 0, 0], z, 20, 2), along([6, 8, 0], z, 20, 3))).toBeCloseTo(5, 8)
  })
  it('is that of two corners', () => {
    expect(apart(box(sides, [0, 0, 0], [1, 1, 1]), box(sides, [3, 3, 2], [4, 4, 4]))).toBeCloseTo(3, 8)
  })
  it('is nothing where they only touch: tangent, face on face, shared edge', () => {
    expect(apart(along([0, 0, 0], z, 20, 2), along([4, 0, 0], z, 20, 2))).toBeLessThan(1e-5)
    expect(apart(box(sides, [0, 0, 0], [1, 1, 1]), box(sides, [1, 0, 0], [2, 1, 1]))).toBeLessThan(1e-5)
    expect(apart(box(sides, [0, 0, 0], [1, 1, 1]), box(sides, [1, 1, 0], [2, 2, 1]))).toBeLessThan(1e-5)
  })
  it('is given up once it is sure to be larger than asked for', () => {
    const a = region(along([0, 0, 0], z, 20, 2))
    const b = region(along([30, 0, 0], z, 20, 2))
    expect(separation(a, b, 25)).toBeUndefined()
    expect(separation(a, b, 27)!.distance).toBeCloseTo(26, 8)
  })
  it('does not depend on where in space the bodies are, nor on their order', () => {
    const number = fc.double({ min: -1, max: 1, noNaN: true })
    fc.assert(
      fc.property(number, number, number, fc.double({ min: 0.3, max: 1, noNaN: true }), (a, b, c, d) => {
        const frame = frameOf([40 * a, 40 * b, 40 * c], ...square(unit([a, b, d])))
        const drill = cellOf(
          cylinder('drill', [9, 0, 0], z, 3),
          coneThrough('point', [9, 0, -2], 0, [0 + 9, 0, 0], 3),
          plane('top', [0, 0, 12], z),
        )
        const slot = box(sides, [-5, -4, -20], [4, 6, -1])
        const here = apart(drill, slot)
        expect(apart(cellFrom(frame, slot), cellFrom(frame, drill))).toBeCloseTo(here, 7)
      }),
      { numRuns: 60 },
    )
  })
})

/** z and x of a right-handed frame with that z. */
function square(zAxis: Vec3): [Vec3, Vec3] {
  const x = unit([zAxis[2], 0, -zAxis[0] || 1e-9])
  const d = x[0] * zAxis[0] + x[1] * zAxis[1] + x[2] * zAxis[2]
  return [zAxis, unit([x[0] - d * zAxis[0], x[1] - d * zAxis[1], x[2] - d * zAxis[2]])]
}

describe('a region', () => {
  it('is empty where bodies only touch', () => {
    expect(regionOf([box(sides, [0, 0, 0], [1, 1, 1]), box(sides, [1, 0, 0], [2, 1, 1])], [0, 0, 0])).toBeUndefined()
  })
  it('is found from a start far away', () => {
    const found = regionOf([along([300, 0, 0], z, 20, 2)], [-500, 200, 90])!
    expect(Math.hypot(found.within[0] - 300, found.within[1])).toBeLessThan(2)
  })
  it('reaches as far as its rim', () => {
    const cone = region(
      cellOf(
        coneThrough('cone', [0, 0, 0], 1, [0, 0, 6], 4),
        plane('a', [0, 0, 6], z),
        plane('b', [0, 0, 0], [0, 0, -1]),
      ),
    )
    expect(reach(cone, [1, 0, 0]).distance).toBeCloseTo(4, 8)
    expect(reach(cone, z).distance).toBeCloseTo(6, 8)
    expect(reach(cone, unit([1, 0, 1])).distance).toBeCloseTo(10 * Math.SQRT1_2, 8)
  })
  it('has its largest radius at the corner that is farthest from the axis', () => {
    expect(largestRadius(region(box(sides, [-3, -2, 0], [4, 5, 1])), [0, 0, 0], z).radius).toBeCloseTo(
      Math.hypot(4, 5),
      8,
    )
  })
  it('lies as deep below a round face as its farthest corner', () => {
    const bar = cylinder('bar', [0, 0, 0], z, 20)
    expect(leastDepth(region(box(sides, [-3, -2, 0], [4, 5, 1])), bar).depth).toBeCloseTo(20 - Math.hypot(4, 5), 8)
  })
})
