import fc from 'fast-check'
import { expect, it } from 'vitest'
import { largestLeanFor, leanFromReading, type TramInput, tram } from '../../../src/mechanics/finish/tram.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

const degree = Math.PI / 180
const input: TramInput = { along: 0.1 * degree, across: 0.05 * degree, radius: 50, width: 80, stepOver: 70 }
const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true })

it('a tenth of a degree over a width of 80 with a 100 swing, worked by hand', () => {
  const lean = workedOut(tram(input))
  // 50 − √(50² − 40²) = 20; sin 0.1° = 0.00174533.
  expect(lean.dish).toBeCloseTo(20 * 0.00174533, 7)
  expect(lean.slope).toBeCloseTo(80 * 0.000872665, 7)
  expect(lean.step).toBeCloseTo(70 * 0.000872665, 7)
})

it('the dish agrees with the lowest point that the leaning circle passes over at each place', () => {
  fc.assert(
    fc.property(figure(-1 * degree, 1 * degree), figure(0.1, 0.98), (along, share) => {
      const width = 2 * input.radius * share
      // Second road: height of the leaning circle at y is ±√(R² − y²)·sin θ; the feed brings both over every place.
      const lowestAt = (y: number) => {
        const ahead = Math.sqrt(input.radius ** 2 - y ** 2) * Math.sin(along)
        return Math.min(ahead, -ahead)
      }
      const places = Array.from({ length: 201 }, (_, i) => lowestAt(width * (i / 200 - 0.5)))
      const hollow = Math.max(...places) - Math.min(...places)
      expect(workedOut(tram({ ...input, along, width })).dish).toBeCloseTo(hollow, 9)
    }),
  )
})

it('which way the spindle leans does not matter, and a true spindle leaves a plane', () => {
  expect(tram({ ...input, along: -input.along, across: -input.across })).toEqual(tram(input))
  expect(workedOut(tram({ ...input, along: 0, across: 0 }))).toEqual({ dish: 0, slope: 0, step: 0 })
})

it('the dish falls with a larger swing and grows with width and lean', () => {
  fc.assert(
    fc.property(figure(0.001, 0.02), figure(5, 95), (along, width) => {
      const { dish } = workedOut(tram({ ...input, along, width }))
      expect(workedOut(tram({ ...input, along, width, radius: 60 })).dish).toBeLessThan(dish)
      expect(workedOut(tram({ ...input, along: along * 1.1, width })).dish).toBeGreaterThan(dish)
      expect(workedOut(tram({ ...input, along, width: width * 1.05 })).dish).toBeGreaterThan(dish)
    }),
  )
})

it('the largest lean for a dish leaves just that dish', () => {
  fc.assert(
    fc.property(figure(0.001, 0.2), figure(20, 100), (dish, width) => {
      const along = workedOut(largestLeanFor(dish, 50, width))!
      expect(workedOut(tram({ ...input, along, width })).dish / dish).toBeCloseTo(1, 9)
    }),
  )
  expect(workedOut(largestLeanFor(1, 50, 2))).toBeUndefined()
})

it('an indicator that reads 0.02 over 200 shows a lean of a ten-thousandth', () => {
  expect(leanFromReading(0.02, 200)).toBeCloseTo(1e-4, 12)
  expect(leanFromReading(-0.02, 200)).toBeCloseTo(-1e-4, 12)
})

it('a width beyond the swing is refused', () => {
  expect(problemsOf(tram({ ...input, width: 101, along: 1 }))).toEqual([
    ['out-of-range', 'along'],
    ['out-of-range', 'width'],
  ])
  expect(problemsOf(largestLeanFor(0, 50, 101))).toEqual([
    ['out-of-range', 'dish'],
    ['out-of-range', 'width'],
  ])
})
