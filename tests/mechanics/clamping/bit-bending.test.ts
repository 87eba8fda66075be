import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type BitBendingInput, bitBending, bitBendingRules } from '../../../src/mechanics/clamping/bit-bending.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

const input: BitBendingInput = {
  cuttingForce: 300,
  axialForce: 100,
  overhang: 30,
  width: 10,
  height: 12,
  youngsModulus: 190_000,
  ...bitBendingRules,
}

it('a bit of 10 by 12, 30 out, under 300 N, worked by hand', () => {
  const bending = workedOut(bitBending(input))
  // 6·300·30/(12·10²) = 45 MPa; 6·100·30/(10·12²) = 12.5 MPa.
  expect(bending.main.stress).toBeCloseTo(45, 12)
  expect(bending.axial.stress).toBeCloseTo(12.5, 12)
  expect(bending.stress).toBeCloseTo(57.5, 12)
  // I = 12·10³/12 = 1000 mm⁴: 300·27000/(3·190000·1000); I = 10·12³/12 = 1440 mm⁴.
  expect(bending.main.deflection).toBeCloseTo(8.1e6 / 5.7e8, 12)
  expect(bending.axial.deflection).toBeCloseTo(2.7e6 / (3 * 190_000 * 1440), 12)
})

it('deflection and slope agree with summing the curvature along the bit', () => {
  const { main } = workedOut(bitBending(input))
  const steps = 20_000
  const dx = input.overhang / steps
  let slope = 0
  let deflection = 0
  for (let i = 0; i < steps; i++) {
    const x = (i + 0.5) * dx
    const curvature = (input.cuttingForce * (input.overhang - x)) / (input.youngsModulus * 1000)
    deflection += (slope + (curvature * dx) / 2) * dx
    slope += curvature * dx
  }
  expect(main.deflection / deflection).toBeCloseTo(1, 7)
  expect(main.slope / slope).toBeCloseTo(1, 7)
})

const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true })

it('more force, more overhang or less width makes the bit bend more, whichever way the axial force points', () => {
  fc.assert(
    fc.property(figure(10, 2000), figure(-500, 500), figure(5, 60), figure(4, 20), (force, axial, overhang, width) => {
      const job = { ...input, cuttingForce: force, axialForce: axial, overhang, width }
      const base = workedOut(bitBending(job))
      for (const worse of [
        { ...job, cuttingForce: force * 1.1 },
        { ...job, overhang: overhang * 1.1 },
        { ...job, width: width / 1.1 },
      ]) {
        const bending = workedOut(bitBending(worse))
        expect(bending.stress).toBeGreaterThan(base.stress)
        expect(bending.deflection).toBeGreaterThan(base.deflection)
      }
      expect(bitBending({ ...job, axialForce: -axial })).toEqual(bitBending(job))
    }),
  )
})

it('at the largest overhang one of the two limits is met and the other kept', () => {
  fc.assert(
    fc.property(figure(10, 5000), figure(0, 2000), figure(4, 20), (cuttingForce, axialForce, width) => {
      const job = { ...input, cuttingForce, axialForce, width }
      const { largestOverhang } = workedOut(bitBending(job))
      const there = workedOut(bitBending({ ...job, overhang: largestOverhang! }))
      expect(Math.min(there.stressFactor!, there.deflectionFactor!)).toBeCloseTo(1, 9)
    }),
  )
})

it('without a force there is nothing to divide by', () => {
  const idle = workedOut(bitBending({ ...input, cuttingForce: 0, axialForce: 0 }))
  expect(idle.stress).toBe(0)
  expect([idle.stressFactor, idle.deflectionFactor, idle.largestOverhang]).toEqual([undefined, undefined, undefined])
})

it('a bit of no width or a limit of nothing is refused', () => {
  expect(problemsOf(bitBending({ ...input, width: 0, stressLimit: 0, cuttingForce: -1 }))).toEqual([
    ['out-of-range', 'cuttingForce'],
    ['out-of-range', 'width'],
    ['out-of-range', 'stressLimit'],
  ])
})
