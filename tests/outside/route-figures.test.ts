import { describe, expect, it } from 'vitest'
import { headRoute } from '../../src/families/fly-cutter-head/making/route.ts'
import { headFrom } from '../families/random-heads.ts'
import { cell, figure, readReference } from './reference/read-reference.ts'

// The metric template by hand. Cutting speeds: the reference table of cutting speeds, each row with its source; feeds and
// depths by the rules of thumb that the parameters name (common practice, no source).

const route = headRoute(headFrom('parameters'))
const step = (id: string) => route.find((o) => o.id === id)!
const speeds = readReference('cutting-speeds')
/** High end for high-speed steel, mm/min. */
const surface = (material: string): number => {
  const rows = speeds.filter((r) => cell(r, 'material') === material && cell(r, 'tool') === 'HSS')
  return Math.max(...rows.map((r) => figure(r, 'sfm_high'))) * 304.8
}
const turnsOf = (id: string) => (step(id).speed!.turns * 30) / Math.PI
const spindle = [95, 180, 270, 430, 620, 940, 1400, 2200]
/** The fastest of the spindle's speeds that is not above v/(π·D). */
const nearestBelow = (mmPerMinute: number, diameter: number) =>
  spindle.filter((n) => n <= mmPerMinute / (Math.PI * diameter)).at(-1)!

describe('speeds and feeds of the route', () => {
  it.each([
    ['face', 20, 430],
    ['slot-rough', 8, 1400],
    ['slot-walls', 8, 1400],
    ['step', 12, 940],
    ['drill', 5, 2200],
  ])('%s, ⌀%d in mild steel: %d rev/min is the spindle speed next below the table', (id, diameter, turns) => {
    expect(nearestBelow(surface('mild steel'), diameter)).toBe(turns)
    expect(turnsOf(id)).toBeCloseTo(turns, 9)
  })

  it('in the lathe are at most what the table says of the diameter: the bore of 20, the shoulder of 32 in 1045', () => {
    expect(turnsOf('bore-size')).toBeCloseTo(surface('mild steel') / (Math.PI * 20), 6)
    expect(turnsOf('arbor-turn')).toBeCloseTo(surface('medium-carbon steel 1045') / (Math.PI * 32), 6)
  })

  it('feed four flutes with 0.005 of the diameter a tooth, 0.06 mm at the most; a drill with 0.015 of its own a turn', () => {
    const feed = (id: string) => step(id).speed!.feed! * 60
    expect(feed('slot-rough')).toBeCloseTo(4 * 0.005 * 8 * 1400, 6)
    expect(feed('face')).toBeCloseTo(4 * 0.06 * 430, 6)
    expect(feed('drill')).toBeCloseTo(0.015 * 5 * 2200, 6)
  })

  it('go down in passes of half a diameter, 4 mm at the most: 9.3 mm of slot by 4, 10.5 mm of step by 4', () => {
    expect([step('slot-rough').depth, step('slot-rough').passes]).toEqual([expect.closeTo(9.3, 9), 3])
    expect([step('step').depth, step('step').passes]).toEqual([expect.closeTo(10.5, 9), 3])
  })

  it('travel a radius and 2 mm before and after: the slot on 46 mm of hexagon, its sides leaning by 7°', () => {
    const { approach, cut, overrun } = step('slot-rough').travel!
    const a = (7 * Math.PI) / 180
    expect([approach, overrun]).toEqual([6, 6])
    expect(cut).toBeCloseTo((2 * 46) / Math.sqrt(3) / Math.cos(a) + 9.3 * Math.tan(a), 9)
  })
})
