import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Result } from '../../../src/input/problem.ts'
import { givenFit, measuredFit } from '../../../src/mechanics/fit/given-fit.ts'
import { isoFit } from '../../../src/mechanics/fit/iso-fit.ts'
import { interferenceOf, inwardTo } from '../../../src/mechanics/fit/limits.ts'
import { type MatchedInput, matchedFit, sizeAt20 } from '../../../src/mechanics/fit/matched-fit.ts'
import { zoneLimits } from '../../../src/mechanics/fit/zone.ts'
import { loadTables } from '../../../src/package/load-tables.ts'

const loaded = loadTables()
if (!loaded.ok) throw new Error('no tables')
const { iso286 } = loaded.value

/** The usual matched fit of a 22 mm bore. */
const usual: MatchedInput = { nominal: 22, ratio: 0.0015, spread: 0.0003 }

const good = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}
const wrong = (result: Result<unknown>) => (result.ok ? [] : result.problems.map((p) => [p.where.path, p.code]))

describe('a matched fit', () => {
  it('turns the spigot 0.0012 to 0.0018 of the bore over the bore that was measured', () => {
    const fit = good(matchedFit({ ...usual, measuredBore: { size: 22.013 } }))
    expect(fit.measured).toBe(true)
    expect(fit.diameter).toBe(22.013)
    expect(fit.bore).toEqual({ smallest: 22.013, largest: 22.013 })
    // 22.013 + 0.026416 and + 0.039623, to whole µm inside them.
    expect(fit.interference).toEqual({ least: 0.026416, most: 0.039623 })
    expect(fit.spigot).toEqual({ smallest: 22.04, largest: 22.052 })
    expect(fit.turnTo).toEqual([{ bore: 22.013, spigot: fit.spigot }])
  })

  it('shows what the ends of the bore’s tolerance would ask before the bore is measured', () => {
    const boreLimits = good(zoneLimits('H7', 'hole', 22, iso286))
    const fit = good(matchedFit({ ...usual, boreLimits }))
    expect(fit.measured).toBe(false)
    expect(fit.bore).toEqual({ smallest: 22, largest: 22.021 })
    expect(fit.turnTo).toEqual([
      { bore: 22, spigot: { smallest: 22.027, largest: 22.039 } },
      { bore: 22.021, spigot: { smallest: 22.048, largest: 22.06 } },
    ])
    // The tolerance of the bore does not add to that of the interference: that is what matching is for.
    expect(fit.interference).toEqual({ least: 0.0264, most: 0.0396 })
    const unmatched = interferenceOf(fit.bore, fit.spigot)
    expect(unmatched.least).toBeLessThan(fit.interference.least - 0.015)
  })

  it('keeps its interference whatever the bore came out as', () => {
    fc.assert(
      fc.property(fc.double({ min: 21.5, max: 22.9, noNaN: true }), (size) => {
        const fit = good(matchedFit({ ...usual, measuredBore: { size } }))
        const [turn] = fit.turnTo
        if (turn === undefined) throw new Error('nothing to turn')
        expect(turn.spigot.smallest - turn.bore).toBeGreaterThanOrEqual(fit.interference.least - 2e-6)
        expect(turn.spigot.largest - turn.bore).toBeLessThanOrEqual(fit.interference.most + 2e-6)
        expect(turn.spigot.smallest).toBeLessThanOrEqual(turn.spigot.largest)
      }),
    )
  })

  it('prints in tenths of a thou for an inch shop', () => {
    const fit = good(matchedFit({ nominal: 25.4, ratio: 0.0015, spread: 0.0003, printStep: 0.00254 }))
    expect(fit.spigot.smallest / 25.4).toBeCloseTo(1.0012, 7)
    expect(fit.spigot.largest / 25.4).toBeCloseTo(1.0018, 7)
  })

  it('a bore measured warm from the cut is smaller at 20 °C', () => {
    // 22 mm of steel at 45 °C: 25 K · 11.5e-6 · 22.02 = 6.33 µm.
    const warm = { temperature: 45, expansion: 11.5e-6 }
    expect(sizeAt20({ size: 22.02, warm })).toBeCloseTo(22.013671, 6)
    expect(sizeAt20({ size: 22.02 })).toBe(22.02)
    const fit = good(matchedFit({ ...usual, measuredBore: { size: 22.02, warm } }))
    expect(fit.bore.smallest).toBeCloseTo(22.013671, 6)
    expect(() => sizeAt20({ size: -1 })).toThrow(RangeError)
  })

  it.each<[string, Partial<MatchedInput>, readonly (readonly string[])[]]>([
    ['no bore', { nominal: 0 }, [['nominal', 'out-of-range']]],
    ['a negative ratio', { ratio: -0.001 }, [['ratio', 'out-of-range']]],
    ['a spread beyond reason', { spread: 0.006 }, [['spread', 'out-of-range']]],
    ['a printed step of nothing', { printStep: 0 }, [['printStep', 'out-of-range']]],
    ['a measured bore of nothing', { measuredBore: { size: 0 } }, [['measuredBore.size', 'out-of-range']]],
    ['a bore measured in inches', { measuredBore: { size: 0.866 } }, [['measuredBore', 'contradiction']]],
    ['swapped limits', { boreLimits: { smallest: 22.02, largest: 22 } }, [['boreLimits', 'contradiction']]],
  ])('refuses %s', (_name, change, problems) => {
    expect(wrong(matchedFit({ ...usual, ...change }))).toEqual(problems)
  })

  it('a spread wider than the interference leaves clearance at one end, which is the joint’s matter', () => {
    expect(good(matchedFit({ ...usual, ratio: 0.0001 })).interference.least).toBeLessThan(0)
  })
})

