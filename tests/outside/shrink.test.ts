import { describe, expect, it } from 'vitest'
import { givenFit } from '../../src/mechanics/fit/given-fit.ts'
import { assemblyPlan, riseFor } from '../../src/mechanics/fit/temperature-assembly.ts'
import { loadTables } from '../../src/package/load-tables.ts'

const expectWithin = (found: number, published: number, share: number) =>
  expect(Math.abs(found / published - 1), `${found} against ${published}`).toBeLessThanOrEqual(share)

describe('ΔT = (interference + clearance)/(α·d) of a public engineering page on shrink fits', () => {
  it('a rod of 2.0046 cm goes into a hole of 2.0000 cm after 191.67 K of cooling (published exercise)', () => {
    expectWithin(riseFor(0.046, 20, 12e-6), 191.67, 5e-3)
    // Divided by the rod's own diameter, which is what shrinks, it is 191.23: own figure.
    expectWithin(riseFor(0.046, 20.046, 12e-6), 191.23, 1e-4)
  })

  it('an aluminium ring of 438 mm slips over a 440 mm tube with 0.5 mm to spare 248.2 K warmer (inputs published, answer own)', () => {
    const fit = givenFit({
      nominal: 440,
      bore: { smallest: 438, largest: 438 },
      spigot: { smallest: 440, largest: 440 },
    })
    if (!fit.ok) throw new Error('no fit')
    expect(fit.value.interference.most).toBe(2)
    const plan = assemblyPlan({
      diameter: 438,
      interference: fit.value.interference.most,
      hubExpansion: 23e-6,
      ambient: 20,
      hubLimit: 300,
      clearance: 0.5,
    })
    expectWithin(plan.heat.rise, 248.2, 1e-3)
    expectWithin(plan.heat.temperature, 268.2, 1e-3)
  })

  it('0.2 mm on 400 mm is 41.67 K, not the 66.67 printed in Strength of Materials, example 8.8.17, which divides by 250', () => {
    expectWithin(riseFor(0.2, 400, 12e-6), 41.67, 1e-4)
    expectWithin(riseFor(0.2, 250, 12e-6), 66.67, 1e-4)
  })
})

describe('thermal expansion of the materials table lies within published ranges', () => {
  const loaded = loadTables()
  if (!loaded.ok) throw new Error('no tables')
  // Two public tables of linear expansion, 1e-6/K: aluminium alloys 21 to 25, alloy steels 11 to 15, grey iron 10.8 to 11,
  // carbon steel from 10.8; M2 10.0 (20 to 100 °C) in a public data sheet.
  it.each([
    ['aluminium-6061', 21, 25],
    ['steel-1018', 10.8, 13],
    ['steel-4140-prehard', 11, 15],
    ['grey-iron', 10.8, 11],
    ['hss', 10, 10],
  ])('%s', (name, low, high) => {
    const material = loaded.value.materials.find((row) => row.name === name)
    if (material === undefined) throw new Error(`no ${name}`)
    expect(material.expansion * 1e6).toBeGreaterThanOrEqual(low - 1e-9)
    expect(material.expansion * 1e6).toBeLessThanOrEqual(high + 1e-9)
  })
})
