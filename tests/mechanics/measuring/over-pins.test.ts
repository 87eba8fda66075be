import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  angleFromCornerPins,
  cornerContact,
  heightFromCornerPin,
  heightOverCornerPin,
  idealCornerPin,
} from '../../../src/mechanics/measuring/corner-pin.ts'
import { betweenHoles, edgeToHole } from '../../../src/mechanics/measuring/hole-pins.ts'
import { errorOf } from '../../../src/mechanics/measuring/measured.ts'
import { choosePin } from '../../../src/mechanics/measuring/pin-choice.ts'
import {
  depthFromSlotPin,
  heightOverSlotPins,
  idealSlotPin,
  widthFromFilling,
  widthFromSlotPins,
} from '../../../src/mechanics/measuring/slot-pins.ts'
import { angleFromWedgePins, gapForWedge } from '../../../src/mechanics/measuring/wedge-pins.ts'
import { expectSlopes, faults, good } from './slope-check.ts'

const deg = Math.PI / 180
const pins = fc.double({ min: 1, max: 20, noNaN: true })
const tilts = fc.double({ min: -40 * deg, max: 40 * deg, noNaN: true })

describe('a pin in the corner of an angled face and a wall', () => {
  it('stands over it by r(1 + tan a + 1/cos a): worked by hand for 10 mm at 10°', () => {
    // 1 + 0.17632698 + 1.01542661 = 2.19175359; times 5 is 10.95876796.
    expect(heightOverCornerPin({ pin: 10, angle: 10 * deg, corner: 30 })).toBeCloseTo(40.95876796, 7)
    // A level face: the pin's own diameter.
    expect(heightOverCornerPin({ pin: 10, angle: 0, corner: 30 })).toBeCloseTo(40, 12)
  })

  it('touches wall and face by coordinates: both are its radius away from its middle', () => {
    fc.assert(
      fc.property(pins, tilts, (pin, angle) => {
        const r = pin / 2
        const middle = heightOverCornerPin({ pin, angle, corner: 0 }) - r
        // Face: z = x·tan a. Distance of (r, middle) from it.
        expect(middle * Math.cos(angle) - r * Math.sin(angle)).toBeCloseTo(r, 9)
        // Where it touches: on the wall as high as its middle, and as far along the face.
        expect(cornerContact({ pin, angle })).toBeCloseTo(middle, 9)
        const along = r * Math.cos(angle) + middle * Math.sin(angle)
        expect(along).toBeCloseTo(cornerContact({ pin, angle }), 9)
        expect(cornerContact({ pin: idealCornerPin(pin, angle), angle })).toBeCloseTo(pin / 2, 9)
      }),
      { seed: 1, numRuns: 200 },
    )
  })

  it('gives the depth on the axis back, and each error as it shows in it', () => {
    const at = { reading: 37.2, pin: 6, angle: 7 * deg, distance: 23 }
    const size = good(heightFromCornerPin(at)).size
    const corner = size - 23 * Math.tan(7 * deg)
    expect(heightOverCornerPin({ pin: 6, angle: 7 * deg, corner })).toBeCloseTo(37.2, 9)
    expectSlopes(at, (r) => good(heightFromCornerPin(r)))
    // By hand: 15′ are 0.0043633 rad; (23 − 3(1 + 0.1218693))/0.9851479 · 0.0043633 = 0.08696 mm.
    expect(errorOf(good(heightFromCornerPin(at)), { angle: 0.25 * deg }).worst).toBeCloseTo(0.08696, 4)
  })

  it('is refused where no corner is above the plate, and taken just above it', () => {
    const at = { pin: 10, angle: 10 * deg, distance: 0 }
    expect(faults(heightFromCornerPin({ ...at, reading: 10.95 }))).toEqual(['out-of-range reading'])
    expect(good(heightFromCornerPin({ ...at, reading: 10.96 })).size).toBeCloseTo(0.00123, 4)
    expect(faults(heightFromCornerPin({ ...at, pin: 0, reading: 10 }))).toEqual(['out-of-range pin'])
    expect(faults(heightFromCornerPin({ ...at, angle: 90 * deg, reading: 10 }))).toEqual(['out-of-range angle'])
    expect(() => cornerContact({ pin: 0, angle: 0 })).toThrow(RangeError)
  })

  it('and a second of another diameter give the angle, without the height of the corner', () => {
    fc.assert(
      fc.property(tilts, pins, fc.double({ min: 0.3, max: 0.8, noNaN: true }), (angle, pin, share) => {
        const over = (d: number) => ({ pin: d, reading: heightOverCornerPin({ pin: d, angle, corner: 17 }) })
        expect(good(angleFromCornerPins(over(pin), over(pin * share))).size).toBeCloseTo(angle, 9)
        expect(good(angleFromCornerPins(over(pin * share), over(pin))).size).toBeCloseTo(angle, 9)
      }),
      { seed: 2, numRuns: 200 },
    )
    expectSlopes({ firstReading: 40, firstPin: 10, secondReading: 35.7, secondPin: 6 }, (r) =>
      good(
        angleFromCornerPins(
          { reading: r.firstReading, pin: r.firstPin },
          { reading: r.secondReading, pin: r.secondPin },
        ),
      ),
    )
    // By hand at 10° with 10 and 6 mm: k = tan 50° = 1.191754, dα = 2·0.01/((1 + k²)·2) = 0.00413 rad for 0.01 mm, 14.2′.
    const over = (d: number) => ({ pin: d, reading: heightOverCornerPin({ pin: d, angle: 10 * deg, corner: 17 }) })
    const error = errorOf(good(angleFromCornerPins(over(10), over(6))), { firstReading: 0.01 }).worst
    expect((error / deg) * 60).toBeCloseTo(14.2, 1)
  })

  it('cannot be the same pin twice, nor give heights that no corner makes', () => {
    expect(faults(angleFromCornerPins({ reading: 40, pin: 10 }, { reading: 40, pin: 10 }))).toEqual([
      'contradiction second.pin',
    ])
    expect(faults(angleFromCornerPins({ reading: 40, pin: 10 }, { reading: 38.1, pin: 6 }))).toEqual([
      'contradiction second.reading',
    ])
    // The radii differ by 2: heights that differ by a little more than that are a face of nearly −90°.
    expect(good(angleFromCornerPins({ reading: 40, pin: 10 }, { reading: 37.9, pin: 6 })).size / deg).toBeLessThan(-80)
    expect(faults(angleFromCornerPins({ reading: 40, pin: -1 }, { reading: 38.1, pin: 6 }))).toEqual([
      'out-of-range first.pin',
    ])
  })
})

