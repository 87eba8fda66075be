import { sweepPage } from '../sweep/html/sweep-page.ts'
import type { Sweep } from '../sweep/sweep.ts'
import { sweepCsv } from '../sweep/sweep-csv.ts'
import { sweepTable } from './target.ts'

/** The files of a sweep, name → content. The same sweep gives the same bytes. */
export const sweepFiles = (sweep: Sweep): Map<string, string> =>
  new Map([
    [sweepTable, sweepCsv(sweep)],
    ['sweep.html', sweepPage(sweep)],
  ])
