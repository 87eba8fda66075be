import type { DrawnTable } from '../../../drawing/plan/sheet-plan.ts'
import { formatNumber } from '../../../quantity/format-number.ts'
import { toUnit } from '../../../quantity/to-unit.ts'
import type { Operation } from '../../../route/operation.ts'
import type { HeadDesign } from '../design.ts'
import { headRoute } from '../making/route.ts'
import { headSetUps } from '../making/set-ups.ts'
import { readout } from './body-coordinates.ts'
import { sheetUnits } from './sizes.ts'

/** As many steps as stand on the smallest sheet beside a view. */
const most = 10

/** The order of work on paper: what the report says at length. */
export function routeTable(design: HeadDesign): DrawnTable[] {
  const route = headRoute(design)
  const titles = new Map(headSetUps(design).map((s) => [s.id, s.title]))
  const parts = Math.ceil(route.length / most)
  const size = Math.ceil(route.length / parts)
  return Array.from({ length: parts }, (_, part) => {
    const from = part * size
    const to = Math.min(from + size, route.length)
    return {
      kind: 'table',
      title: `Order of work, steps ${from + 1} to ${to} of ${route.length}`,
      columns: ['', 'step', 'set-up', 'tool', 'rev/min', `${sheetUnits(design).units}/min`, 'deep', 'passes'],
      rows: route
        .slice(from, to)
        .map((o, i) => [
          String(from + i + 1),
          o.title,
          titles.get(o.setUp)!,
          o.tool?.name ?? '',
          turns(o),
          feed(design, o),
          o.depth === undefined ? '' : readout(design, o.depth),
          o.passes === undefined ? '' : String(o.passes),
        ]),
    }
  })
}

const turns = ({ speed }: Operation): string =>
  speed === undefined
    ? ''
    : `${speed.atMost ? 'to ' : ''}${formatNumber(toUnit('rotation-speed', speed.turns, 'mm'), 0)}`

function feed(design: HeadDesign, { speed }: Operation): string {
  if (speed?.feed === undefined) return ''
  const inch = sheetUnits(design).units === 'in'
  return formatNumber((speed.feed * 60) / (inch ? 25.4 : 1), inch ? 1 : 0)
}
