import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { unground } from '../../../src/mechanics/angles/facets.ts'
import { groundBit } from '../../../src/mechanics/angles/ground-bit.ts'
import { groundSection } from '../../../src/mechanics/angles/ground-section.ts'
import { anyBlank, blank12, deg, degrees, good, level, usualFacets } from './any-bit.ts'
import { MetalOfTheBit } from './metal-of-the-bit.ts'

describe('the section that grinding leaves', () => {
  it('of a bit that nothing is ground off is the whole blank, t·w²/6', () => {
    expect(groundSection(blank12, unground, 0, 10)).toEqual({
      area: 144,
      share: 1,
      modulus: expect.closeTo(288, 9),
      blankModulus: 288,
    })
  })

  it('behind a plain rake is a rectangle that is w − g − x·tan(rake) wide', () => {
    // 12 − 0.5 − 8·tan 15° = 9.3564 mm; modulus 12·9.3564²/6 = 175.08 mm³.
    const section = groundSection(blank12, { ...unground, rakeAlong: 15 * deg }, 0.5, 8)
    expect(section.area).toBeCloseTo(12 * 9.3564, 3)
    expect(section.modulus).toBeCloseTo(175.08, 2)
  })

  it('of a rake that takes one corner to corner half away bends as a triangle does about its own lopsided axes', () => {
    // A right triangle of legs b about its centroid: ∫y² = ∫z² = b⁴/36, ∫yz = b⁴/72. A unit of moment gives
    // 48·y/b⁴ − 24·z/b⁴: −24/b³ at the right angle (−b/3, b/3), 24/b³ at (2b/3, b/3), 0 at (−b/3, −2b/3).
    const facets = { ...unground, rakeAcross: 45 * deg }
    const section = groundSection(blank12, facets, 0, 0)
    expect(section.area).toBeCloseTo(72, 9)
    expect(section.modulus).toBeCloseTo(12 ** 3 / 24, 9)
  })

  it('has the area that the metal itself shows, counted point by point', () => {
    fc.assert(
      fc.property(anyBlank, usualFacets, degrees(0, 1), (blank, facets, share) => {
        const behind = blank.groundLength * share * 50
        const { area } = groundSection(blank, facets, 1, behind)
        const metal = new MetalOfTheBit(blank, facets, { ...level, groundOffLeading: 1 })
        const fine = 60
        let inside = 0
        for (let i = 0; i < fine; i++) {
          for (let k = 0; k < fine; k++) {
            const y = 1 - ((i + 0.5) / fine) * blank.width
            const z = blank.groundOffWorkSide - ((k + 0.5) / fine) * blank.height
            if (metal.holds([-behind + 1e-9, y, z])) inside++
          }
        }
        const counted = (inside / fine ** 2) * blank.width * blank.height
        // Only squares on the outline can be counted wrong.
        expect(Math.abs(counted - area)).toBeLessThan((4 / fine) * blank.width * blank.height)
      }),
      { numRuns: 60 },
    )
  })

  it('is the end of the ground part of the exact bit', () => {
    fc.assert(
      fc.property(anyBlank, usualFacets, (blank, facets) => {
        const { head } = good(groundBit(blank, facets, { ...level, groundOffLeading: 1 }))
        const ends = head.corners.filter(({ between }) => between.includes('end of grinding'))
        const { area } = groundSection(blank, facets, 1, blank.groundLength)
        if (area > 1e-3) expect(ends.length).toBeGreaterThan(2)
        if (ends.length < 3) expect(area).toBeLessThan(1e-3)
      }),
    )
  })

  it('is nothing where the rake has gone through the bit', () => {
    const facets = { ...unground, rakeAlong: 45 * deg }
    expect(groundSection(blank12, facets, 0, 11.99).area).toBeGreaterThan(0)
    expect(groundSection(blank12, facets, 0, 12.01)).toMatchObject({ area: 0, share: 0, modulus: 0 })
  })

  it('has less metal the further back it is, where rake and underside fall away and the end is square', () => {
    fc.assert(
      fc.property(anyBlank, usualFacets, (blank, facets) => {
        const square = { ...facets, endEdgeAngle: 0, endRelief: 0 }
        const at = (share: number) => groundSection(blank, square, 0, share * blank.groundLength).area
        expect(at(1)).toBeLessThanOrEqual(at(0.5) + 1e-9)
      }),
    )
  })

  it('ahead of the tip is the caller’s mistake', () => {
    expect(() => groundSection(blank12, unground, 0, -1)).toThrow(RangeError)
  })
})
