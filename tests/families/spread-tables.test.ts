import { describe, expect, it } from 'vitest'
import {
  spreadCausesTable,
  spreadOfJointTable,
  spreadTable,
} from '../../src/families/fly-cutter-head/figures/spread-tables.ts'
import { headFrom } from './random-heads.ts'

const head = headFrom('parameters')
const row = (label: string) => spreadTable(head)!.rows.find((r) => String(r[0]).includes(label)) as number[]

describe('what the tolerances of the template do', () => {
  it('to the wall between bore and slot is what the slopes say, by hand', () => {
    // The wall is −R·sin a + (h − T)·cos a − depth, with h = long side − (A/2)·tan a. Tolerances: long side and bore depth
    // by ISO 2768-m ±0.3 and ±0.2, slot depth ±0.1, face angle ±15′; bore and bar move it by less than 0.5 %.
    const a = (7 * Math.PI) / 180
    const half = 46 / Math.sqrt(3)
    const minutes = (15 * Math.PI) / 180 / 60
    const onAngle = (-10 * Math.cos(a) - (41 - 24) * Math.sin(a) - (half / Math.cos(a) ** 2) * Math.cos(a)) * minutes
    const onBar = (0.3 / Math.sqrt(3)) * Math.tan(a) * Math.cos(a)
    const root = Math.hypot(0.3 * Math.cos(a), 0.2 * Math.cos(a), 0.1, onAngle, onBar)
    const [, middle, worstLow, worstHigh, low, high] = row('slot and bore')
    expect(middle! - low!).toBeCloseTo(root, 2)
    expect(high! - middle!).toBeCloseTo(root, 2)
    const sum = 0.3 * Math.cos(a) + 0.2 * Math.cos(a) + 0.1 + Math.abs(onAngle) + onBar
    expect((worstHigh! - worstLow!) / 2).toBeCloseTo(sum, 1)
  })

  it('has in the simulation the third of the root of squares, as near as 150 parts can tell', () => {
    for (const label of ['slot and bore', 'Swing']) {
      const [, , , , low, high, mean, deviation] = row(label)
      expect(deviation! / ((high! - low!) / 6)).toBeGreaterThan(0.8)
      expect(deviation! / ((high! - low!) / 6)).toBeLessThan(1.2)
      expect(Math.abs(mean! - (low! + high!) / 2)).toBeLessThan((4 * deviation!) / Math.sqrt(150) + 0.002)
    }
  })

  it('is the same every time', () => {
    const again = headFrom('parameters')
    expect([spreadTable(again), spreadOfJointTable(again), spreadCausesTable(again)]).toEqual([
      spreadTable(head),
      spreadOfJointTable(head),
      spreadCausesTable(head),
    ])
  })

  it('says which tolerance to tighten when too many parts come out bad, and which do nothing', () => {
    // 3.05 mm of wall asked for 3: half of a standard deviation.
    const tight = headFrom('parameters', ['  depth: 24\n', '  depth: 27.07\n'])
    const rows = spreadCausesTable(tight)!.rows
    expect(rows.filter((r) => r[3] === 'tighten this one first').map((r) => r[1])).toEqual(['body face.long-side'])
    expect(String(rows.at(-1)![1])).toContain('body step.depth')
    const [, , , , , , , , good] = spreadTable(tight)!.rows.find((r) =>
      String(r[0]).includes('slot and bore'),
    ) as number[]
    expect(good!).toBeGreaterThan(50)
    expect(good!).toBeLessThan(97)
  })
})
