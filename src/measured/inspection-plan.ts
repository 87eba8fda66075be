import type { DrawnNotes, DrawnTable, SheetPlan } from '../drawing/plan/sheet-plan.ts'
import { formatNumber } from '../quantity/format-number.ts'
import type { Units } from '../quantity/kind.ts'
import { toUnit } from '../quantity/to-unit.ts'
import type { AskedLine } from './inspection-sheet.ts'

/** Lines of one table, and ways to measure in one block of notes: what fits a small sheet. */
const most = 20
const mostWays = 12

/** The inspection sheet to print and fill in: every size with the limits of its reading, and how it is measured by number. */
export function inspectionPlan(lines: readonly AskedLine[], units: Units): SheetPlan {
  const ways = [...new Set(lines.map(wayOf))]
  const tables: DrawnTable[] = []
  for (let from = 0; from < lines.length; from += most) {
    tables.push({
      kind: 'table',
      title: `What the tool shows, ${units} and degrees${from === 0 ? '' : ', continued'}`,
      columns: ['part', 'size', 'how', 'nominal', 'from', 'to', 'measured      '],
      rows: lines.slice(from, from + most).map((line) => rowOf(line, ways.indexOf(wayOf(line)) + 1, units)),
    })
  }
  return {
    id: 'inspection',
    part: 'Inspection',
    material: '–',
    mass: '–',
    groups: [],
    blocks: [...tables, ...notesOf(ways)],
  }
}

function notesOf(ways: readonly string[]): DrawnNotes[] {
  const numbered = ways.map((way, i) => `${i + 1} ${way}`)
  const lines = [
    ...numbered,
    `Where ${sign} stands, figures are those of the reading, not of the size itself.`,
    'Sizes in brackets follow from others. Fill in inspection.csv of the same revision with these figures: what they mean is worked out from it.',
    'Spindle and motor off and isolated before a gauge goes near the tool.',
  ]
  const blocks: DrawnNotes[] = []
  for (let from = 0; from < lines.length; from += mostWays) {
    const title = `How it is measured${from === 0 ? '' : ', continued'}`
    blocks.push({ kind: 'notes', title, lines: lines.slice(from, from + mostWays) })
  }
  return blocks
}

/** Marks a line whose figures are those of a reading, over a pin or from a flat. */
const sign = '*'

const wayOf = ({ measuring: { how, reading } }: AskedLine): string => (reading ? `${how}, ${reading.says}` : how)

function rowOf({ part, id, kind, nominal, from, to, measuring }: AskedLine, way: number, units: Units): string[] {
  const { dimension } = measuring
  const number = (value: number | undefined) =>
    value === undefined
      ? ''
      : formatNumber(toUnit(kind, value, units), kind === 'angle' ? 2 : units === 'mm' ? 3 : 4, { trim: true }).replace(
          '-',
          '−',
        )
  const bare = dimension.tolerance.kind === 'reference' ? `(${id})` : id
  const name = measuring.reading ? `${bare} ${sign}` : bare
  if (dimension.kind === 'thread') return [part, name, `${way}`, dimension.thread ?? '', '', '', '']
  return [part, name, `${way}`, number(nominal), number(from), number(to), '']
}
