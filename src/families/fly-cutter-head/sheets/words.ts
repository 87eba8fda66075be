import type { Amount } from '../../../checks/finding.ts'
import { written as writtenAmount } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import { sheetUnits } from './sizes.ts'

/** A figure as the sheets write it, with a true minus sign. */
export const written = (design: HeadDesign, kind: Amount['kind'], value: number): string =>
  writtenAmount({ kind, value }, sheetUnits(design).units).replace(/^-/, '−')
