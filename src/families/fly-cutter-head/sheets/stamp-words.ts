import { formatQuantity } from '../../../quantity/format-quantity.ts'
import type { HeadDesign } from '../design.ts'
import { neverExceedOf } from '../engineering/never-exceed.ts'

/** The speed that is stamped on the head; below a turn a minute it must not turn. */
export function stampedSpeed(design: HeadDesign): string {
  const { notAbove } = neverExceedOf(design)
  return notAbove > 0 ? `NEVER ABOVE ${formatQuantity('rotation-speed', notAbove, design.units)}` : 'MUST NOT TURN'
}

/** The arrow that is stamped beside it. */
export const stampedArrow = ({ parameters }: HeadDesign): string =>
  `an arrow: turns ${parameters.rotation}, seen from the spindle`
