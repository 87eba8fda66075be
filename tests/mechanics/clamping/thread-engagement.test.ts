import fc from 'fast-check'
import { expect, it } from 'vitest'
import {
  type ThreadEngagementInput,
  threadEngagement,
  threadEngagementRules,
  usualIncomplete,
} from '../../../src/mechanics/clamping/thread-engagement.ts'
import { minorDiameter, type ThreadSize } from '../../../src/tables/thread-geometry.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

const m6: ThreadSize = { system: 'metric', majorDiameter: 6, pitch: 1 }
const input: ThreadEngagementInput = {
  thread: m6,
  tapDrill: 5,
  wallThickness: 9,
  screwLength: 10,
  incomplete: usualIncomplete(1),
  screwForce: 7500,
  bodyStrength: 480,
  screwStrength: undefined,
  ...threadEngagementRules,
  wantedDiameters: 1,
}

const threads = fc
  .record({
    system: fc.constantFrom('metric', 'inch'),
    majorDiameter: fc.double({ min: 2, max: 30, noNaN: true }),
    fineness: fc.double({ min: 4, max: 20, noNaN: true }),
  })
  .map(({ fineness, ...thread }): ThreadSize => ({ ...thread, pitch: thread.majorDiameter / fineness }))

it('threads shear where the basic profile has its flats: P/8 on the crest of the screw, P/4 on that of the body', () => {
  // ISO 68-1: at the major diameter a pitch is the body's thread and the screw's crest, at the minor the screw's thread
  // and the body's crest.
  fc.assert(
    fc.property(threads, (thread) => {
      const job = { ...input, thread, tapDrill: minorDiameter(thread) }
      const { engagement, bodyShearArea, screwShearArea } = workedOut(threadEngagement(job))
      const shell = (diameter: number, flat: number) => Math.PI * diameter * engagement * (1 - flat)
      expect(bodyShearArea / shell(thread.majorDiameter, 1 / 8)).toBeCloseTo(1, 9)
      expect(screwShearArea / shell(minorDiameter(thread), 1 / 4)).toBeCloseTo(1, 9)
    }),
  )
})

it('an M6 screw in a wall of 9, worked by hand', () => {
  const held = workedOut(threadEngagement(input))
  expect(held.engagement).toBe(8)
  expect(held.diameters).toBeCloseTo(8 / 6, 12)
  expect(held).toMatchObject({ least: 6, leastWall: 7 })
  // π·6·7/8·8 = 131.95 mm²; 480/√3 = 277.13 MPa.
  expect(held.bodyShearArea).toBeCloseTo(131.95, 2)
  expect(held.bodyStripsAt).toBeCloseTo(131.947 * 277.128, 0)
  expect(held.factor).toBeCloseTo((131.947 * 277.128) / 7500, 3)
  // Stress area of M6 printed as 20.1 mm² (ISO 898-1, from memory).
  expect(Math.abs(7500 / held.screwStress - 20.1)).toBeLessThan(0.05)
})

it('a larger tap drill weakens the screw’s thread and not the body’s', () => {
  const loose = workedOut(threadEngagement({ ...input, tapDrill: 5.2 }))
  const tight = workedOut(threadEngagement(input))
  expect(loose.screwShearArea).toBeLessThan(tight.screwShearArea)
  expect(loose.bodyShearArea).toBe(tight.bodyShearArea)
})

it('a short screw counts instead of the wall, and bevels longer than the screw leave nothing', () => {
  expect(workedOut(threadEngagement({ ...input, screwLength: 6 })).engagement).toBe(5)
  const none = workedOut(threadEngagement({ ...input, screwLength: 3, incomplete: 4 }))
  expect(none).toMatchObject({ engagement: 0, bodyStripsAt: 0, factor: 0 })
})

it('the weaker of body and screw decides, and an unknown strength decides nothing', () => {
  const weakScrew = workedOut(threadEngagement({ ...input, screwStrength: 100 }))
  expect(weakScrew.factor).toBeCloseTo(weakScrew.screwStripsAt! / 7500, 12)
  const strongScrew = workedOut(threadEngagement({ ...input, screwStrength: 1300 }))
  expect(strongScrew.factor).toBeCloseTo(strongScrew.bodyStripsAt! / 7500, 12)
  expect(workedOut(threadEngagement({ ...input, bodyStrength: undefined })).factor).toBeUndefined()
  expect(workedOut(threadEngagement({ ...input, screwForce: 0 })).factor).toBeUndefined()
})

it('a hole as wide as the thread and a pitch that leaves no core are refused', () => {
  expect(problemsOf(threadEngagement({ ...input, tapDrill: 6 }))).toEqual([['out-of-range', 'tapDrill']])
  expect(problemsOf(threadEngagement({ ...input, thread: { ...m6, pitch: 6 } }))).toEqual([
    ['out-of-range', 'thread.pitch'],
  ])
  expect(problemsOf(threadEngagement({ ...input, bodyStrength: 0, shearRatio: 1.1 }))).toEqual([
    ['out-of-range', 'shearRatio'],
    ['out-of-range', 'bodyStrength'],
  ])
})
