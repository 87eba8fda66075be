import { describe, expect, it } from 'vitest'
import { anglesOf } from '../../src/families/fly-cutter-head/engineering/angles.ts'
import { balanceOf } from '../../src/families/fly-cutter-head/engineering/balance.ts'
import { clampingOf } from '../../src/families/fly-cutter-head/engineering/clamping.ts'
import { cuttingOf } from '../../src/families/fly-cutter-head/engineering/cutting.ts'
import { bitMassOf } from '../../src/families/fly-cutter-head/engineering/mass.ts'
import { reachTableOf } from '../../src/families/fly-cutter-head/engineering/reach-table.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { tablesOf } from '../../src/figures/table.ts'
import { forRandomHeads, headFrom, tables } from './random-heads.ts'

const deg = Math.PI / 180

describe('the reach table', () => {
  const design = headFrom('parameters')
  const rows = reachTableOf(design)
  const own = rows.find(({ asSet }) => asSet)!

  it('steps through round overhangs, ascending, the design’s own among them', () => {
    const overhangs = rows.map(({ overhang }) => overhang)
    expect(overhangs).toEqual([5, 10, 15, 20, 25, 27, 30, 35, 40, 45, 50, 55].map((v) => expect.closeTo(v, 9)))
    expect(own.overhang).toBe(design.layout.bit.overhang)
  })

  it('says of its own overhang what the design says', () => {
    expect(own.swing).toBe(design.swing)
    expect(own.radialRake).toBe(anglesOf(design).radialRake)
    expect(own.advised).toBe(cuttingOf(design).speed.advised!.runAt)
    expect(own.gripRatio).toBe(clampingOf(design).held!.grip.ratio)
    expect(own.deflection).toBe(clampingOf(design).held!.bending!.deflection)
    expect(own.unbalance).toBeCloseTo(1000 * balanceOf(design).at.amount, 6)
  })

  it('has swing and tip depth of the slope: x = 46/√3 + l·cos 7° − 0.5·sin 7°, tip 1.8 mm ahead', () => {
    for (const { overhang, swing, tipDepth } of rows) {
      const x = 46 / Math.sqrt(3) + overhang * Math.cos(7 * deg) - 0.5 * Math.sin(7 * deg)
      expect(swing).toBeCloseTo(2 * Math.hypot(x, 1.8), 9)
      const along = 46 / Math.sqrt(3) / Math.cos(7 * deg) + overhang
      expect(tipDepth).toBeCloseTo(41 + along * Math.sin(7 * deg) + 0.5 * Math.cos(7 * deg), 9)
    }
  })

  it('has more radial rake the longer the bit: the same facet less a smaller lead', () => {
    rows.slice(1).forEach((row, i) => {
      expect(row.radialRake).toBeGreaterThan(rows[i]!.radialRake)
      const lead = (swing: number) => Math.asin(3.6 / swing)
      // The rake face lies square to the slope and not to the axis, which takes a little off.
      expect(row.radialRake - rows[i]!.radialRake).toBeCloseTo(lead(rows[i]!.swing) - lead(row.swing), 2)
    })
  })

  it('moves the bit’s mass by the overhang, cos 7° of it along X', () => {
    const at = balanceOf(design).at.unbalance
    for (const { overhang, unbalance } of rows) {
      const x = at[0] + bitMassOf(design).mass * (overhang - 27) * Math.cos(7 * deg)
      expect(unbalance).toBeCloseTo(1000 * Math.hypot(x, at[1]), 6)
    }
  })

  it('bends the bit more and holds it less the further it stands out', () => {
    rows.slice(1).forEach((row, i) => {
      expect(row.gripRatio!).toBeLessThan(rows[i]!.gripRatio!)
      expect(row.deflection!).toBeGreaterThan(rows[i]!.deflection!)
    })
  })

  it('advises no faster for a wider swing, in any material, and says where the slowest speed is too fast', () => {
    const speed = (v: number | 'too fast' | undefined) => (v === 'too fast' ? 0 : v!)
    rows.slice(1).forEach((row, i) => {
      for (const [k, v] of row.advisedFor.entries()) {
        expect(speed(v)).toBeLessThanOrEqual(speed(rows[i]!.advisedFor[k]))
      }
    })
    const steel = tables.workMaterials.findIndex(({ name }) => name === 'mild-steel')
    // 120 ft/min at 132.4 mm is 88 rev/min, and the slowest speed is 95; at 92.8 mm it is 126.
    expect(rows.find(({ overhang }) => overhang === 40)!.advisedFor[steel]).toBe('too fast')
    expect(rows.find(({ overhang }) => overhang === 20)!.advisedFor[steel]).toBeCloseTo((95 * Math.PI) / 30, 9)
  })

  it('says what is wrong at its ends: tail out, or a screw on nothing', () => {
    expect(rows[0]!.remark).toBe('tail out of the far side')
    expect(rows.at(-1)!.remark).toContain('a screw bears on nothing')
    expect(own.remark).toBe('')
  })

  it('takes a bit ground for its work as it is ground now', () => {
    const ground = headFrom('parameters', [
      / {2}# Ground for aluminium[\s\S]*?length: 6 .*\n/,
      '  grind: for-work-material\n',
    ])
    const rakes = reachTableOf(ground).map(({ radialRake }) => radialRake / deg)
    expect(rakes.some((rake) => Math.abs(rake - 16) < 1e-9)).toBe(true)
    expect(rakes[0]!).toBeLessThan(15.5)
  })

  it('is asked for in the units of the file', () => {
    const inches = headFrom('parameters-inch')
    const steps = reachTableOf(inches)
      .filter(({ asSet }) => !asSet)
      .map(({ overhang }) => overhang / 25.4)
    for (const step of steps) expect(step * 16).toBeCloseTo(Math.round(step * 16), 9)
    const { columns, rows } = tablesOf(flyCutterHead.tables, inches).find(({ id }) => id === 'reach')!
    const at = columns.findIndex(({ label }) => label === 'unbalance')
    expect(columns[at]!.unit).toBe('oz·in')
    const own = reachTableOf(inches).findIndex(({ asSet }) => asSet)
    // 1 oz·in = 28.3495 g × 25.4 mm = 720.078 g·mm.
    expect(rows[own]![at]).toBeCloseTo(reachTableOf(inches)[own]!.unbalance / 720.078, 4)
  })

  it('can be made of any head', () => {
    forRandomHeads(25, (head) => {
      const rows = reachTableOf(head)
      expect(rows.filter(({ asSet }) => asSet).length).toBe(1)
      expect(rows.length).toBeLessThan(16)
      expect(tablesOf(flyCutterHead.tables, head).length).toBeGreaterThan(3)
    })
  })
})
