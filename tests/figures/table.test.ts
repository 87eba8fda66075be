import { describe, expect, it } from 'vitest'
import { type TableOf, tablesOf } from '../../src/figures/table.ts'

const lengths = [{ label: 'overhang', kind: 'length' }] as const
const one: TableOf<number> = (value) => ({ id: 'one', title: 'One row', columns: lengths, rows: [[value]] })

describe('tables of a design', () => {
  it('are those that the design has', () => {
    const none: TableOf<number> = () => undefined
    expect(tablesOf([none, one], 3).map(({ id, rows }) => [id, rows])).toEqual([['one', [[3]]]])
  })

  it('may have words and nothing in a cell', () => {
    const words: TableOf<number> = () => ({ id: 'w', title: 'w', columns: lengths, rows: [['too fast'], [undefined]] })
    expect(tablesOf([words], 3)[0]!.rows).toEqual([['too fast'], [undefined]])
  })

  it('never hold a number that is none: that is a defect', () => {
    expect(() => tablesOf([one], Number.NaN)).toThrow('table one')
  })

  it('never have a row of another length than their head', () => {
    const ragged: TableOf<number> = () => ({ id: 'r', title: 'r', columns: lengths, rows: [[1, 2]] })
    expect(() => tablesOf([ragged], 3)).toThrow('table r: a row of 2 cells')
  })
})
