import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clipped, depthIn, hull, overlap, type Point, type Polygon, rectangle } from '../../src/geometry/polygon.ts'

const coordinate = fc.integer({ min: -100, max: 100 }).map((n) => n / 10)
const point = fc.tuple(coordinate, coordinate)
const polygon = fc
  .array(point, { minLength: 3, maxLength: 12 })
  .map(hull)
  .filter((corners) => corners.length > 2 && areaOf(corners) > 0.1)

/** Shoelace formula; positive anticlockwise. */
function areaOf(corners: Polygon): number {
  return (
    corners.reduce((sum, [x, y], i) => {
      const [u, v] = corners[(i + 1) % corners.length]!
      return sum + x * v - u * y
    }, 0) / 2
  )
}

describe('a hull', () => {
  it('holds every point and has its corners among them, anticlockwise', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 3, maxLength: 20 }), (points) => {
        const corners = hull(points)
        if (corners.length < 3) return
        expect(areaOf(corners)).toBeGreaterThan(0)
        for (const p of points) expect(depthIn(corners, p)).toBeGreaterThan(-1e-9)
        for (const corner of corners) expect(points).toContainEqual(corner)
      }),
    )
  })
})

describe('what a half plane leaves of a polygon', () => {
  it('and what it takes make the whole', () => {
    fc.assert(
      fc.property(polygon, point, coordinate, (corners, normal, offset) => {
        fc.pre(Math.hypot(...normal) > 0.1)
        const left = clipped(corners, { normal, offset })
        const taken = clipped(corners, { normal: [-normal[0], -normal[1]], offset: -offset })
        expect(areaOf(left) + areaOf(taken)).toBeCloseTo(areaOf(corners), 9)
        for (const [x, y] of left) expect(normal[0] * x + normal[1] * y).toBeLessThan(offset + 1e-9)
      }),
    )
  })
})

describe('the overlap of two polygons', () => {
  it('is the same either way, and lies in both', () => {
    fc.assert(
      fc.property(polygon, polygon, (one, other) => {
        const [a, b] = [overlap(one, other), overlap(other, one)]
        expect(areaOf(a)).toBeCloseTo(areaOf(b), 9)
        for (const p of a) {
          expect(depthIn(one, p)).toBeGreaterThan(-1e-9)
          expect(depthIn(other, p)).toBeGreaterThan(-1e-9)
        }
      }),
    )
  })

  it('of two rectangles is a rectangle, whichever corners they are given by', () => {
    const both = overlap(rectangle([4, 3], [0, 0]), rectangle([1, 5], [9, 2]))
    expect(areaOf(both)).toBeCloseTo(3, 12)
    expect(overlap(rectangle([0, 0], [1, 1]), rectangle([2, 2], [3, 3]))).toEqual([])
  })
})

describe('the depth in a polygon', () => {
  it('is the distance to the nearest side, negative outside', () => {
    const square = rectangle([0, 0], [10, 10])
    const cases: [Point, number][] = [
      [[5, 5], 5],
      [[1, 4], 1],
      [[-2, 5], -2],
    ]
    for (const [p, depth] of cases) expect(depthIn(square, p)).toBeCloseTo(depth, 12)
    expect(depthIn([], [0, 0])).toBe(-Infinity)
  })
})
