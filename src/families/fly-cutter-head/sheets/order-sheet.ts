import type { SheetPlan } from '../../../drawing/plan/sheet-plan.ts'
import type { HeadDesign } from '../design.ts'
import { routeTable } from './route-table.ts'

/** The order of work on sheets of its own, where nothing comes between its parts. */
export const orderSheet = (design: HeadDesign): SheetPlan => ({
  id: 'order-of-work',
  part: 'Order of work',
  material: 'see the parts list',
  mass: '–',
  groups: [],
  blocks: routeTable(design),
})
