import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { AdvisedSpeed } from '../../../src/mechanics/cutting/advised-speed.ts'
import {
  exceeds,
  type NeverExceedInput,
  type NeverExceedSpeed,
  neverExceed,
  neverExceedRules,
  usualTipSpeed,
} from '../../../src/mechanics/speed/never-exceed.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

const input: NeverExceedInput = {
  bitHold: 700,
  joint: 650,
  unbalanceForce: 150,
  spindleMaximum: 230,
  swing: 120,
  tipSpeed: usualTipSpeed,
  proofRun: undefined,
  rules: neverExceedRules,
}

it('eight tenths of the lowest limit, and the limit named', () => {
  const speed = workedOut(neverExceed(input))
  expect(speed.notAbove).toBeCloseTo(120, 12)
  expect(speed.cause).toBe('unbalance-force')
})

it('every limit is shown, in one order, whether it counts or not', () => {
  const { limits } = workedOut(neverExceed({ ...input, bitHold: undefined, proofRun: 200 }))
  expect(limits.map(({ name }) => name)).toEqual([
    'bit-hold',
    'joint',
    'unbalance-force',
    'spindle-maximum',
    'tip-speed',
    'proof-run',
  ])
  expect(limits.map(({ at }) => at)).toEqual([undefined, 650, 150, 230, 25_000 / 60, 200])
  expect(limits[5]!.counted).toBeCloseTo(120, 12)
})

it('six tenths of a recorded proof run count, and nothing where none is recorded', () => {
  const proved = workedOut(neverExceed({ ...input, proofRun: 200 }))
  expect(proved.cause).toBe('proof-run')
  expect(proved.notAbove).toBeCloseTo(0.8 * 0.6 * 200, 12)
  // A proof run faster than the tool will ever turn proves no more than the other limits allow.
  expect(workedOut(neverExceed({ ...input, proofRun: 2000 })).notAbove).toBeCloseTo(120, 12)
})

it('25 m/s at the tip of a 400 mm swing is 1194 rev/min', () => {
  const speed = workedOut(neverExceed({ ...input, swing: 400, unbalanceForce: undefined }))
  expect(speed.cause).toBe('tip-speed')
  // 25 m/s / (π·0.4 m) = 19.894 turns a second.
  expect((speed.limits[4]!.at! * 60) / (2 * Math.PI)).toBeCloseTo(1193.66, 1)
})

it('a bit that does not hold at rest must not run', () => {
  expect(workedOut(neverExceed({ ...input, bitHold: 0 }))).toMatchObject({ notAbove: 0, cause: 'bit-hold' })
})

const speed = fc.double({ min: 1, max: 1000, noNaN: true })
const perhaps = fc.option(speed, { nil: undefined })

it('it never lies above eight tenths of any limit, and one limit less never lowers it', () => {
  fc.assert(
    fc.property(
      perhaps,
      perhaps,
      perhaps,
      speed,
      perhaps,
      (bitHold, joint, unbalanceForce, spindleMaximum, proofRun) => {
        const job = { ...input, bitHold, joint, unbalanceForce, spindleMaximum, proofRun }
        const { notAbove, cause, limits } = workedOut(neverExceed(job))
        const counted = limits.flatMap((limit) => (limit.counted === undefined ? [] : [limit.counted]))
        for (const limit of counted) expect(notAbove).toBeLessThanOrEqual(0.8 * limit)
        expect(notAbove).toBeCloseTo(0.8 * limits.find(({ name }) => name === cause)!.counted!, 9)
        for (const without of ['bitHold', 'joint', 'unbalanceForce', 'proofRun'] as const) {
          expect(workedOut(neverExceed({ ...job, [without]: undefined })).notAbove).toBeGreaterThanOrEqual(notAbove)
        }
      },
    ),
  )
})

it('of equal limits the first in the list is named', () => {
  expect(workedOut(neverExceed({ ...input, joint: 150 })).cause).toBe('joint')
})

it('an advised speed is compared with the safety limit and neither can stand for the other', () => {
  const limit = workedOut(neverExceed(input))
  const advised: AdvisedSpeed = { kind: 'advised', runAt: 120.1, cuttingSpeed: 7206 }
  expect(exceeds(advised, limit)).toBe(true)
  expect(exceeds({ ...advised, runAt: 119.9 }, limit)).toBe(false)
  // The compiler refuses the exchange: these lines fail the type check when it does not.
  // @ts-expect-error a safety limit is no advice
  const wrongAdvice: AdvisedSpeed = limit
  // @ts-expect-error advice is no safety limit
  const wrongLimit: NeverExceedSpeed = advised
  expect([wrongAdvice.kind, wrongLimit.kind]).toEqual(['never-exceed', 'advised'])
})

it('negative limits, a swing of nothing and shares above one are refused', () => {
  const bad = neverExceed({ ...input, bitHold: -1, swing: 0, proofRun: 0, rules: { share: 1.1, proofShare: 0 } })
  expect(problemsOf(bad)).toEqual([
    ['out-of-range', 'bitHold'],
    ['out-of-range', 'swing'],
    ['out-of-range', 'proofRun'],
    ['out-of-range', 'rules.share'],
    ['out-of-range', 'rules.proofShare'],
  ])
})
