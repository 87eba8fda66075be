import { describe, expect, it } from 'vitest'
import { variance, variate } from '../../../src/mechanics/uncertainty/distribution.ts'
import { normal, uniformNumbers, wholeNumbers } from '../../../src/mechanics/uncertainty/random.ts'

const draw = <T>(count: number, next: () => T): T[] => Array.from({ length: count }, next)
const normalNumbers = (seed: number) => {
  const next = uniformNumbers(seed)
  return () => normal(next)
}
const moment = (values: readonly number[], k: number) => values.reduce((sum, v) => sum + v ** k, 0) / values.length

describe('the numbers of a simulation', () => {
  it('are those of the Mersenne Twister, by the standard that gives its 10 000th', () => {
    // ISO/IEC 14882 (C++), header random: the 10 000th number of a default mt19937, seed 5489, is 4123659995.
    // The others were printed by a compiler's own std::mt19937.
    expect(draw(10_000, wholeNumbers(5489)).at(-1)).toBe(4123659995)
    expect(draw(5, wholeNumbers(5489))).toEqual([3499211612, 581869302, 3890346734, 3586334585, 545404204])
    const run = draw(10_000, wholeNumbers(417))
    expect([...run.slice(0, 3), run.at(-1)]).toEqual([81508979, 3591353675, 4237048275, 3032351226])
    expect(draw(3, wholeNumbers(1))).toEqual([1791095845, 4282876139, 3093770124])
  })

  it('are the same for the same seed, other for another, never 0 and never 1', () => {
    expect(draw(5, uniformNumbers(1))).toEqual(draw(5, uniformNumbers(1)))
    expect(draw(5, uniformNumbers(1))).not.toEqual(draw(5, uniformNumbers(2)))
    const values = draw(20_000, uniformNumbers(3))
    expect(Math.min(...values)).toBeGreaterThan(0)
    expect(Math.max(...values)).toBeLessThan(1)
    const tenths = new Array<number>(10).fill(0)
    for (const v of values) tenths[Math.floor(v * 10)]!++
    // Chi-square with 9 degrees of freedom: 27.9 is passed once in a thousand.
    expect(tenths.reduce((sum, n) => sum + (n - 2000) ** 2 / 2000, 0)).toBeLessThan(27.9)
  })

  it('are normal with the moments 0, 1, 0, 3 and 15, as close as 200 000 of them can tell', () => {
    const count = 200_000
    const values = draw(count, normalNumbers(11))
    // Four standard errors; the variance of the k-th power is the 2k-th moment less the square of the k-th: 1, 2, 15, 96, 10 170.
    for (const [k, expected, spread] of [
      [1, 0, 1],
      [2, 1, 2],
      [3, 0, 15],
      [4, 3, 96],
      [6, 15, 10_170],
    ] as const) {
      expect(Math.abs(moment(values, k) - expected), `moment ${k}`).toBeLessThan(4 * Math.sqrt(spread / count))
    }
  })

  it('lie as often within one, two and three deviations as the tables of the normal distribution say', () => {
    const count = 200_000
    const values = draw(count, normalNumbers(12))
    // Φ of any statistics table: 68.269, 95.450 and 99.730 %.
    for (const [within, share] of [
      [0.5, 0.382925],
      [1, 0.682689],
      [1.5, 0.866386],
      [2, 0.9545],
      [3, 0.9973],
    ] as const) {
      const found = values.filter((v) => Math.abs(v) < within).length / count
      expect(Math.abs(found - share), `${within}`).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / count))
    }
    // 0.0063 % lie beyond 4: 13 of these, and no sum of twelve uniform numbers would have so many.
    const beyond = values.filter((v) => Math.abs(v) > 4).length
    expect(Math.abs(beyond - 12.7)).toBeLessThan(4 * Math.sqrt(12.7))
  })

  it('are the same to the last digit on any engine: a fixed seed gives fixed normal numbers', () => {
    // Every one a whole multiple of 2⁻³³, for nothing but a uniform number and a whole one is added.
    for (const v of draw(1000, normalNumbers(5489))) expect(Number.isInteger(v * 2 ** 33)).toBe(true)
  })
})

describe('a distribution between the limits −1 and 1', () => {
  it.each(['normal', 'uniform', 'triangular'] as const)(
    '%s has the mean 0 and its closed form of a variance',
    (name) => {
      const count = 100_000
      const next = uniformNumbers(7)
      const values = draw(count, () => variate(name, next))
      expect(Math.abs(moment(values, 1))).toBeLessThan(4 * Math.sqrt(variance[name] / count))
      expect(Math.abs(moment(values, 2) / variance[name] - 1)).toBeLessThan(4 * Math.sqrt(2 / count))
      if (name !== 'normal') expect(Math.max(...values.map(Math.abs))).toBeLessThanOrEqual(1)
    },
  )

  it('a sum of uniform ones is distributed as Irwin and Hall say', () => {
    // Three uniform numbers from 0 to 1: P(sum < 1) = 1/6, P(sum < 1.5) = 1/2, P(sum < 2) = 5/6 (volumes in the cube).
    const next = uniformNumbers(8)
    const sums = draw(60_000, () => [0, 0, 0].reduce((sum) => sum + (variate('uniform', next) + 1) / 2, 0))
    for (const [below, share] of [
      [1, 1 / 6],
      [1.5, 1 / 2],
      [2, 5 / 6],
    ] as const) {
      const found = sums.filter((v) => v < below).length / sums.length
      expect(Math.abs(found - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / sums.length))
    }
  })
})
