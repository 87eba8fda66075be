import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cross, dot, length } from '../../../src/geometry/vector.ts'
import { type TipSetting, tipOf } from '../../../src/mechanics/angles/tip-setting.ts'
import { anySetting, deg, level } from './any-bit.ts'

describe('where the tip stands', () => {
  it('the tip of a level slot on the axis is at its distance out, level with the face and the slot', () => {
    const tip = tipOf({ ...level, height: -0.5 })
    expect(tip.point.map((c) => c + 0)).toEqual([60, 0, -30.5])
    expect(tip.radius).toBe(60)
    expect(tip.lead).toBe(0)
  })

  it('a tilted face carries the tip down and in, and ahead of centre adds to the swing', () => {
    const tip = tipOf({ ...level, faceAngle: 10 * deg, height: -0.4, ahead: 3, groundOffLeading: 0.5 })
    const [sin, cos] = [Math.sin(10 * deg), Math.cos(10 * deg)]
    expect(tip.point[0]).toBeCloseTo(60 * cos - 0.4 * sin, 12)
    expect(tip.point[1]).toBeCloseTo(-2.5, 12)
    expect(tip.point[2]).toBeCloseTo(-30 - 60 * sin - 0.4 * cos, 12)
    expect(tip.radius).toBeCloseTo(Math.sqrt((60 * cos - 0.4 * sin) ** 2 + 2.5 ** 2), 12)
    expect(tip.lead).toBeCloseTo(Math.asin(2.5 / tip.radius), 14)
  })

  it('clockwise seen from the spindle moves a point on +X towards −Y, anticlockwise towards +Y', () => {
    expect(tipOf({ ...level, hand: -1 }).motion[1]).toBe(-1)
    expect(tipOf({ ...level, hand: 1 }).motion[1]).toBe(1)
  })

  it('outward, motion and up are square unit vectors; the bit’s own frame is right-handed only when clockwise', () => {
    fc.assert(
      fc.property(anySetting, (setting) => {
        const { outward, motion, up, bit } = tipOf(setting)
        for (const v of [outward, motion, up, bit.x, bit.y, bit.z]) expect(length(v)).toBeCloseTo(1, 12)
        for (const product of [dot(outward, motion), dot(outward, up), dot(motion, up)]) {
          expect(product).toBeCloseTo(0, 12)
        }
        expect(dot(cross(bit.x, bit.y), bit.z)).toBeCloseTo(-setting.hand, 12)
      }),
    )
  })

  it.each<[string, Partial<TipSetting>]>([
    ['an upright face', { faceAngle: Math.PI / 2 }],
    ['a leading face with something added', { groundOffLeading: -0.1 }],
    ['a tip on the far side of the axis', { along: -5 }],
    ['no figure at all', { ahead: Number.NaN }],
    ['a third hand', { hand: 0 as 1 }],
  ])('%s is the caller’s mistake', (_, change) => {
    expect(() => tipOf({ ...level, ...change })).toThrow(RangeError)
  })
})
