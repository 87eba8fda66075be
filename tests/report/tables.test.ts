import { describe, expect, it } from 'vitest'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { readDesign } from '../../src/families/read-design.ts'
import { markdownReport } from '../../src/report/markdown.ts'
import { reportOf } from '../../src/report/report.ts'
import { reportSchema } from '../../src/report/report-schema.ts'
import { tables, templateText } from '../families/random-heads.ts'

function reportFor(name: 'parameters' | 'parameters-inch') {
  const read = readDesign(flyCutterHead, templateText(name), name, tables)
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return reportSchema.parse(reportOf(read.value as never, [], '01234567'))
}

describe('tables in the report', () => {
  const report = reportFor('parameters')

  it('are listed with a unit a column, angles in degrees and speeds in turns a minute', () => {
    expect(report.tables.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['angles-in-use', 'facets', 'heel', 'wanted-angles', 'reach', 'reach-speeds']),
    )
    const reach = report.tables.find(({ id }) => id === 'reach')!
    expect(reach.columns.slice(0, 6).map(({ unit }) => unit)).toEqual(['mm', 'mm', 'mm', 'mm', '°', 'rev/min'])
    const own = reach.rows.find((row) => row.at(-1) === 'as set')!
    expect(own[0]).toBe(27)
    expect(own[5]).toBe(430)
    expect(own[4]).toBeCloseTo(15.83, 2)
  })

  it('have text where there is no number, never a gap', () => {
    const speeds = report.tables.find(({ id }) => id === 'reach-speeds')!
    expect(speeds.rows.flat()).toContain('too fast')
    for (const { columns, rows } of report.tables) for (const row of rows) expect(row.length).toBe(columns.length)
  })

  it('are in the units of the file', () => {
    const reach = reportFor('parameters-inch').tables.find(({ id }) => id === 'reach')!
    expect(reach.columns.slice(0, 2).map(({ unit }) => unit)).toEqual(['in', 'in'])
    expect(reach.rows.find((row) => String(row.at(-1)).startsWith('as set'))![1]).toBe(3.875)
  })

  it('stand in the Markdown under their own titles', () => {
    const text = markdownReport(report)
    expect(text).toContain('## Reach: the same bit pushed in and pulled out')
    expect(text).toMatch(/\| overhang, mm \| swing, mm \|/)
    expect(text).toMatch(/\| 27 \| 106\.7 \| .* \| 430 \| .* \| as set \|/)
  })
})
