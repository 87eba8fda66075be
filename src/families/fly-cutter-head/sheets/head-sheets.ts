import type { SheetPlan } from '../../../drawing/plan/sheet-plan.ts'
import type { DrawingStyle } from '../../../drawing/style.ts'
import type { HeadDesign } from '../design.ts'
import { arborSheet } from './arbor-sheet.ts'
import { assemblySheet } from './assembly-sheet.ts'
import { bitSheet } from './bit-sheet.ts'
import { bodySheet } from './body-sheet.ts'
import { orderSheet } from './order-sheet.ts'
import { setUpSheet } from './set-up-sheet.ts'

/** All sheets of a fly-cutter head, in the order in which a shop wants them. */
export const headSheets = (design: HeadDesign, style: DrawingStyle): SheetPlan[] => [
  bodySheet(design, style),
  arborSheet(design),
  assemblySheet(design, style),
  bitSheet(design, style),
  orderSheet(design),
  setUpSheet(design, style),
]
