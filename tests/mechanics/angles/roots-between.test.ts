import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { rootsBetween } from '../../../src/mechanics/angles/roots-between.ts'

/** Coefficients, lowest first, of the polynomial with these roots. */
const withRoots = (roots: readonly number[]) =>
  roots.reduce((poly, root) => poly.concat(0).map((c, at) => (poly[at - 1] ?? 0) - root * c), [1])

describe('roots of a polynomial between two bounds', () => {
  it('finds every root of a quartic that lies between the bounds, and none outside', () => {
    const places = fc.uniqueArray(fc.integer({ min: -50, max: 150 }), { minLength: 4, maxLength: 4 })
    fc.assert(
      fc.property(places, (whole) => {
        const roots = whole.map((n) => n / 100 + 0.001)
        const found = rootsBetween(withRoots(roots), 0, 1)
        const expected = roots.filter((r) => r > 0 && r < 1).toSorted((a, b) => a - b)
        expect(found.length).toBe(expected.length)
        found.forEach((r, at) => {
          expect(r).toBeCloseTo(expected[at]!, 8)
        })
      }),
    )
  })

  it('a polynomial without a change of sign has none', () => {
    expect(rootsBetween([1, 0, 1], -5, 5)).toEqual([])
    expect(rootsBetween([0, 0, 0], 0, 1)).toEqual([])
    expect(rootsBetween([3], 0, 1)).toEqual([])
    expect(rootsBetween([], 0, 1)).toEqual([])
  })
})
