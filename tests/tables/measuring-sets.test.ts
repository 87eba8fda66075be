import { describe, expect, it } from 'vitest'
import { readTables } from '../../src/tables/read-tables.ts'
import { rowForSize } from '../../src/tables/size-step.ts'
import { edited, positionOf, problemsOf, textsWith } from './shipped-texts.ts'

const read = readTables(textsWith({}))
if (!read.ok) throw new Error('the shipped tables are not good')
const { gaugeBlocks, gaugePins, angleBlocks, iso286 } = read.value
const named = <Row extends { name: string }>(rows: readonly Row[], name: string) =>
  rows.find((row) => row.name === name)!

describe('the sets to measure with', () => {
  it('have the number of blocks that gives them their names', () => {
    for (const { name, blocks } of gaugeBlocks) expect(blocks, name).toHaveLength(Number(name.split('-')[1]))
    for (const { name, angles } of angleBlocks) expect(angles, name).toHaveLength(Number(name.split('-')[1]))
  })

  it('have the sizes of their runs, clean of what adding steps leaves behind', () => {
    const { blocks } = named(gaugeBlocks, 'metric-112')
    expect(blocks[0]).toBe(0.5)
    expect(blocks).toContain(1.0005)
    expect(blocks).toContain(1.009)
    expect(blocks).toContain(1.37)
    expect(blocks.at(-1)).toBe(100)
    // 0.1001 in and 0.149 in: 2.54254 and 3.7846 mm, exactly, for the inch is 25.4 mm.
    const inch = named(gaugeBlocks, 'inch-81').blocks
    expect(inch).toContain(2.54254)
    expect(inch).toContain(3.7846)
    expect(inch.at(-1)).toBe(101.6)
  })

  it('have dowel pins whose limits are the m6 of ISO 286', () => {
    const metric = gaugePins.filter(({ name }) => name.startsWith('dowel-metric'))
    expect(metric.flatMap(({ diameters }) => diameters)).toEqual([1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20])
    for (const { diameters, deviation } of metric) {
      for (const d of diameters) {
        const row = rowForSize(iso286, d)!
        expect(deviation.low, `${d}`).toBeCloseTo(row.shaft.m!, 9)
        expect(deviation.high, `${d}`).toBeCloseTo(row.shaft.m! + row.grades.IT6!, 9)
      }
    }
  })

  it('have no pin of an inch set above its size', () => {
    const { diameters, deviation } = named(gaugePins, 'gauge-inch-minus-1/4')
    expect(diameters).toHaveLength(190)
    expect(diameters.at(-1)).toBeCloseTo(6.35, 9)
    expect(deviation).toEqual({ low: expect.closeTo(-0.00508, 9), high: 0 })
  })
})

describe('a broken set is reported like bad user input', () => {
  it('a number on the box that its runs do not give', () => {
    const text = edited(
      'gauge-blocks',
      '"from": "10 mm", "to": "100 mm", "step": "10 mm" }] },\n    { "name": "metric-112"',
      '"from": "10 mm", "to": "90 mm", "step": "10 mm" }] },\n    { "name": "metric-112"',
    )
    expect(problemsOf({ 'gauge-blocks': text })).toMatchObject([
      {
        code: 'contradiction',
        found: '87',
        allowed: '86, as many as the row lists',
        where: { file: 'gauge-blocks.json', path: 'rows.1.pieces', ...positionOf(text, 'metric-87', '87, "runs"') },
      },
    ])
    const angles = edited('angle-blocks', '"angles": ["15 min", ', '"angles": [')
    expect(problemsOf({ 'angle-blocks': angles })).toMatchObject([
      { code: 'contradiction', found: '12', allowed: '11, as many as the row lists', where: { path: 'rows.1.pieces' } },
    ])
  })

  const run = '"from": "1.01 mm", "to": "1.19 mm", "step": "0.01 mm"'
  it.each([
    ['an end between two steps', '"from": "1.01 mm", "to": "1.194 mm", "step": "0.01 mm"', 'contradiction', 'to'],
    ['an end below the beginning', '"from": "1.01 mm", "to": "1 mm", "step": "0.01 mm"', 'contradiction', 'to'],
    [
      'a step in a unit that no length has',
      '"from": "1.01 mm", "to": "1.19 mm", "step": "10 nm"',
      'wrong-unit',
      'step',
    ],
    ['more sizes than any box holds', '"from": "1 mm", "to": "9 mm", "step": "0.001 mm"', 'out-of-range', 'step'],
    ['a block longer than any that is sold', '"from": "1001 mm"', 'out-of-range', 'from'],
    ['an end without a step', '"from": "1.01 mm", "to": "1.19 mm"', 'missing-key', undefined],
    ['a step without an end', '"from": "1.01 mm", "step": "0.01 mm"', 'missing-key', undefined],
  ])('%s', (_, wrong, code, key) => {
    const path = `rows.0.runs.1${key === undefined ? '' : `.${key}`}`
    expect(problemsOf({ 'gauge-blocks': edited('gauge-blocks', run, wrong) })).toMatchObject([
      { code, where: { path } },
    ])
  })

  it('says which end would be on a step', () => {
    const text = edited('gauge-blocks', run, '"from": "1.01 mm", "to": "1.194 mm", "step": "0.01 mm"')
    expect(problemsOf({ 'gauge-blocks': text })).toMatchObject([{ remedy: '1.1900 mm is one' }])
  })

  it('limits of a pin that are exchanged, or larger than the pin', () => {
    const tenths = '"deviation": { "low": "-0.002 mm", "high": "0.002 mm" }'
    const exchanged = edited('gauge-pins', tenths, '"deviation": { "low": "0.002 mm", "high": "-0.002 mm" }')
    expect(problemsOf({ 'gauge-pins': exchanged })).toMatchObject([
      { code: 'contradiction', allowed: 'low no greater than high', where: { path: 'rows.0.deviation' } },
    ])
    const large = edited('gauge-pins', tenths, '"deviation": { "low": "-2 mm", "high": "0.002 mm" }')
    expect(problemsOf({ 'gauge-pins': large })).toMatchObject([
      { code: 'contradiction', found: '"-2 mm"', where: { path: 'rows.0.deviation.low' } },
    ])
  })

  it('two sets of one name', () => {
    const text = edited('angle-blocks', '"name": "shop-12"', '"name": "shop-10"')
    expect(problemsOf({ 'angle-blocks': text })).toMatchObject([
      { code: 'contradiction', found: '"shop-10"', remedy: expect.stringMatching(/^row 1 is already shop-10/) },
    ])
  })
})
