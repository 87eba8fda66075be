import { chooseParallels } from '../../../mechanics/set-up/parallels.ts'
import type { HeadDesign } from '../design.ts'
import type { Stand } from './stands-on.ts'

/** What lifts the work off the bed of the vise by at least and at most so much, mm: a pair of the shop's, else packing of the least. */
export function parallelsOrPacking({ parameters, units }: HeadDesign, least: number, most: number): Stand {
  const chosen = chooseParallels({ heights: parameters.shop.parallels, least, most, stacked: false, units })
  const onParallels = chosen.ok && chosen.value.pairs.length > 0
  return { under: onParallels ? chosen.value.height : least, onParallels }
}
