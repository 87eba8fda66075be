import fc from 'fast-check'
import { expect, it } from 'vitest'
import { screwForce, screwForceRules } from '../../../src/mechanics/clamping/screw-force.ts'
import { tightening } from '../../../src/mechanics/clamping/tightening.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

const positive = fc.double({ min: 0.1, max: 1e5, noNaN: true })

it('the force of a screw rises in step with torque and falls with its diameter', () => {
  fc.assert(
    fc.property(positive, fc.double({ min: 1, max: 50, noNaN: true }), (torque, majorDiameter) => {
      const of = (t: number, d: number) =>
        workedOut(screwForce({ torque: t, majorDiameter: d, ...screwForceRules })).nominal
      expect(of(2 * torque, majorDiameter) / of(torque, majorDiameter)).toBeCloseTo(2, 12)
      expect(of(torque, 2 * majorDiameter) / of(torque, majorDiameter)).toBeCloseTo(0.5, 12)
    }),
  )
})

it('an M6 screw at 7.2 N·m pushes with 6 kN, and with 3.9 kN when a third is lost', () => {
  // 7200 N·mm / (0.2 × 6 mm) = 6000 N, worked by hand.
  const force = workedOut(screwForce({ torque: 7200, majorDiameter: 6, ...screwForceRules }))
  expect(force.nominal).toBeCloseTo(6000, 9)
  expect(force.least).toBeCloseTo(3900, 9)
  expect(force.most).toBeCloseTo(7500, 9)
})

it('a screw that is not tightened, or without friction in its thread, has no force to compute', () => {
  const none = screwForce({ torque: 0, majorDiameter: 6, torqueFactor: 0, shortfall: 1, excess: -0.1 })
  expect(problemsOf(none)).toEqual([
    ['out-of-range', 'torque'],
    ['out-of-range', 'torqueFactor'],
    ['out-of-range', 'shortfall'],
    ['out-of-range', 'excess'],
  ])
  expect(() => screwForce({ torque: Number.NaN, majorDiameter: 6, ...screwForceRules })).toThrow(RangeError)
})

it('the table’s torque is taken where none is chosen, and a choice above it is called that', () => {
  const m6 = { name: 'M6', seatingTorque: 7200 }
  expect(workedOut(tightening(m6))).toEqual({ torque: 7200, largest: 7200, standing: 'within-table' })
  expect(workedOut(tightening(m6, 5000)).standing).toBe('within-table')
  expect(workedOut(tightening(m6, 7200)).standing).toBe('within-table')
  expect(workedOut(tightening(m6, 7201))).toEqual({ torque: 7201, largest: 7200, standing: 'above-table' })
  expect(problemsOf(tightening(m6, 0))).toEqual([['out-of-range', 'torque']])
})

it('a screw without a published torque needs one of the shop’s own', () => {
  const m12 = { name: 'M12' }
  expect(problemsOf(tightening(m12))).toEqual([['not-in-table', 'torque']])
  expect(workedOut(tightening(m12, 40_000)).standing).toBe('no-table-figure')
})