describe('printed limits', () => {
  const tolerance = fc
    .tuple(fc.double({ min: 5, max: 100, noNaN: true }), fc.double({ min: 0, max: 0.1, noNaN: true }))
    .map(([smallest, width]) => ({ smallest, largest: smallest + width }))

  it('lie inside the tolerance wherever one of their steps does, and waste less than a step at either end', () => {
    fc.assert(
      fc.property(tolerance, fc.constantFrom(0.001, 0.005, 0.00254), (limits, step) => {
        const printed = inwardTo(limits, step)
        expect(printed.smallest).toBeLessThanOrEqual(printed.largest)
        expect(Math.abs(printed.smallest / step - Math.round(printed.smallest / step))).toBeLessThan(1e-3)
        if (limits.largest - limits.smallest < step) return
        expect(printed.smallest).toBeGreaterThanOrEqual(limits.smallest - 2e-6)
        expect(printed.largest).toBeLessThanOrEqual(limits.largest + 2e-6)
        expect(printed.smallest - limits.smallest).toBeLessThan(step + 1e-6)
        expect(limits.largest - printed.largest).toBeLessThan(step + 1e-6)
      }),
    )
  })

  it('of a tolerance narrower than a step are its nearest step, twice', () => {
    expect(inwardTo({ smallest: 22.0302, largest: 22.0304 }, 0.001)).toEqual({ smallest: 22.03, largest: 22.03 })
    expect(inwardTo({ smallest: 22.03, largest: 22.03 }, 0.001)).toEqual({ smallest: 22.03, largest: 22.03 })
    expect(() => inwardTo({ smallest: 1, largest: 2 }, 0)).toThrow(RangeError)
  })
})

describe('limits given outright', () => {
  const limits = {
    nominal: 25,
    bore: { smallest: 25, largest: 25.02 },
    spigot: { smallest: 25.03, largest: 25.04 },
  }

  it('leave least and most interference', () => {
    const fit = good(givenFit(limits))
    expect(fit.interference).toEqual({ least: 0.01, most: 0.04 })
    expect(fit.diameter).toBe(25)
  })

  it.each([
    ['swapped', { bore: { smallest: 25.02, largest: 25 } }, [['bore', 'contradiction']]],
    ['in inches', { spigot: { smallest: 0.985, largest: 0.986 } }, ['spigot.smallest', 'spigot.largest']],
    ['of another bore', { nominal: 30 }, ['bore.smallest', 'bore.largest', 'spigot.smallest', 'spigot.largest']],
    ['of nothing', { bore: { smallest: 0, largest: 25 } }, [['bore.smallest', 'out-of-range']]],
    ['of a bore of nothing', { nominal: 0 }, [['nominal', 'out-of-range']]],
  ])('are refused when %s', (_name, change, expected) => {
    const problems = expected.map((e) => (typeof e === 'string' ? [e, 'contradiction'] : e))
    expect(wrong(givenFit({ ...limits, ...change }))).toEqual(problems)
  })
})

describe('after measuring', () => {
  const fit = good(isoFit('H7/s6', 25, iso286))

  it('a measured size takes the place of its limits', () => {
    const spigot = good(measuredFit(fit, { spigot: 25.031 }))
    expect(spigot.interference).toEqual({ least: 0.01, most: 0.031 })
    expect([spigot.kind, spigot.name]).toEqual(['iso-286', 'H7/s6'])
    const both = good(measuredFit(fit, { spigot: 25.031, bore: 25.025 }))
    expect(both.interference).toEqual({ least: 0.006, most: 0.006 })
    expect(both.diameter).toBe(25.025)
    expect(good(measuredFit(fit, {})).interference).toEqual(fit.interference)
  })

  it('a spigot turned under the bore shows clearance', () => {
    expect(good(measuredFit(fit, { spigot: 24.99, bore: 25.01 })).interference).toEqual({ least: -0.02, most: -0.02 })
  })

  it('measuring never widens what is open', () => {
    fc.assert(
      fc.property(fc.double({ min: 25, max: 25.021, noNaN: true }), (bore) => {
        const { least, most } = good(measuredFit(fit, { bore })).interference
        expect(least).toBeGreaterThanOrEqual(fit.interference.least - 1e-6)
        expect(most).toBeLessThanOrEqual(fit.interference.most + 1e-6)
      }),
    )
  })

  it('a matched spigot that is already turned is judged against the bore as it is, or as it may be', () => {
    const matched = good(matchedFit({ ...usual, boreLimits: { smallest: 22, largest: 22.021 } }))
    expect(good(measuredFit(matched, { spigot: 22.04 })).interference).toEqual({ least: 0.019, most: 0.04 })
    expect(good(measuredFit(matched, { spigot: 22.04, bore: 22.012 })).interference).toEqual({
      least: 0.028,
      most: 0.028,
    })
    expect(() => measuredFit(matched, { bore: 22.01 })).toThrow(RangeError)
  })

  it('a slip of the pen is a problem', () => {
    expect(wrong(measuredFit(fit, { spigot: 35.03 }))).toEqual([
      ['spigot.smallest', 'contradiction'],
      ['spigot.largest', 'contradiction'],
    ])
  })
})
