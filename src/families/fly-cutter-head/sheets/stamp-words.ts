import { formatNumber } from '../../../quantity/format-number.ts'
import type { HeadDesign } from '../design.ts'
import { neverExceedOf } from '../engineering/never-exceed.ts'

/** The speed that is stamped on the head: a safety limit goes down to the next whole turn, and below one it must not turn. */
export function stampedSpeed(design: HeadDesign): string {
  const turns = Math.floor((neverExceedOf(design).notAbove * 60) / (2 * Math.PI) + 1e-9)
  return turns > 0 ? `NEVER ABOVE ${formatNumber(turns, 0)} rev/min` : 'MUST NOT TURN'
}

/** The arrow that is stamped beside it. */
export const stampedArrow = ({ parameters }: HeadDesign): string =>
  `an arrow: turns ${parameters.rotation}, seen from the spindle`
