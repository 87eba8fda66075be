import fc from 'fast-check'
import { expect, it } from 'vitest'
import { adviseSpeed, type SpeedAdviceInput } from '../../../src/mechanics/cutting/advised-speed.ts'
import { cuttingSpeedAt, cuttingSpeedRange, spindleSpeedFor } from '../../../src/mechanics/cutting/cutting-speed.ts'
import { problemsOf, workedOut } from './worked-out.ts'

const revolutionsPerMinute = (n: number) => (n * Math.PI) / 30
const metresPerMinute = (v: number) => (v * 1000) / 60

/** 100 mm swing, 70 to 120 m/min: 223 to 382 rev/min. */
const input: SpeedAdviceInput = {
  swing: 100,
  range: { low: metresPerMinute(70), high: metresPerMinute(120) },
  spindle: [95, 180, 270, 430, 620].map(revolutionsPerMinute),
}
const turnsAdvised = (change: Partial<SpeedAdviceInput>) => {
  const { advised, standing } = workedOut(adviseSpeed({ ...input, ...change }))
  return [advised && Math.round((advised.runAt * 30) / Math.PI), standing]
}

it('of the speeds that a spindle has, the nearest not above the high end is advised', () => {
  expect(turnsAdvised({})).toEqual([270, 'in-range'])
  expect(turnsAdvised({ spindle: [...(input.spindle as number[])].reverse() })).toEqual([270, 'in-range'])
  const { advised, nextAbove } = workedOut(adviseSpeed(input))
  // π·100 mm·270/min = 84.8 m/min; the next, 430, would be 135.
  expect(advised!.cuttingSpeed).toBeCloseTo(metresPerMinute(84.823), 1)
  expect(nextAbove!.cuttingSpeed).toBeCloseTo(metresPerMinute(135.088), 1)
})

it('where the steps are too coarse the speed below the range is advised and the one above it named', () => {
  expect(turnsAdvised({ spindle: [95, 180, 430].map(revolutionsPerMinute) })).toEqual([180, 'between-steps'])
})

it('a spindle that cannot turn fast enough is run at its fastest', () => {
  expect(turnsAdvised({ spindle: [95, 180].map(revolutionsPerMinute) })).toEqual([180, 'spindle-too-slow'])
})

it('where even the slowest speed is too fast there is no advice, but a swing that it suits', () => {
  const spindle = [430, 620].map(revolutionsPerMinute)
  const found = workedOut(adviseSpeed({ ...input, spindle }))
  expect(found).toMatchObject({ standing: 'slowest-too-fast', advised: undefined })
  // 120 m/min at 430 rev/min: 88.8 mm.
  expect(found.largestSwing).toBeCloseTo(120_000 / (Math.PI * 430), 9)
  expect(turnsAdvised({ spindle, swing: found.largestSwing })).toEqual([430, 'in-range'])
})

it('a variable drive runs at the high end, or at the end of its own that is nearer', () => {
  const drive = (slowest: number, fastest: number) => ({
    spindle: { slowest: revolutionsPerMinute(slowest), fastest: revolutionsPerMinute(fastest) },
  })
  expect(turnsAdvised(drive(100, 2000))).toEqual([382, 'in-range'])
  expect(workedOut(adviseSpeed({ ...input, ...drive(100, 2000) })).nextAbove).toBeUndefined()
  expect(turnsAdvised(drive(100, 300))).toEqual([300, 'in-range'])
  expect(turnsAdvised(drive(100, 200))).toEqual([200, 'spindle-too-slow'])
  expect(turnsAdvised(drive(400, 2000))).toEqual([undefined, 'slowest-too-fast'])
})

it('the user’s own cutting speed goes before the range and is compared with it', () => {
  expect(turnsAdvised({ own: metresPerMinute(140) })).toEqual([430, 'in-range'])
  expect(turnsAdvised({ own: metresPerMinute(40) })).toEqual([95, 'between-steps'])
  const own = (v: number) => workedOut(adviseSpeed({ ...input, own: metresPerMinute(v) })).own
  expect([own(69), own(70), own(120), own(121)]).toEqual(['below-range', 'in-range', 'in-range', 'above-range'])
  expect(workedOut(adviseSpeed(input)).own).toBeUndefined()
  // A speed of the spindle, asked for by its cutting speed, is found again.
  const exact = cuttingSpeedAt(revolutionsPerMinute(430), 100)
  expect(turnsAdvised({ own: exact })).toEqual([430, 'in-range'])
  // Below the range too: what was asked for is what is wanted.
  expect(turnsAdvised({ own: cuttingSpeedAt(revolutionsPerMinute(95), 100) })).toEqual([95, 'in-range'])
})

const speed = fc.double({ min: 1, max: 500, noNaN: true })

it('no advised speed lies above the range, and the next one up always does', () => {
  fc.assert(
    fc.property(
      fc.array(speed, { minLength: 1, maxLength: 12 }),
      fc.double({ min: 10, max: 400, noNaN: true }),
      (spindle, swing) => {
        const { wanted, advised, nextAbove, standing, largestSwing } = workedOut(
          adviseSpeed({ ...input, spindle, swing }),
        )
        if (advised) {
          expect(advised.runAt).toBeLessThanOrEqual(wanted.high * (1 + 1e-9))
          expect(spindle).toContain(advised.runAt)
          expect(standing === 'in-range').toBe(advised.runAt >= wanted.low * (1 - 1e-9))
        } else expect(Math.min(...spindle)).toBeGreaterThan(wanted.high)
        if (nextAbove) expect(nextAbove.runAt).toBeGreaterThan(wanted.high)
        expect(largestSwing >= swing * (1 - 1e-9)).toBe(advised !== undefined)
      },
    ),
  )
})

it('speed and swing turn into one another and back', () => {
  fc.assert(
    fc.property(speed, fc.double({ min: 1, max: 500, noNaN: true }), (omega, diameter) => {
      expect(spindleSpeedFor(cuttingSpeedAt(omega, diameter), diameter) / omega).toBeCloseTo(1, 12)
    }),
  )
})

it('a spindle without speeds, a swing of nothing and exchanged ends are refused', () => {
  expect(problemsOf(adviseSpeed({ ...input, spindle: [], swing: 0 }))).toEqual([
    ['out-of-range', 'swing'],
    ['missing-key', 'spindle'],
  ])
  expect(problemsOf(adviseSpeed({ ...input, range: { low: 2, high: 1 }, own: 0 }))).toEqual([
    ['out-of-range', 'range.high'],
    ['out-of-range', 'own'],
  ])
  expect(problemsOf(adviseSpeed({ ...input, spindle: { slowest: 9, fastest: 8 } }))).toEqual([
    ['out-of-range', 'spindle.fastest'],
  ])
})

it('a work material without a published speed for the edge has no range', () => {
  const plastic = { name: 'plastic', hssSpeed: { low: 1, high: 2 } }
  expect(workedOut(cuttingSpeedRange(plastic, 'hss'))).toEqual({ low: 1, high: 2 })
  expect(problemsOf(cuttingSpeedRange(plastic, 'carbide'))).toEqual([['not-in-table', 'work']])
})
