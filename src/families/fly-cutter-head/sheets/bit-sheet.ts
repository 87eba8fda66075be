import type { DrawnTable, SheetPlan, ViewPlan } from '../../../drawing/plan/sheet-plan.ts'
import type { DrawingStyle } from '../../../drawing/style.ts'
import type { Table } from '../../../figures/table.ts'
import { formatQuantity } from '../../../quantity/format-quantity.ts'
import type { HeadDesign } from '../design.ts'
import { anglesTable, facetsTable } from '../figures/angle-tables.ts'
import { written } from '../words.ts'
import { bitChecks } from './bit-checks.ts'
import { bitNotes } from './bit-notes.ts'
import { endView, leadingView, workView } from './bit-outside.ts'
import { anglesSaid, bitCuts, bitSections } from './bit-sections.ts'
import { bitDrawing } from './bit-views.ts'
import { longPart } from './sheet-share.ts'

/** The grinding sheet: the blank, the ground tip from three sides, sections in which its angles are true, how it is ground. */
export function bitSheet(design: HeadDesign, style: DrawingStyle): SheetPlan {
  const bit = bitDrawing(design, style)
  const cuts = bitCuts(bit)
  const end = endView(bit, cuts)
  const views: ViewPlan[] = bit.isGround
    ? [
        leadingView(bit, cuts),
        workView(bit),
        { ...end, requests: [...end.requests, ...anglesSaid(bit, cuts)] },
        ...bitSections(bit, cuts),
      ]
    : [leadingView(bit, cuts), end]
  const tables = [facetsTable(design), anglesTable(design)].filter((t) => t !== undefined)
  return {
    id: 'bit',
    part: design.part('bit').label,
    material: design.layout.materials.bit.title,
    mass: written(design, 'mass', design.mass('bit')),
    share: longPart,
    groups: views.map((view) => ({ rows: [[view]] })),
    blocks: [
      ...tables.map((t) => drawnTable(design, t)),
      ...(bit.isGround ? [bitChecks(bit)] : []),
      bitNotes(bit, cuts),
    ],
  }
}

/** A table of the report as the sheet writes it. */
function drawnTable(design: HeadDesign, { title, columns, rows }: Table): DrawnTable {
  return {
    kind: 'table',
    title,
    columns: columns.map(({ label }) => label),
    rows: rows.map((row) =>
      row.map((cell, i) => {
        const { kind } = columns[i]!
        if (cell === undefined) return ''
        if (typeof cell === 'string' || kind === 'text') return String(cell)
        if (kind === 'angle') return formatQuantity('angle', cell, design.units, { decimals: 1 }).replace('-', '−')
        return written(design, kind, cell)
      }),
    ),
  }
}
