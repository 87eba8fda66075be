import type { Drawn, InterferenceBand } from '../../../figures/pictures.ts'
import type { HeadDesign } from '../design.ts'
import { isShrunk, jointOfHead } from '../engineering/fit.ts'

export function interferenceBandOf(design: HeadDesign): Drawn<InterferenceBand> {
  const { fit } = design.layout
  if (fit === undefined) return { leftOut: 'The head is screwed on: nothing is pressed together.' }
  const joint = jointOfHead(design)
  if (joint === undefined) return { leftOut: 'Slot, step and chamfers leave nothing of the joint whole.' }
  const needed = joint.needed[isShrunk(design) ? 'shrunk' : 'pressed']
  const [onset] = joint.onsets
  return {
    name: fit.name,
    isMatched: fit.kind === 'matched',
    nominal: fit.nominal,
    bore: fit.bore,
    spigot: fit.spigot,
    interference: fit.interference,
    effective: { least: joint.least.effective, most: joint.most.effective },
    needed: needed.reachable ? needed.interference : undefined,
    onset: onset && {
      at: onset.interference,
      says: `${onset.part === 'hub' ? 'the head' : 'the arbor'} ${onset.kind === 'yields' ? 'begins to yield' : 'cracks'}`,
    },
  }
}
