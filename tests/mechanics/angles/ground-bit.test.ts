import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { middle } from '../../../src/geometry/vector.ts'
import { unground } from '../../../src/mechanics/angles/facets.ts'
import { type BitBlank, groundBit } from '../../../src/mechanics/angles/ground-bit.ts'
import { anyBlank, anySetting, blank12, deg, faults, good, level, usualFacets } from './any-bit.ts'
import { MetalOfTheBit } from './metal-of-the-bit.ts'

describe('the metal of the ground bit', () => {
  it('a blank that nothing is ground off is a box, with the seam where grinding would end', () => {
    const { head, tail } = good(groundBit(blank12, unground, level))
    expect(head.corners.length).toBe(8)
    expect(tail?.corners.length).toBe(8)
    expect(head.edges.length).toBe(12)
    expect(Math.min(...tail!.corners.map(({ at }) => at[0]))).toBe(-100)
  })

  it('its corners, and the middles of its edges, lie on the metal’s skin', () => {
    fc.assert(
      fc.property(anyBlank, usualFacets, anySetting, (blank, facets, setting) => {
        const bit = good(groundBit(blank, facets, setting))
        const metal = new MetalOfTheBit(blank, facets, setting)
        for (const body of [bit.head, bit.tail]) {
          for (const { at } of body?.corners ?? []) expect(metal.holds(at, 2e-6)).toBe(true)
          for (const [a, b] of body?.edges ?? []) expect(metal.holds(middle(a.at, b.at), 2e-6)).toBe(true)
        }
        // Euler's count, so that no corner and no edge is missing.
        for (const body of [bit.head, bit.tail]) {
          if (body === undefined) continue
          const touched = body.corners.flatMap(({ between }) => between)
          // A side of the blank that the body only touches, at the tip or along an edge, is no face of it.
          const faces = [...new Set(touched)].filter((face) => touched.filter((name) => name === face).length > 2)
          expect(body.corners.length - body.edges.length + faces.length).toBe(2)
        }
      }),
    )
  })

  it('facets along the whole bit leave no tail', () => {
    expect(good(groundBit({ ...blank12, groundLength: 100 }, unground, level)).tail).toBeUndefined()
  })
})

describe('a bit that cannot be ground so', () => {
  it.each<[string, Partial<BitBlank>, number, string]>([
    ['the whole end', { groundOffEnd: 100 }, 0, 'groundOffEnd'],
    ['the whole height', { groundOffWorkSide: 12 }, 0, 'groundOffWorkSide'],
    ['the whole width', {}, 12, 'groundOffLeading'],
  ])('%s ground off', (_, change, groundOffLeading, path) => {
    const result = groundBit({ ...blank12, ...change }, unground, { ...level, groundOffLeading })
    expect(faults(result)).toEqual([`contradiction ${path}`])
  })

  it.each([
    ['negative rake', 'groundOffLeading', { rakeAlong: -5 * deg }],
    ['an end edge that leans out over the tip', 'groundOffEnd', { endEdgeAngle: -5 * deg }],
    ['a work-side edge that runs down inwards', 'groundOffWorkSide', { workSideEdgeAngle: -5 * deg }],
  ])('%s needs metal ground off its side first: the remedy says which', (_, path, change) => {
    expect(faults(groundBit(blank12, { ...unground, ...change }, level))).toEqual([`contradiction ${path}`])
    const off = { ...blank12, groundOffEnd: 1, groundOffWorkSide: 1 }
    const setting = { ...level, groundOffLeading: 1 }
    expect(groundBit(off, { ...unground, ...change }, setting).ok).toBe(true)
  })

  it('a wedge that is ground away is named before its shape is asked for', () => {
    const facets = { ...unground, rakeAlong: 50 * deg, endRelief: 40 * deg }
    expect(faults(groundBit(blank12, facets, level))).toEqual(['contradiction facets.endRelief'])
  })

  it.each<[string, Partial<BitBlank>]>([
    ['no width', { width: 0 }],
    ['an endless bit', { length: Number.POSITIVE_INFINITY }],
    ['something added to the end', { groundOffEnd: -1 }],
    ['no ground length', { groundLength: 0 }],
  ])('%s is the caller’s mistake', (_, change) => {
    expect(() => groundBit({ ...blank12, ...change }, unground, level)).toThrow(RangeError)
  })
})
