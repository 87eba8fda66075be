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
    // by ISO 2768-m ±0.3 and ±0.2, slot depth ±0.1, face angle ±15′, bar h11 (−0.16); the bore moves it by less than 0.5 %.
    const a = (7 * Math.PI) / 180
    const half = 46 / Math.sqrt(3)
    const minutes = (15 * Math.PI) / 180 / 60
    const onAngle = (-10 * Math.cos(a) - (41 - 24) * Math.sin(a) - (half / Math.cos(a) ** 2) * Math.cos(a)) * minutes
    const onBar = (0.08 / Math.sqrt(3)) * Math.tan(a) * Math.cos(a)
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

  it('to the place of the slot: the flat it is measured from adds half of its own tolerance (h11 of 46 mm: 0.16)', () => {
    // Ahead = size/2 − from the flat: 0.1 of the slot, 0.04 of half the bar either way, about a middle 0.04 lower.
    const [, middle, worstLow, worstHigh, low, high] = row('ahead of centre')
    expect(middle).toBeCloseTo(2.4 - 0.04, 9)
    expect([worstLow, worstHigh]).toEqual([expect.closeTo(2.36 - 0.14, 9), expect.closeTo(2.36 + 0.14, 9)])
    expect((high! - low!) / 2).toBeCloseTo(Math.hypot(0.1, 0.04), 9)
  })

  it('to the thread in the wall is the tolerance of the wall: ISO 2768-m on 9 mm', () => {
    const [, middle, worstLow, worstHigh] = row('in the wall')
    expect([middle, worstLow, worstHigh]).toEqual([expect.closeTo(9), expect.closeTo(8.8), expect.closeTo(9.2)])
  })

  it('to the interference: 0.0015 ± 0.0003 of 20 mm, whatever the bore came out as; and that is what the joint carries by', () => {
    const [, middle, worstLow, worstHigh, , , , deviation] = row('Interference')
    expect([middle, worstLow, worstHigh].map((v) => Number(v!.toFixed(9)))).toEqual([0.03, 0.024, 0.036])
    expect(deviation! / (0.006 / 3)).toBeGreaterThan(0.8)
    expect(deviation! / (0.006 / 3)).toBeLessThan(1.2)
    // Grip rises in proportion to what smoothing leaves: 0.01 mm is lost (0.4 of each Rz of 6.3 µm, both sides).
    const [, torque, from, to] = spreadOfJointTable(head)!.rows[0] as number[]
    expect(from! / torque!).toBeCloseTo((0.024 - 0.01) / (0.03 - 0.01), 1)
    expect(to! / torque!).toBeCloseTo((0.036 - 0.01) / (0.03 - 0.01), 1)
    const causes = spreadCausesTable(head)!.rows.filter((r) => String(r[0]).startsWith('Torque'))
    expect(causes[0]![1]).toBe('arbor spigot over its bore')
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
