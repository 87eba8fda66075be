import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { unground } from '../../../src/mechanics/angles/facets.ts'
import { groundBit } from '../../../src/mechanics/angles/ground-bit.ts'
import { sweptRadius } from '../../../src/mechanics/angles/swept-radius.ts'
import { anyBlank, anySetting, blank12, deg, good, level, usualFacets } from './any-bit.ts'
import { MetalOfTheBit } from './metal-of-the-bit.ts'

describe('the largest circle the bit sweeps', () => {
  it('a blank on the axis sweeps its trailing corner: √(60² + 12²)', () => {
    const swept = sweptRadius(good(groundBit(blank12, unground, level)))
    expect(swept.radius).toBeCloseTo(Math.hypot(60, 12), 12)
    expect(swept.between).toContain('trailing face')
  })

  it('on a tilted face the upper corner of the end runs further out than the tip, by t·sin a', () => {
    // Far ahead of centre, so that the tip's own side is the outer one and the heel does not matter.
    const setting = { ...level, faceAngle: 10 * deg, ahead: 9 }
    const swept = sweptRadius(good(groundBit(blank12, unground, setting)))
    expect(swept.radius).toBeCloseTo(Math.hypot(60 * Math.cos(10 * deg) + 12 * Math.sin(10 * deg), 9), 12)
    expect([...swept.between].toSorted()).toEqual(['back', 'end flank', 'rake face'])
  })

  it('a tail that comes out further on the far side is what guard and machine must clear', () => {
    const swept = sweptRadius(good(groundBit({ ...blank12, length: 140 }, unground, level)))
    expect(swept.radius).toBeCloseTo(Math.hypot(80, 12), 12)
    expect(swept.between).toContain('inner end')
    expect(swept.at[0]).toBeCloseTo(-80, 12)
  })

  it('no point of the metal lies outside it, and the place named is metal at just that radius', () => {
    const unit = () => fc.double({ min: 0, max: 1, noNaN: true })
    const places = fc.array(fc.tuple(unit(), unit(), unit()), { minLength: 200, maxLength: 200 })
    fc.assert(
      fc.property(anyBlank, usualFacets, anySetting, places, (blank, facets, setting, many) => {
        const swept = sweptRadius(good(groundBit(blank, facets, setting)))
        const metal = new MetalOfTheBit(blank, facets, setting)
        const at = metal.fromBody(swept.at)
        expect(metal.holds(at, 2e-6)).toBe(true)
        expect(metal.radiusOf(at)).toBeCloseTo(swept.radius, 9)
        for (const [u, v, w] of many) {
          const p = [
            blank.groundOffEnd - blank.length * u * u,
            setting.groundOffLeading - blank.width * v,
            blank.groundOffWorkSide - blank.height * w,
          ] as const
          if (metal.holds(p)) expect(metal.radiusOf(p)).toBeLessThan(swept.radius + 1e-6)
        }
      }),
    )
  })
})
