import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Box } from '../../src/drawing/dimensions/room.ts'
import { type Extent, packedBest } from '../../src/drawing/plan/pack.ts'

const area: Box = { low: [10, 10], high: [180, 260] }
const corner: Box = { low: [100, 10], high: [180, 50] }
const size = fc.tuple(fc.double({ min: 5, max: 150, noNaN: true }), fc.double({ min: 5, max: 190, noNaN: true }))

describe('things on pages', () => {
  it('lie inside the area, clear of one another and of what is taken by the gap', () => {
    fc.assert(
      fc.property(fc.array(size, { minLength: 1, maxLength: 12 }), fc.constantFrom(3, 8), (sizes, gap) => {
        const packed = packedBest(sizes, area, [corner], gap)!
        const boxes = packed.spots.map(({ page, at: [x, y] }, i) => ({
          page,
          low: [x, y] as const,
          high: [x + sizes[i]![0], y + sizes[i]![1]] as const,
        }))
        const apart = (a: Box, b: Box) =>
          [0, 1].some((k) => a.high[k]! + gap < b.low[k]! + 1e-6 || b.high[k]! + gap < a.low[k]! + 1e-6)
        boxes.forEach((a, i) => {
          expect(Math.min(a.low[0] - 10, a.low[1] - 10, 180 - a.high[0], 260 - a.high[1])).toBeGreaterThan(-1e-6)
          expect(apart(a, corner)).toBe(true)
          for (const b of boxes.slice(i + 1)) expect(a.page !== b.page || apart(a, b)).toBe(true)
        })
        expect(Math.max(...boxes.map((b) => b.page)) + 1).toBe(packed.pages)
        expect(packed.pages).toBeGreaterThanOrEqual(packed.least)
        expect(packed.spots[0]!.page).toBe(0)
      }),
      { numRuns: 200, seed: 11 },
    )
  })

  it('take no more pages because of the order that they are given in', () => {
    // Small ones first would leave no room for the tall one beside them.
    const mixed: Extent[] = [
      [50, 60],
      [50, 60],
      [50, 60],
      [80, 240],
    ]
    expect(packedBest(mixed, area, [], 5)?.pages).toBe(1)
    expect(packedBest([...mixed].reverse(), area, [], 5)?.pages).toBe(1)
  })

  it('are spread evenly where they need a second page anyhow', () => {
    const packed = packedBest(Array(7).fill([160, 55]), area, [], 5)!
    expect(packed.pages).toBe(2)
    expect([0, 1].map((page) => packed.spots.filter((s) => s.page === page).length)).toEqual([4, 3])
  })

  it('have no place where one is larger than an empty page', () => {
    expect(packedBest([[20, 260]], area, [], 5)).toBeUndefined()
  })
})
