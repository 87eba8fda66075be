import type { DrawnTable } from '../../../drawing/plan/sheet-plan.ts'
import { edgeDirection } from '../../../mechanics/angles/facets.ts'
import { formatAngle } from '../../../quantity/format-angle.ts'
import { written } from '../words.ts'
import type { BitDrawing } from './bit-views.ts'

/** What protractor and height gauge must read on the ground bit. */
export function bitChecks({ design, ground, blank }: BitDrawing): DrawnTable {
  const { rake, end, workSide } = ground.normals
  const [ex, ey, ez] = edgeDirection(rake, end, workSide)
  const [wx, wy, wz] = edgeDirection(rake, workSide, end)
  const angle = (rise: number, run: number) => {
    const value = Math.atan2(rise, run)
    return formatAngle(Math.abs(value) < 1e-9 ? 0 : value, { decimals: 1 }).replace('-', '−')
  }
  const length = (value: number) => written(design, 'length', value)
  return {
    kind: 'table',
    title: 'Check after grinding, before the nose is honed',
    columns: ['what', 'seen or measured from', 'is'],
    rows: [
      ['end edge leans back', 'leading side, from square', angle(-ex, -ez)],
      ['end edge falls behind', 'end, from upright', angle(-ey, -ez)],
      ['work-side edge rises', 'leading side, from the bit', angle(-wz, -wx)],
      ['work-side edge falls behind', 'work side, from the bit', angle(-wy, -wx)],
      ['tip', 'back, height gauge', length(-blank.back)],
      ['tip', 'trailing side, height gauge', length(-blank.trailing)],
      ['tip', 'inner end, caliper', length(-blank.inner)],
    ],
  }
}
