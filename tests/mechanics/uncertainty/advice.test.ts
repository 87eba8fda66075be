import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { toleranceAdvice } from '../../../src/mechanics/uncertainty/advice.ts'
import { spreadOf, type Toleranced } from '../../../src/mechanics/uncertainty/spread.ts'
import { worstAtCorners } from '../../../src/mechanics/uncertainty/worst-case.ts'

const size = (id: string, middle: number, by: number): Toleranced => ({ id, low: middle - by, high: middle + by })

describe('advice on the tolerances of a stack: wall = a − b − c, at least 2.7', () => {
  const input = {
    sizes: [size('a', 10, 0.5), size('b', 5, 0.02), size('c', 2, 0.3), size('name plate', 40, 1)],
    outcome: ([a, b, c]: readonly number[]) => [a! - b! - c!],
    held: [{ value: 2.7, is: 'least' }],
    count: 4000,
    seed: 9,
    wanted: 0.997,
    mayCost: 0.001,
  } as const
  const advice = toleranceAdvice(input)
  /** Closed form for normal inputs: Φ(0.3/σ) with σ = √(Σ T²)/3. */
  const share = (a: number, c: number) => phi(0.3 / (Math.hypot(a, 0.02, c) / 3))

  it('counts the good parts as the normal distribution does', () => {
    expect(advice.good.low).toBeLessThan(share(0.5, 0.3))
    expect(advice.good.high).toBeGreaterThan(share(0.5, 0.3))
  })

  it('names the largest first, and what halving it would bring', () => {
    expect(advice.tighten.map(({ id }) => id).slice(0, 2)).toEqual(['a', 'c'])
    const [a, c] = advice.tighten
    expect(a!.shareOfVariance).toBeCloseTo(0.25 / (0.25 + 0.0004 + 0.09), 12)
    expect(a!.good.low).toBeLessThan(share(0.25, 0.3))
    expect(a!.good.high).toBeGreaterThan(share(0.25, 0.3))
    expect(c!.good.low).toBeLessThan(share(0.5, 0.15))
    expect(c!.good.high).toBeGreaterThan(share(0.5, 0.15))
    expect(a!.cost).toBeCloseTo(advice.good.share - a!.good.share, 12)
  })

  it('relaxes what costs nothing to double, and not what costs', () => {
    expect(advice.relax.map(({ id }) => id).sort()).toEqual(['b', 'name plate'])
    expect(advice.relax.find(({ id }) => id === 'name plate')!.cost).toBe(0)
  })

  it('tightens nothing where enough parts are good, and says so for both sides of what is wanted', () => {
    const { share: good } = advice.good
    expect(toleranceAdvice({ ...input, wanted: good }).tighten).toEqual([])
    expect(toleranceAdvice({ ...input, wanted: good + 1e-9 }).tighten).not.toEqual([])
  })

  it('relaxes all where any loss is allowed', () => {
    expect(toleranceAdvice({ ...input, mayCost: 1 }).relax).toHaveLength(4)
  })

  it('counts a part as bad when any of its figures is, and when it cannot be made', () => {
    const both = toleranceAdvice({
      ...input,
      outcome: ([a, b, c]) => [a! - b! - c!, a! > 10 ? undefined : a],
      held: [...input.held, { value: 100, is: 'most' }],
    })
    expect(both.good.share).toBeLessThan(0.5)
    expect(both.good.share).toBeGreaterThan(0.4)
  })

  it('does not take shares that are none', () => {
    expect(() => toleranceAdvice({ ...input, wanted: 1.1 })).toThrow(RangeError)
    expect(() => toleranceAdvice({ ...input, mayCost: -0.1 })).toThrow(RangeError)
  })
})

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

/** Standard normal distribution, Abramowitz and Stegun 26.2.17 (from memory; within 1e-7). */
function phi(x: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(x))
  const poly = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
  const tail = (Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) * poly
  return x > 0 ? 1 - tail : tail
}
