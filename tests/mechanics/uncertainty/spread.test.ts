import { describe, expect, it } from 'vitest'
import { shareOf, spreadOf, type Toleranced } from '../../../src/mechanics/uncertainty/spread.ts'

const size = (id: string, middle: number, by: number): Toleranced => ({ id, low: middle - by, high: middle + by })
/** Standard normal distribution by the closed form's series (Abramowitz and Stegun 26.2.17, from memory; within 1e-7). */
function phi(x: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(x))
  const poly = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
  const tail = (Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) * poly
  return x > 0 ? 1 - tail : tail
}

describe('the spread of a chain of sizes', () => {
  const sizes = [size('a', 10, 0.3), size('b', 5, 0.1), size('c', 2, 0.2)]
  const gap = spreadOf({
    sizes,
    outcome: ([a, b, c]) => [a! - b! - c!],
    held: [{ value: 2.7, is: 'least' }],
    count: 20_000,
    seed: 5,
  })[0]!

  it('adds up at its worst, and by the root of the sum of squares', () => {
    expect(gap.middle).toBeCloseTo(3, 12)
    expect([gap.worst!.low, gap.worst!.high].map((v) => Number(v.toFixed(9)))).toEqual([2.4, 3.6])
    const root = Math.sqrt(0.3 ** 2 + 0.1 ** 2 + 0.2 ** 2)
    expect(gap.rootSumSquare!.high - 3).toBeCloseTo(root, 12)
    expect(3 - gap.rootSumSquare!.low).toBeCloseTo(root, 12)
  })

  it('has in the simulation the mean and the deviation of the closed form: the root of the sum of squares over three', () => {
    const sigma = Math.sqrt(0.3 ** 2 + 0.1 ** 2 + 0.2 ** 2) / 3
    expect(Math.abs(gap.mean! - 3)).toBeLessThan((4 * sigma) / Math.sqrt(20_000))
    expect(Math.abs(gap.deviation! / sigma - 1)).toBeLessThan(0.02)
  })

  it('comes out good as often as the normal distribution says', () => {
    const sigma = Math.sqrt(0.14) / 3
    const expected = phi(0.3 / sigma)
    expect(gap.good!.low).toBeLessThan(expected + 0.002)
    expect(gap.good!.high).toBeGreaterThan(expected - 0.002)
  })

  it('names the tolerance that brings most of it', () => {
    expect(gap.causes.map((c) => c.id)).toEqual(['a', 'c', 'b'])
    expect(gap.causes[0]!.share).toBeCloseTo(0.09 / 0.14, 12)
  })
})

it('a product spreads by its slopes: rule of products for small tolerances', () => {
  const [area] = spreadOf({
    sizes: [size('width', 20, 0.02), size('height', 10, 0.02)],
    outcome: ([w, h]) => [w! * h!],
    held: [undefined],
    count: 10,
    seed: 1,
  })
  expect(area!.rootSumSquare!.high - 200).toBeCloseTo(200 * Math.hypot(0.02 / 20, 0.02 / 10), 9)
  expect(area!.good).toBeUndefined()
})

it('a part that cannot be made is a bad part, and its figure has no worst case', () => {
  const [one] = spreadOf({
    sizes: [size('wall', 0, 1)],
    outcome: ([w]) => [w! > -0.5 ? w : undefined],
    held: [{ value: -0.4, is: 'least' }],
    count: 2000,
    seed: 2,
  })
  expect(one!.worst).toBeUndefined()
  // A third of the limit is the deviation: −0.4 lies 1.2 of them below the middle.
  expect(Math.abs(one!.good!.share - phi(1.2))).toBeLessThan(0.03)
})

it('the interval of a share is Wilson’s: 0 of 10 is at most 27.8 %, 5 of 10 lies between 23.7 and 76.3 %', () => {
  // Hand calculation from the formula with z = 1.96.
  expect(shareOf(0, 10).high).toBeCloseTo(0.2775, 3)
  expect(shareOf(5, 10).low).toBeCloseTo(0.2366, 3)
  expect(shareOf(5, 10).high).toBeCloseTo(0.7634, 3)
})

it('limits that are no interval and no parts at all are the caller’s mistake', () => {
  const base = { outcome: () => [0], held: [undefined], seed: 1 } as const
  expect(() => spreadOf({ ...base, sizes: [{ id: 'a', low: 1, high: 1 }], count: 1 })).toThrow(RangeError)
  expect(() => spreadOf({ ...base, sizes: [], count: 0 })).toThrow(RangeError)
})

it('a distance that passes through nought has no slope there, and yet its worst case is what each size does alone', () => {
  const [away] = spreadOf({
    sizes: [size('x', 0, 0.2), size('y', 0, 0.1)],
    outcome: ([x, y]) => [Math.abs(x!) + y!],
    held: [undefined],
    count: 10,
    seed: 1,
  })
  expect(away!.worst).toEqual({ low: -0.1, high: expect.closeTo(0.3, 12) })
})

it('a size that may lie anywhere between its limits brings three times the variance of a normal one', () => {
  // Closed forms: T²/3 and T²/9, so 3 : 1; a triangular one T²/6, 1.5 : 1.
  const causes = (distribution: 'uniform' | 'triangular') =>
    spreadOf({
      sizes: [{ ...size('sorted', 1, 0.1), distribution }, size('turned', 2, 0.1)],
      outcome: ([a, b]) => [a! - b!],
      held: [undefined],
      count: 10,
      seed: 1,
    })[0]!.causes
  expect(causes('uniform')).toEqual([
    { id: 'sorted', share: expect.closeTo(0.75, 12) },
    { id: 'turned', share: expect.closeTo(0.25, 12) },
  ])
  expect(causes('triangular')[0]!.share).toBeCloseTo(0.6, 12)
})
