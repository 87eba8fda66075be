import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leastChange, type Outcome } from '../../src/checks/least-change.ts'

/** A finding that goes at `threshold`, its figure falling towards the limit along a curve. */
function finding(threshold: number, bend: number, tellsFigure = true) {
  const short = (change: number) => (threshold - change) * (1 + bend * change)
  const asked: number[] = []
  const ask = (change: number): Outcome => {
    asked.push(change)
    return change >= threshold ? { gone: true } : { gone: false, short: tellsFigure ? short(change) : undefined }
  }
  return { ask, asked, short: tellsFigure ? short(0) : undefined }
}

describe('the least change that clears a finding', () => {
  it('is the same with and without figures to aim by, bracketed within 4 %', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 39, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (t, bend) => {
          const [aimed, blind] = [finding(t, bend), finding(t, bend, false)]
          const found = leastChange(0.1, 40, aimed.short, aimed.ask)!
          expect(found).toEqual(leastChange(0.1, 40, blind.short, blind.ask))
          expect(found.low < t && t <= found.high).toBe(true)
          expect(found.high - found.low).toBeLessThanOrEqual(0.04 * found.high)
        },
      ),
    )
  })

  it('takes three questions where the figure runs straight to its limit, and never asks one twice', () => {
    const { ask, asked, short } = finding(7.4, 0)
    leastChange(0.1, 40, short, ask)
    expect(asked.length).toBe(3)
    const blind = finding(7.4, 0, false)
    leastChange(0.1, 40, undefined, blind.ask)
    expect(blind.asked.length).toBeGreaterThan(7)
    expect(new Set(blind.asked).size).toBe(blind.asked.length)
  })

  it('is unknown where nothing up to the room clears it', () => {
    const { ask, short } = finding(41, 0)
    expect(leastChange(0.1, 40, short, ask)).toBeUndefined()
  })

  it('is found where a larger step would have jumped over it', () => {
    // Gone between 3 and 5 only: too little below, too much of the other thing above.
    const ask = (change: number): Outcome =>
      change < 3
        ? { gone: false, short: 3 - change }
        : change <= 5
          ? { gone: true }
          : { gone: false, short: 3 - change }
    expect(leastChange(0.1, 40, 3, ask)!.high).toBeCloseTo(3, 0)
  })

  it('is not looked for where there is nowhere to go', () => {
    const { ask, short } = finding(7.4, 0)
    for (const room of [0, -0.001, Number.NaN]) expect(() => leastChange(0.1, room, short, ask)).toThrow(RangeError)
    expect(() => leastChange(0, 40, short, ask)).toThrow(RangeError)
  })
})
