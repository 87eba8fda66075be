import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { faceFrame } from '../../../src/families/fly-cutter-head/frames.ts'
import { pointFrom } from '../../../src/geometry/frame.ts'
import { barReach, type SlotRuns } from '../../../src/mechanics/clamping/bar-reach.ts'
import { type BitSupportInput, bitSupport } from '../../../src/mechanics/clamping/bit-support.ts'
import type { BarSection } from '../../../src/tables/bar-section.ts'
import { problemsOf, workedOut } from '../cutting/worked-out.ts'

const runsBothWays: readonly SlotRuns[] = ['point-to-point', 'flat-to-flat']

/** Second road: corners of the bar turned into place, and the sides cut by the line beside the axis. */
function reachBySides({ shape, size }: BarSection, runs: SlotRuns, y: number): number {
  const sides = shape === 'hexagon' ? 6 : 4
  const corner = size / 2 / Math.cos(Math.PI / sides)
  const first = runs === 'point-to-point' ? 0 : Math.PI / sides
  const corners = Array.from({ length: sides }, (_, i) => {
    const angle = first + (2 * Math.PI * i) / sides
    return [corner * Math.cos(angle), corner * Math.sin(angle)] as const
  })
  const hits = corners.flatMap(([ax, ay], i) => {
    const [bx, by] = corners[(i + 1) % sides]!
    const t = (y - ay) / (by - ay)
    return t >= 0 && t <= 1 ? [ax + t * (bx - ax)] : []
  })
  return Math.max(...hits)
}

describe('how far the bar reaches beside its axis', () => {
  it.each((['hexagon', 'square'] as const).flatMap((shape) => runsBothWays.map((runs) => ({ shape, runs }))))(
    '$shape, slot $runs: by formula as by cutting its sides',
    ({ shape, runs }) => {
      fc.assert(
        fc.property(
          fc.double({ min: 5, max: 200, noNaN: true }),
          fc.double({ min: 0.001, max: 0.499, noNaN: true }),
          (size, share) => {
            const section = { shape, size }
            const y = share * size
            expect(barReach(section, runs, y)! / reachBySides(section, runs, y)).toBeCloseTo(1, 10)
            expect(barReach(section, runs, -y)).toBe(barReach(section, runs, y))
          },
        ),
      )
    },
  )

  it('on a hexagon slotted point to point the wall ends |y|/√3 inside the corner', () => {
    const section = { shape: 'hexagon', size: 46 } as const
    expect(barReach(section, 'point-to-point', 0)).toBeCloseTo(46 / Math.sqrt(3), 12)
    expect(barReach(section, 'point-to-point', 7.64)).toBeCloseTo(46 / Math.sqrt(3) - 7.64 / Math.sqrt(3), 12)
  })

  it('the far end of each shape: corner, flat and rim', () => {
    expect(barReach({ shape: 'hexagon', size: 40 }, 'point-to-point', 20)).toBeCloseTo(20 / Math.sqrt(3), 12)
    expect(barReach({ shape: 'hexagon', size: 40 }, 'flat-to-flat', 0)).toBe(20)
    expect(barReach({ shape: 'hexagon', size: 40 }, 'flat-to-flat', 20)).toBeCloseTo(
      Math.sqrt(3) * (40 / Math.sqrt(3) - 20),
      12,
    )
    expect(barReach({ shape: 'square', size: 40 }, 'flat-to-flat', 20)).toBe(20)
    expect(barReach({ shape: 'square', size: 40 }, 'point-to-point', 5)).toBeCloseTo(20 * Math.SQRT2 - 5, 12)
    // 3-4-5 triangle.
    for (const runs of runsBothWays) expect(barReach({ shape: 'round', size: 50 }, runs, 15)).toBeCloseTo(20, 12)
  })

  it('beside the bar there is none', () => {
    expect(barReach({ shape: 'round', size: 40 }, 'flat-to-flat', 20.01)).toBeUndefined()
    expect(barReach({ shape: 'hexagon', size: 40 }, 'point-to-point', 20.01)).toBeUndefined()
    expect(barReach({ shape: 'hexagon', size: 40 }, 'flat-to-flat', 23.1)).toBeUndefined()
    expect(barReach({ shape: 'square', size: 40 }, 'flat-to-flat', -20.01)).toBeUndefined()
    expect(barReach({ shape: 'square', size: 40 }, 'point-to-point', 28.3)).toBeUndefined()
  })
})

