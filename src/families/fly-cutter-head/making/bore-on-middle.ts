import type { HeadDesign } from '../design.ts'

/** How far the bore may stand off the middle of the bar: common practice, no source. */
const off = { mm: '0.05 mm', in: '0.002 in' } as const

/** What the bore stands in the middle of. */
export const middleOf = ({ parameters: { stock } }: HeadDesign): string => (stock.shape === 'round' ? 'bar' : 'flats')

/** How near the bore stands to the middle, in the units that are shown: `0.05 mm`. */
export const offMiddle = (units: HeadDesign['units']): string => off[units]
