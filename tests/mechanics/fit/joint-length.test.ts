import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { flatShare, type Interruption, jointLength } from '../../../src/mechanics/fit/joint-length.ts'

describe('length of a joint', () => {
  it('chamfers at both ends and a slot into the far end leave what lies between', () => {
    const { effective, stretches } = jointLength({ from: 0, to: 24 }, [
      { from: 0, to: 1 },
      { from: 23, to: 24 },
      { from: 20.5, to: 30 },
    ])
    expect(effective).toBeCloseTo(19.5, 12)
    expect(stretches).toEqual([{ from: 1, to: 20.5 }])
  })

  it('a hole across the middle leaves two stretches, and both count', () => {
    const { effective, stretches } = jointLength({ from: 0, to: 20 }, [{ from: 9, to: 12 }])
    expect(effective).toBeCloseTo(17, 12)
    expect(stretches).toEqual([
      { from: 0, to: 9 },
      { from: 12, to: 20 },
    ])
  })

  it('a flat to let the air out takes its share of the circumference along the whole spigot', () => {
    const share = flatShare(22, 0.8)
    // Half angle acos(1 − 0.8/11) = 21.98°: 43.96° of 360.
    expect(share).toBeCloseTo(0.1221, 4)
    const { effective, stretches } = jointLength({ from: 0, to: 20 }, [
      { from: 0, to: 20, share },
      { from: 0, to: 1 },
    ])
    expect(effective).toBeCloseTo(19 * (1 - share), 12)
    expect(stretches).toEqual([{ from: 1, to: 20 }])
  })

  it('a short flat narrows the joint and does not part it', () => {
    const { effective, stretches } = jointLength({ from: 0, to: 20 }, [{ from: 5, to: 10, share: 0.2 }])
    expect(effective).toBeCloseTo(19, 12)
    expect(stretches).toEqual([{ from: 0, to: 20 }])
  })

  it('nothing is left where everything is cut', () => {
    expect(jointLength({ from: 0, to: 20 }, [{ from: -5, to: 30 }])).toEqual({ effective: 0, stretches: [] })
    expect(
      jointLength({ from: 0, to: 20 }, [
        { from: 0, to: 20, share: 0.6 },
        { from: 0, to: 20, share: 0.6 },
      ]).effective,
    ).toBe(0)
    expect(jointLength({ from: 3, to: 3 }, []).effective).toBe(0)
  })

  it('a flat takes nothing, half or all', () => {
    expect(flatShare(25, 0)).toBe(0)
    expect(flatShare(25, 12.5)).toBeCloseTo(0.5, 12)
    expect(flatShare(25, 25)).toBeCloseTo(1, 12)
    expect(() => flatShare(25, 26)).toThrow(RangeError)
  })

  const cuts = fc.array(
    fc
      .tuple(
        fc.double({ min: -10, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 15, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
      )
      .map(([from, length, share]): Interruption => ({ from, to: from + length, share })),
    { maxLength: 6 },
  )

  it('is what adding up thin slices gives', () => {
    fc.assert(
      fc.property(cuts, (interruptions) => {
        const slices = 6000
        let sum = 0
        for (let slice = 0; slice < slices; slice++) {
          const at = ((slice + 0.5) / slices) * 30
          const lost = interruptions.reduce(
            (all, { from, to, share = 1 }) => (from <= at && at <= to ? all + share : all),
            0,
          )
          sum += Math.max(0, 1 - lost) * (30 / slices)
        }
        // Each cut's two ends may fall inside a slice.
        expect(Math.abs(jointLength({ from: 0, to: 30 }, interruptions).effective - sum)).toBeLessThan(
          12 * (30 / slices),
        )
      }),
      { numRuns: 40 },
    )
  })

  it('never grows by cutting more', () => {
    fc.assert(
      fc.property(cuts, cuts, (some, more) => {
        const few = jointLength({ from: 0, to: 30 }, some).effective
        const many = jointLength({ from: 0, to: 30 }, [...some, ...more]).effective
        expect(many).toBeLessThanOrEqual(few + 1e-9)
        expect(many).toBeGreaterThanOrEqual(0)
      }),
    )
  })

  it('throws on stretches that run backwards and shares that are none', () => {
    expect(() => jointLength({ from: 5, to: 0 }, [])).toThrow(RangeError)
    expect(() => jointLength({ from: 0, to: 5 }, [{ from: 3, to: 2 }])).toThrow(RangeError)
    expect(() => jointLength({ from: 0, to: 5 }, [{ from: 0, to: 2, share: 1.2 }])).toThrow(RangeError)
    expect(() => jointLength({ from: 0, to: Number.NaN }, [])).toThrow(RangeError)
  })
})
