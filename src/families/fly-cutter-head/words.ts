import type { Amount } from '../../checks/finding.ts'
import { written as writtenAmount } from '../../checks/rule.ts'
import type { SizeUnits } from '../../drawing/dimensions/dimension-text.ts'
import type { HeadDesign } from './design.ts'

/** A figure as the sheets write it, with a true minus sign. */
export const written = (design: HeadDesign, kind: Amount['kind'], value: number): string =>
  writtenAmount({ kind, value }, sheetUnits(design).units).replace(/^-/, '−')

/** How figures are written on the sheets. */
export function sheetUnits({ parameters }: HeadDesign): SizeUnits {
  const shown = parameters.drawing['shown-in']
  const units = shown === 'mm' || shown === 'in' ? shown : parameters.units
  return { units, both: shown === 'both', fractions: true }
}
