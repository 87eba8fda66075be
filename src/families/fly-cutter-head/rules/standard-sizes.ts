import type { Finding } from '../../../checks/finding.ts'
import { mm, type Rule, written } from '../../../checks/rule.ts'
import type { Tables } from '../../../tables/read-tables.ts'
import type { HeadLayout } from './head-subject.ts'

/** Whether bar, blank and screw can be bought in the sizes the design asks for, as far as the shop's tables know. */
export const standardSizes: Rule<HeadLayout & { readonly tables: Tables }> = {
  id: 'stock-size',
  beforeMaking: true,
  findings({ units, parameters, layout, tables }) {
    const found: Finding[] = []
    const note = (id: string, text: string) => found.push({ id, level: 'note', text, levers: [] })
    const same = (a: number, b: number) => Math.abs(a - b) < 1e-3
    const show = (v: number) => written(mm(v), units)
    const { stock, bit } = parameters
    if (!tables.barStock.some((row) => row.shape === stock.shape && same(row.size, stock.size))) {
      note('stock-size:bar', `${stock.shape} bar of ${show(stock.size)} is not in the bar-stock table: is there any?`)
    }
    const sides = [Math.min(bit.width, bit.height), Math.max(bit.width, bit.height)] as const
    const blank = tables.bitBlanks.find((row) => same(row.width, sides[0]) && same(row.height, sides[1]))
    if (!blank) {
      note('stock-size:bit', `A bit blank of ${show(bit.width)} × ${show(bit.height)} is not in the table of blanks.`)
    } else if (bit.length > Math.max(...blank.lengths) + 1e-3) {
      note('stock-size:bit', `The longest blank of that section in the table is ${show(Math.max(...blank.lengths))}.`)
    }
    const { screw, length } = layout.screws
    if (!screw.lengths.some((l) => same(l, length))) {
      note('stock-size:screw', `Set screws ${screw.name} of ${show(length)} are not in the table of set screws.`)
    }
    return found
  },
}