const degree = Math.PI / 180
const input: BitSupportInput = {
  section: { shape: 'hexagon', size: 46 },
  slotRuns: 'point-to-point',
  wallY: 7.64,
  faceAngle: 7 * degree,
  slotDepth: 9.5,
  tipX: 53,
  bitInnerEnd: -25,
}

describe('the wall behind the bit', () => {
  it('ends on the outside of the bar, at the face and at the slot floor', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('hexagon', 'square', 'round'),
        fc.constantFrom(...runsBothWays),
        fc.double({ min: -15, max: 15, noNaN: true }),
        fc.double({ min: 0, max: 30 * degree, noNaN: true }),
        (shape, slotRuns, wallY, faceAngle) => {
          const section: BarSection = { shape, size: 40 }
          const support = workedOut(bitSupport({ ...input, section, slotRuns, wallY, faceAngle, tipX: 60 }))
          const reach = barReach(section, slotRuns, wallY)!
          const face = faceFrame(faceAngle, 30)
          // Second road: the wall's corners put into the body frame, where the outside is upright.
          expect(pointFrom(face, [support.outerAtFace, wallY, 0])[0]).toBeCloseTo(reach, 9)
          expect(pointFrom(face, [support.outerAtFloor, wallY, input.slotDepth])[0]).toBeCloseTo(reach, 9)
          expect(support.overhang).toBeGreaterThanOrEqual(support.overhangAtFace)
        },
      ),
    )
  })

  it('a hand-worked hexagon: 46 across flats, 7° face, wall 7.64 behind the axis', () => {
    const support = workedOut(bitSupport(input))
    // 26.5581 − 4.4110 = 22.1472; over cos 7° 22.3135; 9.5·tan 7° = 1.1664; 22.31348 − 1.16645 = 21.1470.
    expect(support.outerAtFace).toBeCloseTo(22.3135, 4)
    expect(support.outerAtFloor).toBeCloseTo(21.147, 4)
    expect(support.overhangAtFace).toBeCloseTo(53 - 22.3135, 4)
    // The far side of the bar comes before the bit's tail.
    expect(support.inner).toBeCloseTo(-22.3135, 4)
    expect(support.grip).toBeCloseTo(2 * 22.3135 - 1.1664, 3)
  })

  it('the mirrored hand has the same support', () => {
    expect(bitSupport({ ...input, wallY: -input.wallY })).toEqual(bitSupport(input))
  })

  it('a short bit or a stopped slot shortens the grip and leaves the overhang', () => {
    const whole = workedOut(bitSupport(input))
    const short = workedOut(bitSupport({ ...input, bitInnerEnd: 5 }))
    const stopped = workedOut(bitSupport({ ...input, slotEnd: -8 }))
    expect(short.grip).toBeCloseTo(whole.outerAtFloor - 5, 12)
    expect(stopped.grip).toBeCloseTo(whole.outerAtFloor + 8, 12)
    expect(short.overhang).toBe(whole.overhang)
    expect(workedOut(bitSupport({ ...input, bitInnerEnd: 30 })).grip).toBe(0)
  })

  it('a wall outside the bar and a tip inside the head are contradictions', () => {
    expect(problemsOf(bitSupport({ ...input, wallY: 23.5 }))).toEqual([['contradiction', 'wallY']])
    expect(problemsOf(bitSupport({ ...input, tipX: 22 }))).toEqual([['contradiction', 'tipX']])
    expect(problemsOf(bitSupport({ ...input, faceAngle: Math.PI / 2, slotDepth: 0 }))).toEqual([
      ['out-of-range', 'faceAngle'],
      ['out-of-range', 'slotDepth'],
    ])
  })
})
