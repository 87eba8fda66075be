import { numberText } from '../../report/amount-text.ts'
import { htmlTable } from '../../report/html/table.ts'
import type { Sweep } from '../sweep.ts'
import { levelLooks } from './level-look.ts'

/** Longest table that goes into the page. */
const mostRows = 500

/** The sets as a table; a long one is only in the CSV beside the page. */
export function setsTable({ axes, figures, sets }: Sweep): string[] {
  if (sets.length > mostRows) return [`<p>All ${sets.length} sets are in sweep.csv.</p>`]
  // Long ids may break behind a point or a hyphen.
  const withUnit = (name: string, unit: string) =>
    `${name.replace(/[.-]/g, '$&\u{200b}')}${unit === '' ? '' : `, ${unit}`}`
  const columns = [
    ...axes.map(({ path, unit }) => ({ head: withUnit(path, unit) })),
    ...figures.map(({ id, unit }) => ({ head: withUnit(id, unit), isNumber: true })),
    { head: 'worst' },
  ]
  const rows = sets.map((set) => {
    const why = set.level === 'impossible' ? set.problems.map(({ code }) => code) : set.stops
    return [
      ...set.at.map(({ shown }, at) => (typeof shown === 'number' ? numberText(shown, axes[at]!.unit) : shown)),
      ...set.figures.map((value, at) => (value === null ? '–' : numberText(value, figures[at]!.unit))),
      `${levelLooks[set.level].words}${why.length === 0 ? '' : `: ${why.join(', ')}`}`,
    ]
  })
  return [htmlTable('sets', 'Every set; a dash: it has no such figure', columns, rows)]
}
