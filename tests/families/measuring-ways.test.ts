import { describe, expect, it } from 'vitest'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { headMeasuring } from '../../src/families/fly-cutter-head/making/measuring.ts'
import { readDesign } from '../../src/families/read-design.ts'
import { readingOf, sizeFrom } from '../../src/figures/measuring.ts'
import { headFrom, tables, templateText } from './random-heads.ts'

type Change = [string, string]
const way = (id: string, ...changes: Change[]) => {
  const found = headMeasuring(headFrom('parameters', ...changes)).find(({ dimension }) => dimension.id === id)
  if (!found) throw new Error(`no ${id}`)
  return found
}
const reading = (id: string, ...changes: Change[]) => {
  const found = way(id, ...changes)
  return readingOf(found, found.dimension.value)
}
const pins = 'measuring-sets: [gauge-metric-tenths]'
const noPins: Change = [pins, 'measuring-sets: []']

describe('sizes of a head that are measured by way of others', () => {
  it('over a pin of the shop in the slot: flat to leading wall 20.6, pin of 6, so 26.6', () => {
    // 0.6 of the slot's 10.04 is 6.02; the set goes by tenths.
    expect(way('slot.from-flat').how).toContain('pin of 6 mm')
    expect(reading('slot.from-flat')).toBeCloseTo(26.6, 9)
    expect(sizeFrom(way('slot.from-flat'), 26.63)).toBeCloseTo(20.63, 9)
    expect(reading('slot.from-flat', noPins)).toBeCloseTo(20.6, 9)
    expect(reading('slot.from-flat', [pins, 'gauge-pins: [4, 5.5, 7]'])).toBeCloseTo(26.1, 9)
  })

  it('before the step takes the flat away, where it lies on the leading side', () => {
    expect(way('slot.from-flat').how).toMatch(/before the step is cut$/)
    expect(way('slot.from-flat', ['side: leading', 'side: trailing']).how).not.toContain('before')
  })

  it('over pins in the screw holes: the thickest that goes in, and how far it may lie off', () => {
    // Height 6 and half of a pin of 5; spacing 24 and a whole one.
    expect(reading('screw-hole-1.height')).toBeCloseTo(8.5, 9)
    expect(reading('screw-hole-2.x')).toBeCloseTo(29, 9)
    const thin: Change = [pins, 'gauge-pins: [4.7, 4.9, 5.1]']
    expect(way('screw-hole-1.height', thin).how).toContain(
      'pin of 4.9 mm in the hole; it may lie 0.05 mm to either side',
    )
    expect(reading('screw-hole-1.height', thin)).toBeCloseTo(8.45, 9)
    expect(reading('screw-hole-2.x', thin)).toBeCloseTo(28.9, 9)
    // Thinner by half a millimetre in five it hangs askew: the drill itself is taken.
    expect(way('screw-hole-1.height', [pins, 'gauge-pins: [4.5]']).how).toContain('pin of 5 mm in the hole')
    const along = (changes: Change[]) => way('screw-hole-1.x', ...changes)
    expect(readingOf(along([]), 12.2577) - readingOf(along([]), 12.3577)).toBeCloseTo(0.1, 9)
    expect(readingOf(along([]), 12.2577) - readingOf(along([thin]), 12.2577)).toBeCloseTo(0.05, 9)
  })

  it('by blocks that go in and do not: 10.02 and 10.06 of the shop’s own', () => {
    expect(way('slot.width').how).toBe('blocks of 9 + 1.02 go in, blocks of 9 + 1.06 do not')
    const few: [RegExp, string] = [/gauge-blocks: \[[^\]]*\]/, 'gauge-blocks: [5, 6]']
    const bare = headMeasuring(headFrom('parameters', few)).find(({ dimension }) => dimension.id === 'slot.width')!
    expect(bare.how).toContain('feeler gauges')
    const boxed = headMeasuring(headFrom('parameters', few, [pins, 'measuring-sets: [metric-87]']))
    expect(boxed.find(({ dimension }) => dimension.id === 'slot.width')!.how).toContain('go in')
  })

  it('by a pin that stops in the cone of the drill: (20 − 10)/2·cot 59° = 3.0043 below the full diameter', () => {
    const drilled: Change = ['bottom: flat', 'bottom: drill-point\n  point-angle: 118 deg']
    expect(way('bore.depth', drilled).how).toContain('pin of 10 mm')
    expect(reading('bore.depth', drilled)).toBeCloseTo(24 + 3.0043, 4)
    expect(reading('bore.depth')).toBe(24)
    expect(reading('bore.depth', drilled, noPins)).toBe(24)
  })
})

describe('the face angle', () => {
  it('is measured with what sets it, and the rest by an indicator: 0.01 mm over 50 mm is 0.69′', () => {
    expect(way('face.angle').how).toBe(
      "sine bar of 100 mm on 12.187 mm of blocks (9 + 1.1 + 1.08 + 1.005 = 12.185) under the mounting face, indicator over the face: 0.01 mm over 50 mm is 0.7'",
    )
    const blocks: Change = ['sine-bar: 100', 'sine-bar: 100\n  angle-blocks: [7 deg]']
    expect(way('face.angle', blocks).how).toMatch(/^angle block of 7° under the mounting face/)
    // A set from the table of angle blocks: 5° + 2°.
    expect(way('face.angle', [pins, 'measuring-sets: [shop-12]']).how).toMatch(/^angle blocks of 5° \+ 2° under/)
  })

  it('by protractor is set to what its vernier shows: 7°12′ to 7°10′, two minutes and half of five off', () => {
    const bare: Change = ['  sine-bar: 100\n', '']
    expect(way('face.angle', bare, ['angle: 7 deg', 'angle: 7 deg 12 min']).how).toContain("set to 7°10', good to 5'")
    expect(way('face.angle', bare).how).toContain("set to 7°0', good to 3'")
  })

  it('is measured against the shank where that is in already: 83° for 7°', () => {
    const joined = way('face.angle', ['join: after-face', 'join: before-tilt'])
    expect((readingOf(joined, joined.dimension.value) * 180) / Math.PI).toBeCloseTo(83, 9)
    expect(joined.how).toContain("set to 83°0'")
  })
})

describe('the measuring sets of a shop', () => {
  it('that no table has are told, with the nearest name', () => {
    const text = templateText('parameters').replace(pins, 'measuring-sets: [gauge-metric-tenth, metric-87]')
    const read = readDesign(flyCutterHead, text, 'head.yaml', tables)
    expect(read.ok ? [] : read.problems).toMatchObject([
      {
        code: 'not-in-table',
        found: 'gauge-metric-tenth',
        remedy: 'write gauge-metric-tenths',
        where: { path: 'shop.measuring-sets.0' },
      },
    ])
  })

  it('add to what lies loose in the drawer', () => {
    const { measuring } = headFrom('parameters', [
      pins,
      'gauge-pins: [25]\n  measuring-sets: [dowel-metric-to-3, shop-10]',
    ]).layout
    expect(measuring.gaugePins).toEqual([1, 1.5, 2, 2.5, 3, 25])
    expect(measuring.angleBlocks).toHaveLength(10)
    expect(measuring.gaugeBlocks).toHaveLength(32)
  })
})
