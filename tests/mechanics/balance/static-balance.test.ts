import fc from 'fast-check'
import { expect, it } from 'vitest'
import {
  balanceGrade,
  balanceGrades,
  gradeKept,
  permissibleUnbalance,
} from '../../../src/mechanics/balance/balance-grade.ts'
import { type MassItem, staticBalance } from '../../../src/mechanics/balance/static-balance.ts'
import {
  inGramMillimetres,
  speedForForce,
  unbalanceForce,
  unbalanceForForce,
} from '../../../src/mechanics/balance/unbalance-force.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const items = fc.array(
  fc
    .record({ mass: figure(0.01, 2), x: figure(-60, 60), y: figure(-60, 60), z: figure(-80, 0) })
    .map(({ mass, x, y, z }): MassItem => ({ mass, centroid: [x, y, z] })),
  { minLength: 1, maxLength: 6 },
)

it('a head on the axis and a bit beside it, worked by hand', () => {
  const tool = workedOut(
    staticBalance([
      { mass: 0.95, centroid: [0, 0, -20] },
      { mass: 0.05, centroid: [30, -40, -40] },
    ]),
  )
  // 0.05·50 = 2.5 kg·mm, that is 2500 g·mm; over 1 kg an eccentricity of 2.5 mm.
  expect(tool.mass).toBeCloseTo(1, 12)
  expect(tool.amount).toBeCloseTo(2.5, 12)
  expect(inGramMillimetres(tool.amount)).toBeCloseTo(2500, 9)
  expect(tool.eccentricity).toBeCloseTo(2.5, 12)
  expect(tool.centroid[2]).toBeCloseTo(-21, 12)
  expect(tool.heavySide).toBeCloseTo(Math.atan2(-4, 3), 12)
})

it('taking the same metal away again restores the balance', () => {
  fc.assert(
    fc.property(items, items, (tool, added) => {
      const before = workedOut(staticBalance(tool))
      const removed = added.map(({ mass, centroid }): MassItem => ({ mass: -mass, centroid }))
      const after = workedOut(staticBalance([...tool, ...added, ...removed]))
      expect(after.unbalance[0]).toBeCloseTo(before.unbalance[0], 9)
      expect(after.unbalance[1]).toBeCloseTo(before.unbalance[1], 9)
      expect(after.mass).toBeCloseTo(before.mass, 9)
    }),
  )
})

it('the mirrored hand has the same mass and unbalance, heavy on the mirrored side', () => {
  fc.assert(
    fc.property(items, (tool) => {
      const mirrored = tool.map(({ mass, centroid: [x, y, z] }): MassItem => ({ mass, centroid: [x, -y, z] }))
      const [one, other] = [workedOut(staticBalance(tool)), workedOut(staticBalance(mirrored))]
      expect(other.amount).toBe(one.amount)
      expect(other.mass).toBe(one.mass)
      expect(other.unbalance[0]).toBe(one.unbalance[0])
      expect(other.unbalance[1]).toBeCloseTo(-one.unbalance[1], 12)
      expect(Math.abs(other.heavySide ?? 0)).toBe(Math.abs(one.heavySide ?? 0))
    }),
  )
})

it('turning the tool turns the heavy side and changes nothing else', () => {
  fc.assert(
    fc.property(items, figure(0, 3), (tool, turn) => {
      const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
      const turned = tool.map(
        ({ mass, centroid: [x, y, z] }): MassItem => ({ mass, centroid: [cos * x - sin * y, sin * x + cos * y, z] }),
      )
      const [one, other] = [workedOut(staticBalance(tool)), workedOut(staticBalance(turned))]
      expect(other.amount).toBeCloseTo(one.amount, 9)
      expect(other.unbalance[0]).toBeCloseTo(cos * one.unbalance[0] - sin * one.unbalance[1], 9)
    }),
  )
})

it('a tool in balance has no heavy side, and one that weighs nothing is refused', () => {
  const pair = workedOut(staticBalance([20, -20].map((x): MassItem => ({ mass: 1, centroid: [x, 0, 0] }))))
  expect(pair).toMatchObject({ amount: 0, eccentricity: 0, heavySide: undefined })
  expect(problemsOf(staticBalance([]))).toEqual([['out-of-range', 'mass']])
  expect(problemsOf(staticBalance([{ mass: -1, centroid: [0, 0, 0] }]))).toEqual([['out-of-range', 'mass']])
  expect(() => staticBalance([{ mass: 1, centroid: [Number.NaN, 0, 0] }])).toThrow(RangeError)
})

it('force, speed and unbalance turn into one another', () => {
  fc.assert(
    fc.property(figure(0.01, 20), figure(5, 300), (unbalance, speed) => {
      const force = unbalanceForce(unbalance, speed)
      expect(speedForForce(unbalance, force)! / speed).toBeCloseTo(1, 12)
      expect(unbalanceForForce(force, speed) / unbalance).toBeCloseTo(1, 12)
      expect(unbalanceForce(unbalance, 2 * speed) / force).toBeCloseTo(4, 12)
    }),
  )
  expect(speedForForce(0, 25)).toBeUndefined()
})

it('the grade reported is the finest that the tool keeps, and none beyond the coarsest', () => {
  for (const grade of balanceGrades) expect(gradeKept(grade)).toBe(grade)
  expect(gradeKept(6.31)).toBe(16)
  expect(gradeKept(0)).toBe(0.4)
  expect(gradeKept(4001)).toBeUndefined()
  // The unbalance that a grade permits is an eccentricity that runs at just that grade.
  expect(balanceGrade(permissibleUnbalance(6.3, 2, 100) / 2, 100)).toBeCloseTo(6.3, 12)
})
