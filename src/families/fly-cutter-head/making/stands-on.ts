import type { HeadDesign } from '../design.ts'
import { laidSetUp } from './laid-set-up.ts'
import { lowPlace } from './low-place.ts'
import type { TiltedSetUp } from './tilted-set-up.ts'

type Written = (value: number) => string

/** Height over the bed of the vise, mm, and whether a pair of the shop's parallels is that high. */
export interface Stand {
  readonly under: number
  readonly onParallels: boolean
}

/** `what` with its verb: `The head lies on parallels of 10 mm`. */
function standsOn(what: string, { under, onParallels }: Stand, parallels: string, length: Written): string {
  if (under === 0) return `${what} on the bed of the vise`
  if (onParallels) return `${what} on ${parallels}`
  return `${what} ${length(under)} above the bed, packed: no pair of parallels in the list is as high`
}

/** What the lowest place of the tilted head stands on: under a point midway between the jaws there is room for one parallel. */
export function tiltedStandsOn(set: TiltedSetUp, length: Written): string {
  const height = length(set.under)
  const parallels = set.lowPoint ? `one parallel of ${height}, midway between the jaws` : `parallels of ${height}`
  return standsOn(`The ${lowPlace(set)} stands`, set, parallels, length)
}

/** What the laid head lies on; a round one lies in a V-block, whatever that is high. */
export function laidStandsOn(design: HeadDesign, length: Written): string {
  const set = laidSetUp(design)
  if (design.parameters.stock.shape === 'round' && set.under > 0) {
    return `The V-block holds its underside ${length(set.under)} or more above the bed`
  }
  return standsOn('The head lies', set, `parallels of ${length(set.under)}`, length)
}

/** What the blank stands on when it is upright in the vise. */
export const uprightStandsOn = (set: Stand, length: Written): string =>
  standsOn('It stands', set, `parallels of ${length(set.under)}`, length)
