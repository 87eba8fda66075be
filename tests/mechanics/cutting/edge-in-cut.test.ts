import fc from 'fast-check'
import { expect, it } from 'vitest'
import { edgeInCut } from '../../../src/mechanics/cutting/edge-in-cut.ts'
import { problemsOf, workedOut } from './worked-out.ts'

/** Second road: walk along nose and edge in short steps until the depth is reached. */
function walked(depth: number, noseRadius: number, edgeAngle: number): { length: number; alongRadius: number } {
  const step = 1e-4
  let [x, z, length] = [0, 0, 0]
  while (z < depth) {
    const middle = length + step / 2
    const slope = noseRadius > 0 ? Math.min(edgeAngle, middle / noseRadius) : edgeAngle
    const part = Math.min(1, (depth - z) / (step * Math.sin(slope)))
    x += part * step * Math.cos(slope)
    z += part * step * Math.sin(slope)
    length += part * step
  }
  return { length, alongRadius: x }
}

const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true })

it('length of edge in cut, by formula as by walking along it', () => {
  fc.assert(
    fc.property(figure(0.05, 3), figure(0, 2), figure(0.3, 1.5), (depth, noseRadius, edgeAngle) => {
      const edge = workedOut(edgeInCut({ depth, noseRadius, edgeAngle }))
      const other = walked(depth, noseRadius, edgeAngle)
      expect(edge.length / other.length).toBeCloseTo(1, 3)
      expect(edge.alongRadius).toBeCloseTo(other.alongRadius, 3)
      expect(Math.tan(edge.chordAngle)).toBeCloseTo(depth / edge.alongRadius, 6)
    }),
    { numRuns: 30 },
  )
})

it('inside the nose r·acos(1 − a/r), beyond it nose and straight edge, without a step between', () => {
  const r = 0.8
  const edgeAngle = (80 * Math.PI) / 180
  expect(workedOut(edgeInCut({ depth: 0.4, noseRadius: r, edgeAngle }))).toMatchObject({ insideNose: true })
  expect(workedOut(edgeInCut({ depth: 0.4, noseRadius: r, edgeAngle })).length).toBeCloseTo(r * (Math.PI / 3), 12)
  const beyond = workedOut(edgeInCut({ depth: 2, noseRadius: r, edgeAngle }))
  const nose = r * (1 - Math.cos(edgeAngle))
  expect(beyond.insideNose).toBe(false)
  expect(beyond.length).toBeCloseTo(r * edgeAngle + (2 - nose) / Math.sin(edgeAngle), 12)
  const either = [nose * (1 - 1e-9), nose * (1 + 1e-9)].map((depth) =>
    workedOut(edgeInCut({ depth, noseRadius: r, edgeAngle })),
  )
  expect(either[0]!.length).toBeCloseTo(either[1]!.length, 7)
  expect(either[0]!.alongRadius).toBeCloseTo(either[1]!.alongRadius, 7)
})

it('a sharp square edge cuts over the depth and nothing more', () => {
  const square = workedOut(edgeInCut({ depth: 1.5, noseRadius: 0, edgeAngle: Math.PI / 2 }))
  expect(square.length).toBeCloseTo(1.5, 12)
  expect(square.chordAngle).toBeCloseTo(Math.PI / 2, 12)
})

it('an overhanging edge leans back: its chord stands beyond the upright', () => {
  const edge = workedOut(edgeInCut({ depth: 2, noseRadius: 0, edgeAngle: (100 * Math.PI) / 180 }))
  expect(edge.alongRadius).toBeLessThan(0)
  expect(edge.chordAngle).toBeCloseTo((100 * Math.PI) / 180, 12)
})

it('a depth of nothing and an edge that lies flat are refused', () => {
  expect(problemsOf(edgeInCut({ depth: 0, noseRadius: -1, edgeAngle: 0 }))).toEqual([
    ['out-of-range', 'depth'],
    ['out-of-range', 'noseRadius'],
    ['out-of-range', 'edgeAngle'],
  ])
})
