import type { Figure } from '../../../figures/figure.ts'
import type { Surface } from '../../../mechanics/finish/surface.ts'
import type { HeadDesign } from '../design.ts'
import { feedForRoughness, finishOf, leanForFlatness } from '../engineering/finish.ts'

const marksSource = 'lower envelope of the bit’s profile one feed apart, nose and both edges in use: exact'
const tramSource = 'sin θ·(R − √(R² − (b/2)²)) along the travel, b·tan θ across it'

const marks = (d: HeadDesign): Extract<Surface, { kind: 'feed-marks' }> | undefined => {
  const { surface } = finishOf(d)
  return surface.kind === 'feed-marks' ? surface : undefined
}

const length = (id: string, label: string, source: string, of: Figure<HeadDesign>['of']): Figure<HeadDesign> => ({
  id,
  label,
  kind: 'length',
  source,
  of,
})

/** What the cut leaves on the work, by geometry alone: a real surface is rougher. */
export const finishFigures: readonly Figure<HeadDesign>[] = [
  {
    ...length('finish.ra', 'Ra that feed and nose leave', marksSource, (d) => marks(d)?.meanDeviation),
    limit: (d) => d.parameters.work['roughness-wanted'],
    limitIs: 'most',
  },
  length('finish.rt', 'Height of the feed marks', marksSource, (d) => marks(d)?.height),
  length(
    'finish.nose-feed',
    'Feed a turn up to which only the nose leaves marks',
    '2·r·sin κr′',
    (d) => finishOf(d).noseFeed,
  ),
  length(
    'finish.feed-for-ra',
    'Largest feed a turn for the Ra wanted',
    `${marksSource}, solved by halving`,
    feedForRoughness,
  ),
  {
    ...length(
      'finish.dish',
      'Hollow over the width, from the lean along the travel',
      tramSource,
      (d) => finishOf(d).tram?.dish,
    ),
    limit: (d) => d.parameters.work['flatness-wanted'],
    limitIs: 'most',
  },
  length(
    'finish.slope',
    'Slope over the width, from the lean across the travel',
    tramSource,
    (d) => finishOf(d).tram?.slope,
  ),
  length(
    'finish.step',
    'Step between passes, from the lean across the travel',
    tramSource,
    (d) => finishOf(d).tram?.step,
  ),
  {
    ...length('finish.lean', 'Lean along the travel that keeps the flatness wanted', tramSource, leanForFlatness),
    kind: 'angle',
  },
]
