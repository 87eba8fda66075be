import fc from 'fast-check'
import { expect, it } from 'vitest'
import { faceFrame } from '../../../src/families/fly-cutter-head/frames.ts'
import { dot, type Vec3 } from '../../../src/geometry/vector.ts'
import { type BitHoldInput, bitHold, bitHoldRules } from '../../../src/mechanics/clamping/bit-hold.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

const input: BitHoldInput = {
  screwForces: [4000, 4000],
  bitMass: 0.06,
  centroidRadius: 18,
  speed: 60,
  faceAngle: (10 * Math.PI) / 180,
  radialForce: 150,
  axialForce: 90,
  ...bitHoldRules,
}

it('two screws of 4 kN on a 60 g bit, worked by hand', () => {
  const hold = workedOut(bitHold(input))
  // 2·0.12·8000 = 1920 N. C = 0.06·0.018·3600 = 3.888 N, cos 10° 0.98481, sin 10° 0.17365.
  expect(hold.friction).toBeCloseTo(1920, 9)
  expect(hold.outward.load).toBeCloseTo(3.888 * 0.98481, 4)
  expect(hold.inward.load).toBeCloseTo(150 * 0.98481 + 90 * 0.17365, 2)
  expect(hold.inward.factor).toBeCloseTo(1920 / (150 * 0.98481 + 90 * 0.17365), 3)
  expect(hold.outOfSlot.load).toBeCloseTo(150 * 0.17365, 2)
  // ω² = (1920/3)/(0.06·0.018·0.98481).
  expect(hold.speedLimit).toBeCloseTo(Math.sqrt(640 / (0.06 * 0.018 * 0.98481)), 0)
})

it('on a level face the loads are m·r·ω² outward and the radial force inward, and nothing pulls out of the slot', () => {
  const level = workedOut(bitHold({ ...input, faceAngle: 0 }))
  expect(level.outward.load).toBeCloseTo(3.888, 12)
  expect(level.inward.load).toBe(150)
  expect(level.outOfSlot).toEqual({ load: 0, factor: undefined })
})

const angle = fc.double({ min: 0, max: 0.5, noNaN: true })
const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true })

it('each load is the part of one real force, taken apart in the face frame', () => {
  fc.assert(
    fc.property(angle, figure(-30, 30), figure(-200, 200), figure(0, 300), (faceAngle, r, axial, radial) => {
      const job = { ...input, faceAngle, centroidRadius: r, axialForce: axial, radialForce: radial }
      const { x, z } = faceFrame(faceAngle, 40)
      const out: Vec3 = [-z[0], -z[1], -z[2]]
      const centrifugal: Vec3 = [(job.bitMass * r * job.speed ** 2) / 1000, 0, 0]
      const forces: Vec3[] = [centrifugal, [-radial, 0, 0], [0, 0, axial]]
      const towards = (direction: Vec3) => forces.reduce((sum, force) => sum + Math.max(0, dot(force, direction)), 0)
      const hold = workedOut(bitHold(job))
      expect(hold.outward.load).toBeCloseTo(towards(x), 9)
      expect(hold.inward.load).toBeCloseTo(towards([-x[0], -x[1], -x[2]]), 9)
      expect(hold.outOfSlot.load).toBeCloseTo(towards(out), 9)
    }),
  )
})

it('at the speed limit the weakest direction that speed pulls on has just the wanted factor', () => {
  fc.assert(
    fc.property(angle, figure(-30, 30), figure(0, 100), (faceAngle, centroidRadius, radialForce) => {
      fc.pre(Math.abs(centroidRadius) > 0.1)
      const job = { ...input, faceAngle, centroidRadius, radialForce }
      const { speedLimit } = workedOut(bitHold(job))
      const there = workedOut(bitHold({ ...job, speed: speedLimit! }))
      const pulled = centroidRadius > 0 ? [there.outward] : [there.inward, there.outOfSlot]
      const factors = pulled.flatMap(({ factor }) => (factor === undefined ? [] : [factor]))
      expect(Math.min(...factors)).toBeCloseTo(job.wanted, 9)
    }),
  )
})

it('a bit whose centroid lies on the axis, or beyond it, is not thrown out', () => {
  const central = workedOut(bitHold({ ...input, centroidRadius: 0 }))
  expect(central.speedLimit).toBeUndefined()
  expect(central.outward.factor).toBeUndefined()
  const beyond = workedOut(bitHold({ ...input, centroidRadius: -18 }))
  expect(beyond.outward.load).toBe(0)
  expect(beyond.inward.load).toBeGreaterThan(workedOut(bitHold(input)).inward.load)
  expect(beyond.outOfSlot.load).toBeGreaterThan(workedOut(bitHold(input)).outOfSlot.load)
})

it('where the cut alone takes more than the hold allows, no speed is slow enough', () => {
  expect(workedOut(bitHold({ ...input, centroidRadius: -1, radialForce: 2000 })).speedLimit).toBe(0)
})

it('without friction or a mass there is nothing to compute', () => {
  expect(problemsOf(bitHold({ ...input, friction: 0, bitMass: 0, screwForces: [-1], radialForce: -1 }))).toEqual([
    ['out-of-range', 'screwForces.0'],
    ['out-of-range', 'friction'],
    ['out-of-range', 'bitMass'],
    ['out-of-range', 'radialForce'],
  ])
})
