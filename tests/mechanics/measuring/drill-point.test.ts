import { describe, expect, it } from 'vitest'
import { fullDepthFromRod, pointLength } from '../../../src/mechanics/measuring/drill-point.ts'
import { expectSlopes, faults, good } from './slope-check.ts'

const deg = Math.PI / 180

describe('a drill point', () => {
  const drill = { diameter: 20, pointAngle: 118 * deg }

  it('of 118° is 0.3004 of the diameter long, a flat one nothing', () => {
    expect(good(pointLength(drill)) / 20).toBeCloseTo(0.30043, 5)
    expect(good(pointLength({ diameter: 20, pointAngle: Math.PI }))).toBe(0)
    expect(good(pointLength({ diameter: 20, pointAngle: 90 * deg }))).toBeCloseTo(10, 12)
  })

  it('stops a rod where the cone is as wide as the rod', () => {
    // A rod of 5 mm stops where the cone is 5 mm wide: 7.5·cot 59° = 4.50646 below the full diameter.
    expect(good(fullDepthFromRod({ ...drill, reading: 28.5, rod: 5 })).size).toBeCloseTo(28.5 - 4.50646, 4)
    expect(good(fullDepthFromRod({ ...drill, reading: 24, rod: 20 })).size).toBe(24)
    expectSlopes({ ...drill, reading: 28.5, rod: 5 }, (r) => good(fullDepthFromRod(r)))
  })

  it('of no angle or of more than a flat one is refused, and a rod that does not go in', () => {
    expect(faults(pointLength({ diameter: 20, pointAngle: 0 }))).toEqual(['out-of-range pointAngle'])
    expect(faults(pointLength({ diameter: 0, pointAngle: 3.2 }))).toEqual([
      'out-of-range diameter',
      'out-of-range pointAngle',
    ])
    expect(faults(fullDepthFromRod({ ...drill, reading: 20, rod: 20.01 }))).toEqual(['out-of-range rod'])
  })
})
