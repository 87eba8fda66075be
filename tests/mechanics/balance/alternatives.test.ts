import fc from 'fast-check'
import { expect, it } from 'vitest'
import { counterMass } from '../../../src/mechanics/balance/counter-mass.ts'
import { lessOverhang } from '../../../src/mechanics/balance/less-overhang.ts'
import { type MassItem, staticBalance } from '../../../src/mechanics/balance/static-balance.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const head = fc.record({ x: figure(-2, 2), y: figure(-2, 2) })

it('the bit pushed in by the answer leaves the aim, when the tool is weighed again', () => {
  fc.assert(
    fc.property(head, figure(0, 0.5), figure(0.2, 1), figure(5, 40), ({ x, y }, faceAngle, aim, reach) => {
      const bitMass = 0.06
      const weighed = (less: number) =>
        workedOut(
          staticBalance([
            { mass: 1, centroid: [x, y, -20] },
            { mass: bitMass, centroid: [(reach - less) * Math.cos(faceAngle), 2, -40] },
          ]),
        )
      const { unbalance, amount } = weighed(0)
      const answer = workedOut(lessOverhang({ unbalance, aim, bitMass, faceAngle, most: 30 }))
      expect(weighed(answer.less).amount).toBeCloseTo(answer.remains, 9)
      expect(answer.less).toBeLessThanOrEqual(30)
      if (answer.kind === 'not-needed') expect(amount).toBeLessThanOrEqual(aim)
      if (answer.kind === 'reaches') expect(answer.remains).toBeCloseTo(aim, 6)
      if (answer.kind === 'cannot') {
        // No setting within reach does better.
        const others = Array.from({ length: 61 }, (_, i) => weighed(i / 2).amount)
        expect(Math.min(...others)).toBeGreaterThanOrEqual(answer.remains - 1e-9)
        expect(answer.remains).toBeGreaterThan(aim - 1e-9)
      }
    }),
  )
})

it('pushing in a 100 g bit on a level face by 10 takes a kilogram-millimetre out', () => {
  const answer = workedOut(lessOverhang({ unbalance: [2, 0], aim: 1, bitMass: 0.1, faceAngle: 0, most: 30 }))
  expect(answer.kind).toBe('reaches')
  expect(answer.less).toBeCloseTo(10, 9)
})

it('what lies beside the bit’s own line cannot be taken out by pushing it in', () => {
  const answer = workedOut(lessOverhang({ unbalance: [1, 0.5], aim: 0.4, bitMass: 0.1, faceAngle: 0, most: 30 }))
  expect(answer).toMatchObject({ kind: 'cannot', remains: 0.5 })
  expect(answer.less).toBeCloseTo(10, 9)
  expect(workedOut(lessOverhang({ unbalance: [-1, 0], aim: 0.4, bitMass: 0.1, faceAngle: 0, most: 30 })).less).toBe(0)
})

it('the counter-mass leaves the aim, when the tool is weighed again', () => {
  fc.assert(
    fc.property(head, figure(0, 1), figure(5, 40), ({ x, y }, aim, radius) => {
      const tool: MassItem = { mass: 1, centroid: [x, y, 0] }
      const counter = workedOut(counterMass({ unbalance: [x, y], aim, radius, density: 7850 }))
      const after = workedOut(staticBalance([tool, { mass: counter.mass, centroid: [...counter.centroid, 0] }]))
      expect(after.amount).toBeCloseTo(Math.min(aim, Math.hypot(x, y)), 9)
      expect(counter.volume * 7850e-9).toBeCloseTo(counter.mass, 12)
    }),
  )
})

it('a tool in balance needs no counter-mass', () => {
  expect(workedOut(counterMass({ unbalance: [0, 0], aim: 0, radius: 20, density: 7850 })).mass).toBe(0)
})

it('a bit or a counter-mass of nothing is refused', () => {
  expect(problemsOf(lessOverhang({ unbalance: [1, 0], aim: -1, bitMass: 0, faceAngle: 0, most: -1 }))).toEqual([
    ['out-of-range', 'aim'],
    ['out-of-range', 'bitMass'],
    ['out-of-range', 'most'],
  ])
  expect(problemsOf(counterMass({ unbalance: [1, 0], aim: 0, radius: 0, density: 0 }))).toEqual([
    ['out-of-range', 'radius'],
    ['out-of-range', 'density'],
  ])
})
