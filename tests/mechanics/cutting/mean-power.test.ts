import fc from 'fast-check'
import { expect, it } from 'vitest'
import { cuttingForce, cuttingForceRules } from '../../../src/mechanics/cutting/cutting-force.ts'
import { meanPower } from '../../../src/mechanics/cutting/mean-power.ts'
import { powerOfForce } from '../../../src/mechanics/cutting/spindle-load.ts'
import { problemsOf, workedOut } from './worked-out.ts'

const [depth, feed, radius, speed] = [0.5, 0.2, 50, 30]
const degree = Math.PI / 180
const forceWith = (forceExponent: number, low: number) =>
  workedOut(
    cuttingForce({
      work: { name: 'mild-steel', specificForce: 1350, forceExponent },
      bit: 'hss',
      depth,
      feed,
      noseRadius: 0.8,
      edgeAngle: 80 * degree,
      rake: 0,
      rules: { ...cuttingForceRules, chips: { low, high: 1 } },
    }),
  )
const job = { depth, feed, radius, width: 90, offset: 0, speed }

/** Second road: the chip's own force at every angle of the arc, summed over a turn. */
function integrated(force: ReturnType<typeof forceWith>, width: number, offset: number): number {
  const [from, to] = [-1, 1].map((side) => Math.asin((side * width) / 2 / radius - offset / radius)) as [number, number]
  const steps = 4000
  let work = 0
  for (let i = 0; i < steps; i++) {
    const angle = from + ((i + 0.5) * (to - from)) / steps
    const chip = force.chipThickness * Math.cos(angle)
    const tangential = force.unitForce * chip ** (1 - force.exponent) * force.edge.length
    work += (tangential * radius * (to - from)) / steps
  }
  return (work * speed) / (2 * Math.PI) / 1000
}

const width = fc.double({ min: 5, max: 99, noNaN: true })

it('mean power agrees with the integral of the chip force over the arc, and is never below it', () => {
  fc.assert(
    fc.property(
      width,
      fc.double({ min: -1, max: 1, noNaN: true }),
      fc.double({ min: 0.15, max: 0.28, noNaN: true }),
      (width, side, exponent) => {
        const offset = side * (radius - width / 2) * 0.99
        const force = forceWith(exponent, 1e-6)
        const ratio = workedOut(meanPower({ ...job, force, width, offset })).power / integrated(force, width, offset)
        expect(ratio).toBeGreaterThan(1 - 1e-6)
        expect(ratio).toBeLessThan(1.034)
      },
    ),
  )
})

it('with the swing 1.1 times the width the two differ by less than 0.6 %', () => {
  const force = forceWith(0.28, 1e-6)
  const { power } = workedOut(meanPower({ ...job, force, width: 100 / 1.1 }))
  expect(power / integrated(force, 100 / 1.1, 0) - 1).toBeLessThan(0.006)
})

it('a specific force that does not depend on the chip gives metal removed times it, exactly', () => {
  const force = forceWith(1e-12, 1e-6)
  const { power, removal } = workedOut(meanPower({ ...job, force }))
  expect(removal).toBeCloseTo((depth * 90 * feed * speed) / (2 * Math.PI), 9)
  expect(power).toBeCloseTo((removal * force.unitForce) / 1000, 6)
})

it('where the mean chip is too thin the power is bounded, without a step', () => {
  const force = forceWith(0.21, 0.05)
  const { meanChip } = workedOut(meanPower({ ...job, force }))
  const at = (low: number) => workedOut(meanPower({ ...job, force: { ...force, chips: { low, high: 1 } } }))
  expect(at(meanChip * 0.999).basis).toBe('formula')
  expect(at(meanChip * 1.001).basis).toBe('upper-bound')
  expect(at(meanChip * 1.000001).power / at(meanChip * 0.999999).power).toBeCloseTo(1, 5)
  // The thinnest chip's force, unitForce·h^(1 − m)·l, at the speed of the tip for as long as the bit cuts.
  const low = 2 * meanChip
  const bound = force.unitForce * low ** 0.79 * force.edge.length * speed * radius * at(low).shareOfTurn
  expect(at(low).power).toBeCloseTo(bound / 1000, 9)
})

it('the bit cuts for less than half the turn, and mean power stays below the peak by at least that share', () => {
  const force = forceWith(0.21, 0.05)
  const mean = workedOut(meanPower({ ...job, force }))
  // 2·asin(0.9)/2π
  expect(mean.shareOfTurn).toBeCloseTo(Math.asin(0.9) / Math.PI, 12)
  expect(mean.power).toBeLessThan(mean.shareOfTurn * powerOfForce(force.main, speed * radius))
})

it('the mirrored path takes the same power', () => {
  const force = forceWith(0.21, 0.05)
  const side = (offset: number) => workedOut(meanPower({ ...job, force, width: 60, offset }))
  expect(side(15).power).toBeCloseTo(side(-15).power, 9)
})

it('work that the swing does not cover is refused', () => {
  const force = forceWith(0.21, 0.05)
  expect(problemsOf(meanPower({ ...job, force, width: 101 }))).toEqual([['out-of-range', 'width']])
  expect(problemsOf(meanPower({ ...job, force, offset: 6 }))).toEqual([['out-of-range', 'width']])
  expect(problemsOf(meanPower({ ...job, force, offset: 60, speed: 0 }))).toEqual([
    ['out-of-range', 'width'],
    ['out-of-range', 'speed'],
  ])
})
