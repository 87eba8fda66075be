import type { Figure } from '../../../figures/figure.ts'
import { isAllowed, type WayToHold, waysToHold } from '../../../mechanics/fit/way-to-hold.ts'
import type { HeadDesign } from '../design.ts'
import { otherWaysOf } from '../engineering/ways-to-hold.ts'
import { figure } from './fit-figure.ts'

const wayLabels: Readonly<Record<WayToHold, string>> = {
  'fresh-arbor': 'a fresh arbor turned to the measured bore',
  'retaining-compound': 'retaining compound in a clearance',
  'cross-pin': 'a pin across',
  'screw-and-washer': 'screw and washer',
  threaded: 'a thread',
  keyed: 'a key',
  weld: 'a weld',
}

const waySource = 'at yield and without safety; sizes and conditions stand with the way'

/** What each other way of holding would carry; sizes and conditions are in `otherWaysOf`. */
export const otherWayFigures: readonly Figure<HeadDesign>[] = waysToHold.flatMap((way) => {
  const holding = (d: HeadDesign) => {
    const found = otherWaysOf(d).find((other) => other.way === way)?.holding
    // A washer without a place carries nothing.
    return way === 'screw-and-washer' && found && !isAllowed(found) ? undefined : found
  }
  return [
    figure(
      `hold.${way}.torque`,
      `Torque that ${wayLabels[way]} would carry`,
      'torque',
      waySource,
      (d) => holding(d)?.torque,
    ),
    figure(
      `hold.${way}.axial`,
      `Force along the axis that ${wayLabels[way]} would carry`,
      'force',
      waySource,
      (d) => holding(d)?.axial,
    ),
  ]
})