describe('two pins in a slot', () => {
  it('of 8 mm in one of 14 mm: middles 6 across, √28 up, top at 13.2915 over the floor', () => {
    expect(good(heightOverSlotPins({ first: 8, second: 8, width: 14 }))).toBeCloseTo(8 + Math.sqrt(28), 12)
  })

  it('give the width back, whichever lies below', () => {
    fc.assert(
      fc.property(
        pins,
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        fc.double({ min: 0.02, max: 0.98 }),
        (a, q, t) => {
          const b = a * q
          const width = a + t * b
          const height = good(heightOverSlotPins({ first: a, second: b, width }))
          expect(height).toBeCloseTo(good(heightOverSlotPins({ first: b, second: a, width })), 12)
          const back = good(widthFromSlotPins({ first: a, second: b, depth: 50, reading: 50 - height }))
          expect(back.size).toBeCloseTo(width, 7)
        },
      ),
      { seed: 3, numRuns: 200 },
    )
    expectSlopes({ first: 8, second: 7, depth: 15, reading: 2.3 }, (r) => good(widthFromSlotPins(r)))
  })

  it('touch best a little thicker than half of it: an error of the reading counts tan 30°', () => {
    const pin = idealSlotPin(12.7)
    expect(pin / 12.7).toBeCloseTo(0.5359, 4)
    const height = good(heightOverSlotPins({ first: pin, second: pin, width: 12.7 }))
    const { slopes } = good(widthFromSlotPins({ first: pin, second: pin, depth: 14, reading: 14 - height }))
    expect(slopes.reading).toBeCloseTo(Math.tan(30 * deg), 9)
    expect(() => idealSlotPin(0)).toThrow(RangeError)
  })

  it('must each go in and not lie side by side, with both sides of each limit', () => {
    const at = (width: number) => heightOverSlotPins({ first: 8, second: 7, width })
    expect(faults(at(8))).toEqual(['out-of-range width'])
    expect(good(at(8.001))).toBeGreaterThan(14)
    expect(good(at(14.999))).toBeLessThan(8)
    expect(faults(at(15))).toEqual(['out-of-range width'])
    const reading = (r: number) => widthFromSlotPins({ first: 8, second: 8, depth: 20, reading: r })
    expect(faults(reading(12))).toEqual(['out-of-range reading'])
    expect(good(reading(11.999)).size).toBeCloseTo(16, 5)
    expect(faults(reading(4))).toEqual(['out-of-range reading'])
    expect(good(reading(4.001)).size).toBeGreaterThan(8)
  })
})

