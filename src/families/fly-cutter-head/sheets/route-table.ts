import type { DrawnTable } from '../../../drawing/plan/sheet-plan.ts'
import { formatNumber } from '../../../quantity/format-number.ts'
import { toUnit } from '../../../quantity/to-unit.ts'
import type { Operation } from '../../../route/operation.ts'
import type { HeadDesign } from '../design.ts'
import { headRoute } from '../making/route.ts'
import { headSetUps } from '../making/set-ups.ts'
import { sheetUnits } from '../words.ts'
import { readoutIn } from './body-coordinates.ts'

/** As many rows as stand on the smallest sheet, above its title block and a banner (common practice, no source). */
const most = 24

interface Row {
  /** Above the steps that are done in it; absent in the rows of steps. */
  readonly setUp?: string
  readonly step?: number
  readonly cells: readonly string[]
}

/** The order of work on paper: what the report says at length. A set-up stands above its steps. */
export function routeTable(design: HeadDesign): DrawnTable[] {
  const route = headRoute(design)
  const titles = new Map(headSetUps(design).map((s) => [s.id, s.title]))
  const rows = route.flatMap((o, i): Row[] => {
    const setUp = titles.get(o.setUp)!
    return [
      ...(route[i - 1]?.setUp === o.setUp ? [] : [headed(setUp)]),
      { step: i + 1, cells: cellsOf(design, o, i + 1) },
    ]
  })
  const { units } = sheetUnits(design)
  const columns = ['', 'step', 'tool', 'rev/min', `${units}/min`, `deep, ${units}`, 'in passes']
  return parted(rows).map((part) => {
    const steps = part.flatMap(({ step }) => step ?? [])
    return {
      kind: 'table',
      title: `Order of work, steps ${steps[0]!} to ${steps.at(-1)!} of ${route.length}`,
      columns,
      rows: part.map(({ cells }) => cells),
    }
  })
}

const headed = (setUp: string, also = ''): Row => ({ setUp, cells: ['', `${setUp}${also}:`] })

/** Parts of about the same height, the first the highest, none of which ends with the name of a set-up. */
function parted(rows: readonly Row[]): Row[][] {
  const parts = Math.ceil(rows.length / most)
  const size = Math.ceil((rows.length + parts - 1) / parts)
  const out: Row[][] = []
  for (let from = 0; from < rows.length; ) {
    const above = rows.slice(0, from).findLast(({ setUp }) => setUp !== undefined)?.setUp
    const open = above !== undefined && rows[from]!.setUp === undefined ? [headed(above, ', continued')] : []
    let to = Math.min(from + size - open.length, rows.length)
    if (rows[to - 1]!.setUp !== undefined) to++
    out.push([...open, ...rows.slice(from, to)])
    from = to
  }
  return out
}

const cellsOf = (design: HeadDesign, o: Operation, step: number): string[] => [
  String(step),
  o.title,
  o.tool?.name ?? '',
  turns(o),
  feed(design, o),
  o.depth === undefined ? '' : readoutIn(o.depth, sheetUnits(design).units),
  o.passes === undefined ? '' : String(o.passes),
]

const turns = ({ speed }: Operation): string =>
  speed === undefined
    ? ''
    : `${speed.atMost ? 'to ' : ''}${formatNumber(toUnit('rotation-speed', speed.turns, 'mm'), 0)}`

function feed(design: HeadDesign, { speed }: Operation): string {
  if (speed?.feed === undefined) return ''
  const inch = sheetUnits(design).units === 'in'
  return formatNumber((speed.feed * 60) / (inch ? 25.4 : 1), inch ? 1 : 0)
}
