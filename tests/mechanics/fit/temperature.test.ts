import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { interferenceChange, temperatureLosing, warmthLosing } from '../../../src/mechanics/fit/service-temperature.ts'
import {
  type AssemblyInput,
  assemblyClearance,
  assemblyPlan,
  heatLimits,
  riseFor,
  steelInNitrogen,
} from '../../../src/mechanics/fit/temperature-assembly.ts'

/** A steel head on a 22 mm spigot in a shop at 18 °C. */
const steel: AssemblyInput = {
  diameter: 22,
  interference: 0.04,
  hubExpansion: 11.5e-6,
  ambient: 18,
  hubLimit: heatLimits['plain-steel'],
}

describe('putting a joint together by heat', () => {
  it('opens the bore by the interference and room to slip in, and no further', () => {
    const plan = assemblyPlan(steel)
    expect(plan.clearance).toBeCloseTo(0.022, 12)
    expect(plan.heat.rise).toBeCloseTo((0.04 + 0.022) / (11.5e-6 * 22), 9)
    expect(plan.heat.temperature).toBeCloseTo(18 + 245.06, 2)
    expect(plan.heat.possible).toBe(true)
    // The bore at that temperature, grown from its size: the spigot stands the clearance inside it.
    const grown = 22 * (1 + 11.5e-6 * plan.heat.rise)
    expect(grown - (22 + 0.04)).toBeCloseTo(0.022, 9)
  })

  it('room to slip in is a thousandth of the diameter, 0.02 mm at least', () => {
    expect(assemblyClearance(12)).toBe(0.02)
    expect(assemblyClearance(20)).toBeCloseTo(0.02, 12)
    expect(assemblyClearance(50)).toBeCloseTo(0.05, 12)
  })

  it('plain steel takes 300 °C, near hardened parts 200, aluminium 150', () => {
    expect(heatLimits).toEqual({ 'plain-steel': 300, 'near-hardened': 200, aluminium: 150 })
    expect(assemblyPlan({ ...steel, hubLimit: heatLimits['near-hardened'] }).heat.possible).toBe(false)
    // Aluminium grows twice as much, and so gets there below its own limit.
    const aluminium = assemblyPlan({ ...steel, hubExpansion: 23.6e-6, hubLimit: heatLimits.aluminium })
    expect(aluminium.heat.temperature).toBeCloseTo(18 + 119.41, 1)
    expect(aluminium.heat.possible).toBe(true)
  })

  it.each([0, -0.01])('at an interference of %d mm heat is not needed and creates nothing', (interference) => {
    const plan = assemblyPlan({ ...steel, interference, cooling: steelInNitrogen })
    expect(plan.need).toBe('none')
    expect(plan.statement).toMatch(/never creates interference/)
    expect(plan.heat).toEqual({ rise: 0, temperature: 18, limit: 300, possible: true })
    expect(plan.cold).toEqual({ temperature: 18, possible: true })
    expect(plan.both?.rise).toBe(0)
  })

  it('at a small interference a shrunk joint holds more than a pressed one, and says that heat adds none', () => {
    expect(assemblyPlan({ ...steel, interference: 0.002 }).statement).toMatch(/holds more.*adds nothing/s)
  })
})

describe('cooling the spigot', () => {
  it('in liquid nitrogen steel shrinks 8.5e-6 per K (from memory): 40 µm on 22 mm', () => {
    const shrunk = 8.5e-6 * 22 * (18 + 196)
    expect(shrunk).toBeCloseTo(0.04, 4)
    // So it takes 18 µm of interference and the 22 µm to slip in, and no more.
    const enough = assemblyPlan({ ...steel, interference: 0.018, cooling: steelInNitrogen })
    expect(enough.cold?.possible).toBe(true)
    const tooMuch = assemblyPlan({ ...steel, interference: 0.0185, cooling: steelInNitrogen })
    expect(tooMuch.cold?.possible).toBe(false)
    expect(enough.both?.rise).toBe(0)
    expect(tooMuch.both?.rise).toBeGreaterThan(0)
  })

  it('takes its share of the parting, and heat the rest', () => {
    const cooled = { ...steel, cooling: steelInNitrogen }
    const plan = assemblyPlan(cooled)
    const shrunk = 8.5e-6 * 22 * (18 + 196)
    expect(plan.both?.spigotTemperature).toBe(-196)
    const grown = 11.5e-6 * 22 * plan.both!.rise
    expect(grown + shrunk).toBeCloseTo(plan.parting, 12)
    expect(plan.both!.temperature).toBeLessThan(plan.heat.temperature)
  })

  it('saves a head that heat alone would spoil', () => {
    const head = { ...steel, hubLimit: heatLimits['near-hardened'], cooling: steelInNitrogen }
    const plan = assemblyPlan(head)
    expect([plan.heat.possible, plan.cold?.possible, plan.both?.possible]).toEqual([false, false, true])
  })

  it('with something no colder than the shop does nothing', () => {
    const plan = assemblyPlan({ ...steel, cooling: { coldest: 25, expansion: 8.5e-6 } })
    expect(plan.both).toMatchObject({ rise: plan.heat.rise, spigotTemperature: 18 })
    expect(plan.cold?.possible).toBe(false)
  })
})