describe('a slot', () => {
  it('is as deep as a pin in it less what stands out', () => {
    expect(good(depthFromSlotPin({ pin: 16, reading: 2.9 })).size).toBeCloseTo(13.1, 12)
    expect(good(depthFromSlotPin({ pin: 10, reading: -3 })).size).toBe(13)
    expect(faults(depthFromSlotPin({ pin: 10, reading: 10 }))).toEqual(['out-of-range reading'])
    expectSlopes({ pin: 16, reading: 2.9 }, (r) => good(depthFromSlotPin(r)))
  })

  it('is at least as wide as what goes in and not as wide as what does not', () => {
    expect(good(widthFromFilling([6, 6, 0.7], [6, 6, 0.75]))).toEqual({
      low: expect.closeTo(12.7, 12),
      high: expect.closeTo(12.75, 12),
    })
    expect(faults(widthFromFilling([6, 6], [6, 5.9]))).toEqual(['out-of-range doesNot'])
    expect(faults(widthFromFilling([6, -6], [6, 5.9]))).toEqual(['out-of-range goes.1'])
  })
})

describe('two pins under straight edges', () => {
  it('of 20 and 10 mm that touch include 38.94°: sin of half is 5/15', () => {
    expect(good(angleFromWedgePins({ large: 20, small: 10, gap: 0 })).size / deg).toBeCloseTo(2 * 19.47122, 4)
  })

  it('are set apart for an angle, and give it back', () => {
    const gap = good(gapForWedge({ large: 20, small: 10, angle: 10 * deg }))
    // By hand: 5/sin 5° = 57.3686, less 15.
    expect(gap).toBeCloseTo(42.3686, 3)
    expect(good(angleFromWedgePins({ large: 20, small: 10, gap })).size / deg).toBeCloseTo(10, 9)
    expectSlopes({ large: 20, small: 10, gap: 42 }, (r) => good(angleFromWedgePins(r)))
  })

  it('reach no steeper angle than when they touch, and must differ', () => {
    const steepest = 2 * Math.asin(1 / 3)
    expect(good(gapForWedge({ large: 20, small: 10, angle: steepest }))).toBeCloseTo(0, 9)
    expect(faults(gapForWedge({ large: 20, small: 10, angle: steepest + 1e-6 }))).toEqual(['out-of-range angle'])
    expect(faults(angleFromWedgePins({ large: 10, small: 10, gap: 1 }))).toEqual(['out-of-range large'])
    expect(faults(angleFromWedgePins({ large: 20, small: 10, gap: -1 }))).toEqual(['out-of-range gap'])
  })
})

describe('a pin in a hole', () => {
  it('shows where the middle is, less its half from the far side and more from the near one', () => {
    const far = good(edgeToHole({ reading: 14.5, side: 'far', pin: 5, hole: 5.02 }))
    expect(far.size).toBe(12)
    expect(far.play).toBeCloseTo(0.01, 12)
    expect(good(edgeToHole({ reading: 9.5, side: 'near', pin: 5, hole: 5 })).size).toBe(12)
    expect(errorOf(far, { reading: 0.02, pin: 0.002, play: far.play }).worst).toBeCloseTo(0.031, 12)
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
