import fc from 'fast-check'
import { expect, it } from 'vitest'
import {
  type CuttingForceInput,
  cuttingForce,
  cuttingForceRules,
} from '../../../src/mechanics/cutting/cutting-force.ts'
import { problemsOf, workedOut } from './worked-out.ts'

const degree = Math.PI / 180
const input: CuttingForceInput = {
  work: { name: 'mild-steel', specificForce: 1350, forceExponent: 0.21 },
  bit: 'hss',
  depth: 0.5,
  feed: 0.15,
  noseRadius: 0.8,
  edgeAngle: 80 * degree,
  rake: 6 * degree,
  rules: cuttingForceRules,
}
const forceOf = (change: Partial<CuttingForceInput>) => workedOut(cuttingForce({ ...input, ...change }))

it('half a millimetre off mild steel, worked by hand', () => {
  const force = forceOf({})
  // l = 0.8·acos(1 − 0.5/0.8) = 0.94912; h = 0.075/0.94912 = 0.079021; k_c = 1350·h^−0.21 = 2300.4; ×1.56×0.075.
  expect(force.edge.length).toBeCloseTo(0.94912, 4)
  expect(force.chipThickness).toBeCloseTo(0.07902, 4)
  expect(force.factor).toBeCloseTo(1.56, 12)
  expect(force.main).toBeCloseTo(2300.4 * 1.56 * 0.075, 1)
  expect(force.specific).toBeCloseTo(force.main / 0.075, 9)
  expect(force.basis).toBe('formula')
})

const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const job = fc.record({
  depth: figure(0.05, 3),
  feed: figure(0.02, 0.6),
  noseRadius: figure(0, 3),
  edgeAngle: figure(30 * degree, 100 * degree),
  rake: figure(-20 * degree, 35 * degree),
})

it('force never falls with feed, and rises with it where the chip is thick enough for the formula', () => {
  fc.assert(
    fc.property(job, (cut) => {
      const force = forceOf(cut)
      const more = forceOf({ ...cut, feed: cut.feed * 1.1 })
      expect(more.main).toBeGreaterThanOrEqual(force.main)
      if (force.basis === 'formula') expect(more.main).toBeGreaterThan(force.main)
    }),
  )
})

it('force rises with the depth of cut, with wear and with a harder material, and falls with rake', () => {
  fc.assert(
    fc.property(job, (cut) => {
      const { main } = forceOf(cut)
      expect(forceOf({ ...cut, depth: cut.depth * 1.1 }).main).toBeGreaterThan(main)
      expect(forceOf({ ...cut, rules: { ...cuttingForceRules, wearFactor: 1.4 } }).main).toBeGreaterThan(main)
      expect(forceOf({ ...cut, work: { ...input.work, specificForce: 1500 } }).main).toBeGreaterThan(main)
      expect(forceOf({ ...cut, rake: cut.rake + degree }).main).toBeLessThan(main)
      expect(forceOf({ ...cut, bit: 'carbide' }).main * 1.2).toBeCloseTo(main, 6)
    }),
  )
})

it('ten degrees more rake take 15 % of the table’s force off', () => {
  expect(forceOf({ rake: 16 * degree }).main / forceOf({}).main).toBeCloseTo(0.85, 9)
})

it('thrust is square to the chord of the edge and half the main force', () => {
  fc.assert(
    fc.property(job, (cut) => {
      const { main, radial, axial, edge } = forceOf(cut)
      expect(Math.hypot(radial, axial) / main).toBeCloseTo(0.5, 9)
      expect(radial * edge.alongRadius).toBeCloseTo(axial * cut.depth, 6)
      expect(radial).toBeGreaterThan(0)
    }),
  )
})

it('a light cut on a large nose pushes the head up, a sharp square edge only inwards', () => {
  const light = forceOf({ depth: 0.1, noseRadius: 3, feed: 0.3 })
  expect(light.axial).toBeGreaterThan(3 * light.radial)
  expect(forceOf({ noseRadius: 0, edgeAngle: 90 * degree }).axial).toBeCloseTo(0, 9)
  expect(forceOf({ noseRadius: 0, edgeAngle: 100 * degree }).axial).toBeLessThan(0)
})

it('below the thinnest chip of the formula the force is bounded by it, and joins it without a step', () => {
  const { leastFeed, edge } = forceOf({})
  const at = forceOf({ feed: leastFeed * (1 + 1e-9) })
  const below = forceOf({ feed: leastFeed * 0.5 })
  expect(at.chipThickness).toBeCloseTo(0.05, 9)
  expect(below.basis).toBe('upper-bound')
  expect(below.main).toBeCloseTo(at.main, 4)
  expect(below.main).toBeCloseTo(1350 * 1.56 * 0.05 ** 0.79 * edge.length, 6)
  // Kienzle's line drawn on would promise less.
  const drawnOn = forceOf({ feed: leastFeed * 0.5, rules: { ...cuttingForceRules, chips: { low: 0.001, high: 1 } } })
  expect(drawnOn.main).toBeLessThan(below.main)
})

it('a chip thicker than the formula holds for is refused, with a feed that it does hold for', () => {
  const thick = cuttingForce({ ...input, depth: 3, feed: 1.2 })
  expect(problemsOf(thick)).toEqual([['out-of-range', 'feed']])
  const remedy = thick.ok ? '' : (thick.problems[0]?.remedy ?? '')
  const written = /([\d.]+) mm/.exec(remedy)?.[1] ?? ''
  const feed = Number(written)
  expect(forceOf({ depth: 3, feed: feed * 0.999 }).chipThickness).toBeCloseTo(1, 2)
})

it('a material without a published force has none here either', () => {
  expect(problemsOf(cuttingForce({ ...input, work: { name: 'plastic' } }))).toEqual([['not-in-table', 'work']])
})

it('a feed of nothing, a rake beyond the rule and a depth of nothing are refused', () => {
  expect(problemsOf(cuttingForce({ ...input, feed: 0, rake: 50 * degree, depth: 0 }))).toEqual([
    ['out-of-range', 'feed'],
    ['out-of-range', 'rake'],
    ['out-of-range', 'depth'],
  ])
  const rules = { ...cuttingForceRules, perRake: 2 }
  expect(problemsOf(cuttingForce({ ...input, rake: 45 * degree, rules }))).toEqual([['out-of-range', 'rules.perRake']])
})
