import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { noseOf } from '../../../src/mechanics/angles/nose.ts'
import { deg, degrees } from './any-bit.ts'

describe('the nose between the two edges', () => {
  it('on a square corner takes its radius off each edge and lifts nothing', () => {
    const nose = noseOf({ cuttingEdgeAngle: 90 * deg, minorCuttingEdgeAngle: 0 }, 0.8)
    expect(nose.edgeTaken).toBeCloseTo(0.8, 14)
    expect(nose.centre.inwards).toBeCloseTo(0.8, 14)
    expect(nose.centre.up).toBeCloseTo(0.8, 14)
    expect(nose.lift).toBeCloseTo(0, 14)
    expect(nose.setBack).toBeCloseTo(0, 14)
  })

  it('touches both edges, and its lift and set-back are where a walk round it finds its lowest and outermost point', () => {
    fc.assert(
      fc.property(degrees(90, 120), degrees(0, 20), fc.double({ min: 0.1, max: 3, noNaN: true }), (kappa, minor, r) => {
        const nose = noseOf({ cuttingEdgeAngle: kappa, minorCuttingEdgeAngle: minor }, r)
        const { inwards, up } = nose.centre
        // Distances of the centre from the two edges through the sharp corner, (out, up) = (cos, sin).
        expect(Math.abs(-inwards * Math.sin(kappa) - up * Math.cos(kappa))).toBeCloseTo(r, 10)
        expect(Math.abs(-inwards * Math.sin(minor) + up * Math.cos(minor))).toBeCloseTo(r, 10)
        let [lowest, outermost] = [Infinity, -Infinity]
        const [first, last] = [-Math.PI / 2 - minor, kappa - Math.PI / 2]
        for (let i = 0; i <= 20_000; i++) {
          const turn = first + ((last - first) * i) / 20_000
          lowest = Math.min(lowest, up + r * Math.sin(turn))
          outermost = Math.max(outermost, -inwards + r * Math.cos(turn))
        }
        expect(nose.lift).toBeCloseTo(lowest, 6)
        expect(nose.setBack).toBeCloseTo(-outermost, 6)
      }),
      { numRuns: 20 },
    )
  })

  it('says nothing about its lowest or outermost point where an edge beyond it runs lower or further out', () => {
    const leant = noseOf({ cuttingEdgeAngle: 80 * deg, minorCuttingEdgeAngle: -2 * deg }, 0.5)
    expect(leant.lift).toBeUndefined()
    expect(leant.setBack).toBeUndefined()
  })

  it('a negative radius, or edges that leave no corner, are the caller’s mistake', () => {
    expect(() => noseOf({ cuttingEdgeAngle: 1.5, minorCuttingEdgeAngle: 0 }, -1)).toThrow(RangeError)
    expect(() => noseOf({ cuttingEdgeAngle: 150 * deg, minorCuttingEdgeAngle: 30 * deg }, 1)).toThrow(RangeError)
    expect(() => noseOf({ cuttingEdgeAngle: 1, minorCuttingEdgeAngle: Math.PI / 2 }, 1)).toThrow(RangeError)
  })
})
