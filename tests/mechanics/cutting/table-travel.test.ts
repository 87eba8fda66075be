import fc from 'fast-check'
import { expect, it } from 'vitest'
import { arcInCut } from '../../../src/mechanics/cutting/arc-in-cut.ts'
import { feedAgainstTable, feedPerTooth, tableSpeed } from '../../../src/mechanics/cutting/feed.ts'
import { onePass, onePassRules } from '../../../src/mechanics/cutting/one-pass.ts'
import { type TableTravelInput, tableTravel } from '../../../src/mechanics/cutting/table-travel.ts'
import { problemsOf, workedOut } from './worked-out.ts'

const input: TableTravelInput = { radius: 50, length: 140, width: 80, offset: 0, gap: 2, tableSpeed: 0.5 }

it('a 100 swing over work of 80, worked by hand on the 3-4-5 triangle', () => {
  const travel = workedOut(tableTravel(input))
  // √(50² − 40²) = 30.
  expect(travel.approach).toBe(52)
  expect(travel.overrunCut).toBeCloseTo(-30, 12)
  expect(travel.travelCut).toBeCloseTo(140 + 52 - 30, 12)
  expect(travel.travelClear).toBe(140 + 52 + 52)
  expect(travel.timeCut).toBeCloseTo(162 / 0.5, 9)
  expect(travel.timeClear).toBe(244 / 0.5)
})

const share = fc.double({ min: 0.02, max: 0.98, noNaN: true })

it('travel agrees with trying where the circle touches the work', () => {
  fc.assert(
    fc.property(share, fc.double({ min: -1, max: 1, noNaN: true }), (wide, side) => {
      const width = 2 * input.radius * wide
      const offset = side * (input.radius - width / 2)
      const travel = workedOut(tableTravel({ ...input, width, offset, gap: 0 }))
      // Second road: points across the work, and how far ahead of the axis the circle stands there.
      const ahead = Array.from({ length: 4001 }, (_, i) => {
        const y = -offset + width * (i / 4000 - 0.5)
        return Math.sqrt(Math.max(0, input.radius ** 2 - y ** 2))
      })
      expect(travel.approach).toBeCloseTo(Math.max(...ahead), 3)
      expect(travel.overrunCut).toBeCloseTo(-Math.min(...ahead), 3)
      expect(tableTravel({ ...input, width, offset: -offset, gap: 0 }).ok).toBe(true)
      const mirrored = workedOut(tableTravel({ ...input, width, offset: -offset, gap: 0 }))
      expect(mirrored.travelCut).toBeCloseTo(travel.travelCut, 9)
      expect(mirrored.travelClear).toBeCloseTo(travel.travelClear, 9)
    }),
  )
})

it('work wider than the swing is not cut in one go', () => {
  expect(problemsOf(tableTravel({ ...input, width: 101 }))).toEqual([['out-of-range', 'width']])
  expect(problemsOf(tableTravel({ ...input, offset: 11 }))).toEqual([['out-of-range', 'width']])
  expect(() => arcInCut(50, 101, 0)).toThrow(RangeError)
})

it('one pass needs a swing 1.1 times the width', () => {
  const passes = (swing: number, width: number) => workedOut(onePass({ swing, width, ...onePassRules }))
  expect(passes(101.2, 92)).toMatchObject({ onePass: true, passes: 1 })
  expect(passes(101.1, 92)).toMatchObject({ onePass: false, passes: 2 })
  expect(passes(50, 100).passes).toBe(3)
  expect(passes(55, 100).passes).toBe(2)
  expect(problemsOf(onePass({ swing: 0, width: 10, overWidth: 0.9 }))).toEqual([
    ['out-of-range', 'swing'],
    ['out-of-range', 'overWidth'],
  ])
})

it('the passes that it counts do cover the width', () => {
  const length = fc.double({ min: 1, max: 500, noNaN: true })
  fc.assert(
    fc.property(length, length, (swing, width) => {
      const { passes, widthPerPass, swingNeeded } = workedOut(onePass({ swing, width, ...onePassRules }))
      expect(passes * widthPerPass).toBeGreaterThanOrEqual(width * (1 - 1e-9))
      expect((passes - 1) * widthPerPass).toBeLessThan(width)
      expect(workedOut(onePass({ swing: swingNeeded, width, ...onePassRules })).onePass).toBe(true)
    }),
  )
})

it('a feed of 0.2 at 300 rev/min moves the table a millimetre a second', () => {
  const turning = (300 * Math.PI) / 30
  expect(tableSpeed(0.2, turning)).toBeCloseTo(1, 12)
  expect(feedPerTooth(1, turning, 1)).toBeCloseTo(0.2, 12)
})

it('a feed is compared with the table where the table has one', () => {
  const work = { feedPerTooth: { low: 0.1, high: 0.4 } }
  expect([0.09, 0.1, 0.4, 0.41].map((feed) => feedAgainstTable(work, feed))).toEqual([
    'below-range',
    'in-range',
    'in-range',
    'above-range',
  ])
  expect(feedAgainstTable({}, 0.1)).toBe('no-table-figure')
})
