import { describe, expect, it } from 'vitest'
import { balanceGrade, balanceGrades, permissibleUnbalance } from '../../src/mechanics/balance/balance-grade.ts'
import { type MassItem, staticBalance } from '../../src/mechanics/balance/static-balance.ts'
import { inGramMillimetres, unbalanceForce } from '../../src/mechanics/balance/unbalance-force.ts'
import { neverExceedRules } from '../../src/mechanics/speed/never-exceed.ts'
import { workedOut } from '../mechanics/cutting/worked-out.ts'

const degree = Math.PI / 180
const turning = (revolutionsPerMinute: number) => (revolutionsPerMinute * Math.PI) / 30

describe('balance grades', () => {
  it('2 kg at G 6.3 and 10 000 rev/min: 12 g·mm, 6 g·mm/kg (tooling catalogue, technical page)', () => {
    const permitted = inGramMillimetres(permissibleUnbalance(6.3, 2, turning(10_000)))
    expect(Math.abs(permitted / 12 - 1)).toBeLessThan(0.01)
    expect(Math.abs(permitted / 2 / 6 - 1)).toBeLessThan(0.01)
    // The page's U = 9549·G·m/n.
    expect(permitted / ((9549 * 6.3 * 2) / 10_000)).toBeCloseTo(1, 4)
  })

  it('3600 kg at G 2.5 and 3000 rev/min: about 8 µm and 30 000 g·mm (annex of ISO 21940-11, from memory)', () => {
    const permitted = inGramMillimetres(permissibleUnbalance(2.5, 3600, turning(3000)))
    expect(Math.abs(permitted / 28_647 - 1)).toBeLessThan(0.001)
    expect(Math.abs(permitted / 30_000 - 1)).toBeLessThan(0.05)
    const eccentricity = permitted / 3600 / 1000
    expect(eccentricity * 1000).toBeCloseTo(7.96, 2)
    expect(balanceGrade(eccentricity, turning(3000))).toBeCloseTo(2.5, 12)
  })

  it('the grades of machine-tool drives, general machinery and grinding drives are in the list (public table of grades)', () => {
    for (const grade of [2.5, 6.3, 1]) expect(balanceGrades).toContain(grade)
  })
})

describe('forces of turning masses', () => {
  it('four masses leave 57.9 lb at 24 in, 23.28° (*The Theory of Machines*, chapter 14, example 2, p. 491)', () => {
    const rows = [
      [200, 9, 0],
      [300, 7, 45],
      [240, 10, 120],
      [260, 12, 255],
    ] as const
    const tool = workedOut(
      staticBalance(
        rows.map(
          ([mass, r, at]): MassItem => ({ mass, centroid: [r * Math.cos(at * degree), r * Math.sin(at * degree), 0] }),
        ),
      ),
    )
    expect(Math.abs(tool.amount / 24 / 57.9 - 1)).toBeLessThan(0.001)
    expect(Math.abs(tool.heavySide! / degree - 23.28)).toBeLessThan(0.02)
  })

  it('5 kg on 1.5 m at 2 rad/s: 30 N (*Engineering Mechanics*, example 28.1, p. 574)', () => {
    expect(unbalanceForce(5 * 1500, 2)).toBe(30)
  })

  it('20 g on 30 mm at 1000 rev/min: 6.580 N (own)', () => {
    expect(unbalanceForce(0.02 * 30, turning(1000))).toBeCloseTo(6.58, 3)
  })
})

it('a proof run counts for a little less than 1/1.6 of it, the factor of ISO 15641 (from memory)', () => {
  expect(neverExceedRules.proofShare).toBeLessThan(1 / 1.6)
  expect(neverExceedRules.proofShare).toBeGreaterThan(0.95 / 1.6)
})
