import fc from 'fast-check'
import { expect, it } from 'vitest'
import {
  drillForPercent,
  leastEngagement,
  minorDiameter,
  percentThread,
  pitchDiameter,
  stressArea,
  type ThreadSize,
} from '../../src/tables/thread-geometry.ts'

const size = fc
  .record({
    system: fc.constantFrom('metric', 'inch'),
    majorDiameter: fc.double({ min: 2, max: 100, noNaN: true }),
    fineness: fc.double({ min: 4, max: 20, noNaN: true }),
  })
  .map(({ fineness, ...thread }): ThreadSize => ({ ...thread, pitch: thread.majorDiameter / fineness }))

it('the diameters stand in order, and the stress area lies between the circles of root and pitch', () => {
  fc.assert(
    fc.property(size, (thread) => {
      expect(minorDiameter(thread)).toBeLessThan(pitchDiameter(thread))
      expect(pitchDiameter(thread)).toBeLessThan(thread.majorDiameter)
      // Taken at the mean of pitch and root diameter, which is deeper than the basic minor one.
      expect(stressArea(thread)).toBeLessThan((Math.PI / 4) * pitchDiameter(thread) ** 2)
      expect(stressArea(thread)).toBeGreaterThan((Math.PI / 4) * (thread.majorDiameter - 1.3 * thread.pitch) ** 2)
    }),
  )
})

it('percent of thread and drill are inverse, 0 at the major diameter and 5/6 of full at the minor', () => {
  fc.assert(
    fc.property(size, fc.double({ min: 0, max: 100, noNaN: true }), (thread, percent) => {
      expect(percentThread(thread, drillForPercent(thread, percent))).toBeCloseTo(percent, 6)
      expect(percentThread(thread, thread.majorDiameter)).toBe(0)
      expect(percentThread(thread, minorDiameter(thread))).toBeCloseTo((100 * 5) / 6, 6)
    }),
  )
})

it('metric and unified stress areas differ by their root', () => {
  const metric = { system: 'metric', majorDiameter: 10, pitch: 1.5 } as const
  expect(stressArea({ ...metric, system: 'inch' })).toBeLessThan(stressArea(metric))
})

it('engagement is counted in major diameters', () => {
  expect(leastEngagement({ system: 'metric', majorDiameter: 8, pitch: 1.25 }, 1.5)).toBe(12)
})
