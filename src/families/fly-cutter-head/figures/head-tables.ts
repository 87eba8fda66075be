import type { TableOf } from '../../../figures/table.ts'
import type { HeadDesign } from '../design.ts'
import { anglesTable, facetsTable, heelTable, wantedTable } from './angle-tables.ts'
import { reachSpeedTable, reachTable } from './reach-tables.ts'
import { spreadCausesTable, spreadOfJointTable, spreadTable } from './spread-tables.ts'

/** Every table of a fly-cutter head. */
export const headTables: readonly TableOf<HeadDesign>[] = [
  anglesTable,
  facetsTable,
  heelTable,
  wantedTable,
  reachTable,
  reachSpeedTable,
  spreadTable,
  spreadOfJointTable,
  spreadCausesTable,
]
