import { describe, expect, it } from 'vitest'
import { box, cellOf, rod } from '../../src/geometry/cell.ts'
import { type Frame, frameOf, pointFrom } from '../../src/geometry/frame.ts'
import { inPlane, planarSection } from '../../src/geometry/planar-section.ts'
import { depthIn, type Point, type Segment } from '../../src/geometry/polygon.ts'
import { isInside, type Solid } from '../../src/geometry/solid.ts'
import { coneThrough, plane } from '../../src/geometry/surface.ts'
import { unit } from '../../src/geometry/vector.ts'
import { solidOf } from '../../src/part/part.ts'
import { forRandomHeads } from '../families/random-heads.ts'

const names = ['a', 'b', 'c', 'd', 'e', 'f'] as const
const ends = { wall: 'wall', start: 'start', end: 'end' }
const block = box(names, [-10, -10, -10], [10, 10, 10])
const level: Frame = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] }
const upright: Frame = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 0, 1], z: [0, -1, 0] }

const lengthOf = (edges: readonly Segment[]) =>
  edges.reduce((sum, [p, q]) => sum + Math.hypot(q[0] - p[0], q[1] - p[1]), 0)

describe('a plane through a solid shows', () => {
  it('the outline of a block, and of a hole bored through it', () => {
    expect(lengthOf(planarSection({ stock: [block], cuts: [] }, level).edges)).toBeCloseTo(80, 9)
    const bored = { stock: [block], cuts: [rod(ends, [0, 0, -20], [0, 0, 1], 40, 4)] }
    const section = planarSection(bored, level)
    expect(lengthOf(section.edges)).toBeCloseTo(80 + 2 * Math.PI * 4, 1)
    // Along its axis the hole is two straight lines, exactly.
    const along = planarSection(bored, upright)
    expect(lengthOf(along.edges)).toBeCloseTo(80 - 4 * 4 + 40, 9)
  })

  it('a hole off its axis as narrow as it is there', () => {
    const beside = { ...upright, origin: [0, 3, 0] as const }
    const { cuts } = planarSection({ stock: [block], cuts: [rod(ends, [0, 0, -20], [0, 0, 1], 40, 5)] }, beside)
    const xs = cuts.flat().map(([x]) => x)
    // Half the chord 3 mm beside the axis of a radius of 5 mm.
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([expect.closeTo(-4, 9), expect.closeTo(4, 9)])
  })

  it('nothing of a hole that it does not meet, and nothing at all of a solid that it misses', () => {
    const beside = { ...upright, origin: [0, 6, 0] as const }
    expect(planarSection({ stock: [block], cuts: [rod(ends, [0, 0, -20], [0, 0, 1], 40, 5)] }, beside).cuts).toEqual([])
    const away = { ...upright, origin: [0, 11, 0] as const }
    expect(planarSection({ stock: [block], cuts: [] }, away)).toEqual({ stock: [], cuts: [], edges: [] })
  })

  it('a drill point as its two generators', () => {
    const cone = cellOf(coneThrough('point', [0, 0, -5], 0, [0, 0, 0], 5), plane('mouth', [0, 0, 0], [0, 0, 1]))
    const { edges } = planarSection({ stock: [cone], cuts: [] }, upright)
    expect(lengthOf(edges)).toBeCloseTo(10 + 2 * 5 * Math.SQRT2, 9)
  })

  it('a side once that two pieces of stock share with each other, and none between them', () => {
    const other = box(names, [10, -10, -10], [20, 10, 10])
    expect(lengthOf(planarSection({ stock: [block, other], cuts: [] }, level).edges)).toBeCloseTo(100, 9)
  })

  it('metal where there is metal, of any head', () => {
    forRandomHeads(12, (design) => {
      const solid: Solid = solidOf(design.part('body'))
      const tilted = frameOf([1, 2, -15], unit([0.2, -1, 0.3]), unit([1, 0.2, 0]))
      for (const frame of [upright, { ...level, origin: [0, 0, -20] as const }, tilted]) {
        const { stock, cuts, edges } = planarSection(solid, frame)
        const isShown = (p: Point) => stock.some((s) => depthIn(s, p) > 0) && !cuts.some((c) => depthIn(c, p) > 0)
        for (let i = 0; i < 400; i++) {
          const p: Point = [((i * 37) % 200) / 2 - 50, ((i * 61) % 200) / 2 - 50]
          const edge = Math.min(...edges.map((segment) => distanceTo(segment, p)))
          // A round edge is drawn as a polygon that stands out by less than 0.1 % of its radius.
          if (edge < 0.06) continue
          expect(isShown(p)).toBe(isInside(solid, pointFrom(frame, [...p, 0])))
        }
      }
    })
  })
})

describe('a point of space', () => {
  it('comes back from the plane that it lies in', () => {
    const frame = frameOf([1, 2, 3], unit([1, 1, 1]), unit([1, -1, 0]))
    const [x, y] = inPlane(frame, pointFrom(frame, [4, -7, 0]))
    expect([x, y]).toEqual([expect.closeTo(4, 12), expect.closeTo(-7, 12)])
  })
})

function distanceTo([p, q]: Segment, [x, y]: Point): number {
  const run = [q[0] - p[0], q[1] - p[1]] as const
  const t = Math.min(1, Math.max(0, ((x - p[0]) * run[0] + (y - p[1]) * run[1]) / (run[0] ** 2 + run[1] ** 2)))
  return Math.hypot(x - p[0] - t * run[0], y - p[1] - t * run[1])
}
