import type { Figure } from '../../../figures/figure.ts'
import type { MatchedFit } from '../../../mechanics/fit/matched-fit.ts'
import type { HeadDesign } from '../design.ts'
import { isShrunk } from '../engineering/fit.ts'
import { figure, least, most, type Of, ofJoint } from './fit-figure.ts'

const smoothing = 'smoothing by a share of Rz of both faces: DIN 7190 (second-hand); the share is a setting'

/** Limits of a matched spigot for the smallest or the largest bore that the zone allows. */
const turnTo =
  (bore: 0 | -1, end: 'smallest' | 'largest'): Of =>
  ({ layout: { fit } }) =>
    fit?.kind === 'matched' ? (fit as MatchedFit).turnTo.at(bore)?.spigot[end] : undefined
const fitSource = 'limits of the fit, at 20 °C (68 °F)'
const matchedSource = 'spigot turned to the measured bore, at 20 °C (68 °F); common practice, no source'

/** What bore and spigot are made to, and what interference that leaves. */
export const fitLimitFigures: readonly Figure<HeadDesign>[] = [
  figure('fit.bore.smallest', 'Bore to, smallest', 'length', fitSource, (d) => d.layout.fit?.bore.smallest),
  figure('fit.bore.largest', 'Bore to, largest', 'length', fitSource, (d) => d.layout.fit?.bore.largest),
  figure(
    'fit.spigot.smallest',
    'Turn the spigot to, smallest (matched: for a bore of nominal size)',
    'length',
    fitSource,
    (d) => d.layout.fit?.spigot.smallest,
  ),
  figure(
    'fit.spigot.largest',
    'Turn the spigot to, largest (matched: for a bore of nominal size)',
    'length',
    fitSource,
    (d) => d.layout.fit?.spigot.largest,
  ),
  figure(
    'fit.for-smallest-bore.spigot.smallest',
    'For the smallest bore turn to, smallest',
    'length',
    matchedSource,
    turnTo(0, 'smallest'),
  ),
  figure(
    'fit.for-smallest-bore.spigot.largest',
    'For the smallest bore turn to, largest',
    'length',
    matchedSource,
    turnTo(0, 'largest'),
  ),
  figure(
    'fit.for-largest-bore.spigot.smallest',
    'For the largest bore turn to, smallest',
    'length',
    matchedSource,
    turnTo(-1, 'smallest'),
  ),
  figure(
    'fit.for-largest-bore.spigot.largest',
    'For the largest bore turn to, largest',
    'length',
    matchedSource,
    turnTo(-1, 'largest'),
  ),
  figure(
    'fit.interference.least',
    'Least interference',
    'length',
    fitSource,
    (d) => d.layout.fit?.interference.least,
    least(ofJoint(({ needed }, d) => needed[isShrunk(d) ? 'shrunk' : 'pressed'].interference)),
  ),
  figure(
    'fit.interference.most',
    'Most interference',
    'length',
    fitSource,
    (d) => d.layout.fit?.interference.most,
    most(ofJoint(({ onsets }) => onsets[0]?.interference)),
  ),
  figure(
    'fit.smoothing-loss',
    'Interference lost to smoothing',
    'length',
    smoothing,
    ofJoint((j) => j.smoothingLoss),
  ),
  figure(
    'fit.effective.least',
    'Least interference that is left',
    'length',
    smoothing,
    ofJoint((j) => j.least.effective),
  ),
  figure(
    'fit.effective.most',
    'Most interference that is left',
    'length',
    smoothing,
    ofJoint((j) => j.most.effective),
  ),
]
