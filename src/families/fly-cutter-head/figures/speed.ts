import type { Figure } from '../../../figures/figure.ts'
import type { SpeedLimitName } from '../../../mechanics/speed/never-exceed.ts'
import type { HeadDesign } from '../design.ts'
import { limitNames, neverExceedOf } from '../engineering/never-exceed.ts'

const sources: Readonly<Record<SpeedLimitName, string>> = {
  'bit-hold': 'speed at which the screws hold the bit no more than the wanted number of times over',
  joint: 'speed at which the hub has grown so far off the arbor that the joint no longer carries the cut',
  'unbalance-force': 'speed at which the unbalance force is as large as the spindle should feel (rule of thumb)',
  'spindle-maximum': 'as given for the machine',
  'tip-speed': 'largest speed of the tip (rule of thumb)',
  'proof-run': 'share of the speed of the proof run on record (rule of thumb)',
}

const limit = (name: SpeedLimitName): Figure<HeadDesign> => ({
  id: `speed.limit.${name}`,
  label: `Limit of speed: ${limitNames[name]}`,
  kind: 'rotation-speed',
  source: sources[name],
  of: (d) => neverExceedOf(d).limits.find((one) => one.name === name)?.counted,
})

/** The speed never to be exceeded, and every limit it comes from: for safety, whatever the edge would like. */
export const speedFigures: readonly Figure<HeadDesign>[] = [
  {
    id: 'speed.never-exceed',
    label: 'Never-exceed speed',
    kind: 'rotation-speed',
    source: 'share of the lowest of all limits (rule of thumb)',
    of: (d) => neverExceedOf(d).notAbove,
  },
  limit('bit-hold'),
  limit('joint'),
  limit('unbalance-force'),
  limit('spindle-maximum'),
  limit('tip-speed'),
  limit('proof-run'),
]