it('more interference wants more heat, and a larger joint of the same ratio the same', () => {
  const size = fc.double({ min: 20, max: 120, noNaN: true })
  fc.assert(
    fc.property(size, fc.double({ min: 0.0001, max: 0.003, noNaN: true }), (diameter, ratio) => {
      const plan = assemblyPlan({ ...steel, diameter, interference: ratio * diameter })
      expect(plan.heat.rise).toBeCloseTo((ratio + 0.001) / 11.5e-6, 6)
      const more = assemblyPlan({ ...steel, diameter, interference: ratio * diameter + 0.001 })
      expect(more.heat.temperature).toBeGreaterThan(plan.heat.temperature)
    }),
  )
})

it('heat without metal, below absolute zero or without a figure is the caller’s mistake', () => {
  expect(() => riseFor(0.05, 0, 11.5e-6)).toThrow(RangeError)
  expect(() => riseFor(0.05, 20, 0)).toThrow(RangeError)
  expect(() => riseFor(-0.05, 20, 11.5e-6)).toThrow(RangeError)
  expect(() => assemblyPlan({ ...steel, ambient: -300 })).toThrow(RangeError)
  expect(() => assemblyPlan({ ...steel, clearance: -0.01 })).toThrow(RangeError)
  expect(() => assemblyPlan({ ...steel, interference: Number.NaN })).toThrow(RangeError)
})

describe('interference at work', () => {
  const alike = { hub: 11.5e-6, shaft: 11.5e-6 }
  const aluminium = { hub: 23.6e-6, shaft: 11.5e-6 }

  it('a head of the arbor’s own material loses nothing while both are equally warm', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 200, noNaN: true }), (at) => {
        expect(interferenceChange(25, alike, { hub: at, shaft: at })).toBeCloseTo(0, 15)
      }),
    )
  })

  it('a warm head on a cold arbor loses, and a warm arbor in a cold head gains', () => {
    // 25 mm · 11.5e-6 · 30 K = 8.6 µm.
    expect(interferenceChange(25, alike, { hub: 50, shaft: 20 })).toBeCloseTo(-0.008625, 9)
    expect(interferenceChange(25, alike, { hub: 20, shaft: 50 })).toBeCloseTo(0.008625, 9)
    expect(warmthLosing(0.008625, 25, 11.5e-6)).toBeCloseTo(30, 9)
  })

  it('an aluminium head on a steel arbor lets go when both get warm', () => {
    const at = temperatureLosing(0.0125, 25, aluminium)
    expect(at).toBeCloseTo(20 + 0.0125 / (25 * 12.1e-6), 9)
    expect(interferenceChange(25, aluminium, { hub: at!, shaft: at! })).toBeCloseTo(-0.0125, 12)
  })

  it('a steel head on an aluminium arbor never lets go by warmth, and nothing to spare is lost at once', () => {
    expect(temperatureLosing(0.01, 25, { hub: 11.5e-6, shaft: 23.6e-6 })).toBeUndefined()
    expect(temperatureLosing(0.01, 25, alike)).toBeUndefined()
    expect(temperatureLosing(-0.01, 25, aluminium)).toBe(20)
    expect(warmthLosing(-0.01, 25, 11.5e-6)).toBe(0)
  })
})
