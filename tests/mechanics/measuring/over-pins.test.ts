import { describe, expect, it } from 'vitest'
import { flatToWall } from '../../../src/mechanics/measuring/from-flat.ts'
import { betweenHoles, edgeToHole } from '../../../src/mechanics/measuring/hole-pins.ts'
import { choosePin } from '../../../src/mechanics/measuring/pin-choice.ts'
import { expectSlopes, faults, good } from './slope-check.ts'

describe('from an outside flat', () => {
  it('a wall is the reading less the pin', () => {
    expect(good(flatToWall({ reading: 29.4, pin: 6 })).size).toBeCloseTo(23.4, 12)
    expectSlopes({ reading: 29.4, pin: 6 }, (r) => good(flatToWall(r)))
    expect(faults(flatToWall({ reading: 6, pin: 6 }))).toEqual(['out-of-range reading'])
    expect(faults(flatToWall({ reading: 6, pin: 0 }))).toEqual(['out-of-range pin'])
  })
})

describe('a pin in a hole', () => {
  it('shows where the middle is, less its half from the far side and more from the near one', () => {
    const far = good(edgeToHole({ reading: 14.5, side: 'far', pin: 5, hole: 5.02 }))
    expect(far.size).toBe(12)
    expect(far.play).toBeCloseTo(0.01, 12)
    expect(good(edgeToHole({ reading: 9.5, side: 'near', pin: 5, hole: 5 })).size).toBe(12)
    expect(far.slopes).toEqual({ reading: 1, pin: -0.5, play: 1 })
    expect(faults(edgeToHole({ reading: 9.5, side: 'near', pin: 5, hole: 4.99 }))).toEqual(['out-of-range pin'])
    expect(faults(edgeToHole({ reading: 2.5, side: 'far', pin: 5, hole: 5 }))).toEqual(['out-of-range reading'])
  })

  it('and one in the next hole show how far apart they are', () => {
    const two = good(betweenHoles({ reading: 20, first: { pin: 5, hole: 5.01 }, second: { pin: 6, hole: 6.03 } }))
    expect(two.size).toBe(14.5)
    expect(two.play).toBeCloseTo(0.02, 12)
    const meet = { first: { pin: 5, hole: 5 }, second: { pin: 5, hole: 5 } }
    expect(faults(betweenHoles({ ...meet, reading: 10 }))).toEqual(['out-of-range reading'])
    expect(good(betweenHoles({ ...meet, reading: 10.01 })).size).toBeCloseTo(5.01, 12)
  })
})

describe('the pin to take', () => {
  const choice = { pins: [4, 5, 6, 8], ideal: 6.8, above: 6.35, below: 12.7, units: 'mm' } as const

  it('is the nearest to the best that touches at all', () => {
    expect(good(choosePin(choice))).toBe(8)
    expect(good(choosePin({ ...choice, above: 5.9 }))).toBe(6)
    expect(good(choosePin({ ...choice, above: 4.5, ideal: 7 }))).toBe(8)
  })

  it('is none where none touches, and what to turn is said', () => {
    const none = choosePin({ ...choice, pins: [4, 5, 6] })
    expect(none).toMatchObject({
      ok: false,
      problems: [{ code: 'not-in-table', where: { path: 'pins' }, remedy: expect.stringContaining('6.8') }],
    })
    expect(faults(choosePin({ ...choice, pins: [] }))).toEqual(['not-in-table pins'])
    // On the limit a pin does not touch.
    expect(faults(choosePin({ ...choice, pins: [6.35, 12.7] }))).toEqual(['not-in-table pins'])
    expect(() => choosePin({ ...choice, ideal: 20 })).toThrow(RangeError)
  })
})
