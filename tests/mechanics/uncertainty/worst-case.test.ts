import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { spreadOf, type Toleranced } from '../../../src/mechanics/uncertainty/spread.ts'
import { worstAtCorners } from './worst-at-corners.ts'

const size = (id: string, middle: number, by: number): Toleranced => ({ id, low: middle - by, high: middle + by })

describe('the worst case over all corners', () => {
  it('is that of the slopes where an outcome is linear', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 1, maxLength: 6 }), (slopes) => {
        const sizes = slopes.map((_, i) => size(`s${i}`, i, 0.1 * (i + 1)))
        const outcome = (values: readonly number[]) => [values.reduce((sum, v, i) => sum + slopes[i]! * v, 0)]
        const [all] = worstAtCorners(sizes, outcome)
        const [one] = spreadOf({ sizes, outcome, held: [undefined], count: 1, seed: 1 })
        expect(all!.low).toBeCloseTo(one!.worst!.low, 9)
        expect(all!.high).toBeCloseTo(one!.worst!.high, 9)
      }),
      { seed: 4, numRuns: 200 },
    )
  })

  it('finds what slopes at the middle miss: a product of two sizes about nought', () => {
    const sizes = [size('x', 0, 2), size('y', 0, 3)]
    const outcome = ([x, y]: readonly number[]) => [x! * y!]
    expect(worstAtCorners(sizes, outcome)).toEqual([{ low: -6, high: 6 }])
    const [one] = spreadOf({ sizes, outcome, held: [undefined], count: 1, seed: 1 })
    expect(one!.worst!.high).toBeLessThan(6.1)
  })

  it('has none where a corner makes nothing, and is not tried over more corners than 4096', () => {
    expect(worstAtCorners([size('x', 0, 1)], ([x]) => [x! > 0 ? x : undefined, 1])).toEqual([
      undefined,
      { low: 1, high: 1 },
    ])
    const many = Array.from({ length: 13 }, (_, i) => size(`s${i}`, 0, 1))
    expect(() => worstAtCorners(many, () => [0])).toThrow(RangeError)
  })
})
