import { formatNumber } from '../../../quantity/format-number.ts'
import type { HeadDesign } from '../design.ts'
import { sheetUnits } from '../words.ts'

/** Broken edges, in the trade's round numbers: common practice, no source. */
const edgeBreak = { mm: '0.2 to 0.5 mm', in: '0.008 to 0.020 in' } as const

/** What is done with edges that nothing else is said of. */
export const brokenEdges = (design: HeadDesign): string => `Break sharp edges ${edgeBreak[sheetUnits(design).units]}`

/** Micrometres or microinches: as the trade writes roughness. `value` in mm. */
export const roughness = (design: HeadDesign, value: number): string =>
  sheetUnits(design).units === 'in'
    ? `${formatNumber(value / 25.4e-6, 0)} µin`
    : `${formatNumber(value * 1000, 2, { trim: true })} µm`
