import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type ScrewWallInput, screwWall } from '../../../src/mechanics/clamping/screw-wall.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

const input: ScrewWallInput = {
  screws: [
    { force: 7500, x: 10 },
    { force: 7500, x: -14 },
  ],
  wall: { outer: 22, inner: -22 },
  thickness: 9,
  slotDepth: 9.5,
  stepDepth: 10.5,
  screwHeight: 4.5,
  screwDiameter: 6,
  youngsModulus: 200_000,
  yieldStrength: 413,
}

it('two M6 screws on a wall 9 thick, worked by hand', () => {
  const wall = workedOut(screwWall(input))
  // Free down to the slot floor: arm 5. Each screw spreads 3 + 5 to either side: 2 × 16 = 32.
  expect(wall.arm).toBe(5)
  expect(wall.length).toBe(32)
  // 6·15000·5/(32·81), 15000·125/(3·200000·32·729/12).
  expect(wall.stress).toBeCloseTo(450_000 / 2592, 9)
  expect(wall.deflection).toBeCloseTo(1_875_000 / (3 * 200_000 * 1944), 12)
  expect(wall.factor).toBeCloseTo((413 * 2592) / 450_000, 9)
})

it('spreads that overlap count once, and end with the wall', () => {
  const close = workedOut(screwWall({ ...input, screws: [10, 2].map((x) => ({ force: 7500, x })) }))
  // From −6 to 18.
  expect(close.length).toBe(24)
  const atEnd = workedOut(screwWall({ ...input, screws: [{ force: 7500, x: 20 }] }))
  expect(atEnd.length).toBe(10)
})

const depth = fc.double({ min: 6, max: 20, noNaN: true })

it('a thicker wall is stressed less, a tighter screw stresses it more, and the deeper of slot and step is of no effect', () => {
  fc.assert(
    fc.property(depth, depth, (slotDepth, stepDepth) => {
      const job = { ...input, slotDepth, stepDepth }
      const { stress } = workedOut(screwWall(job))
      expect(workedOut(screwWall({ ...job, thickness: 10 })).stress).toBeLessThan(stress)
      const tighter = job.screws.map((screw) => ({ ...screw, force: 8000 }))
      expect(workedOut(screwWall({ ...job, screws: tighter })).stress).toBeGreaterThan(stress)
      const shallow = Math.min(slotDepth, stepDepth)
      expect(screwWall({ ...job, slotDepth: shallow, stepDepth: shallow })).toEqual(screwWall(job))
    }),
  )
})

it('screws below the floor bend nothing', () => {
  expect(workedOut(screwWall({ ...input, screwHeight: 12 }))).toMatchObject({ arm: 0, stress: 0, factor: undefined })
})

it('a brittle body has no yield strength to compare with', () => {
  expect(workedOut(screwWall({ ...input, yieldStrength: undefined })).factor).toBeUndefined()
})

it('without screws the wall carries nothing', () => {
  expect(workedOut(screwWall({ ...input, screws: [] }))).toMatchObject({ length: 0, stress: 0, deflection: 0 })
})

it('a screw beside the wall is refused', () => {
  expect(problemsOf(screwWall({ ...input, screws: [{ force: 1, x: 23 }], thickness: 0 }))).toEqual([
    ['out-of-range', 'screws.0.x'],
    ['out-of-range', 'thickness'],
  ])
})
