import type { Figure } from '../../../figures/figure.ts'
import type { HeadDesign } from '../design.ts'
import { joinedLength } from '../engineering/fit.ts'
import { figure, lame, most, ofJoint } from './fit-figure.ts'

/** What the joint presses, holds and stands. */
export const fitStrengthFigures: readonly Figure<HeadDesign>[] = [
  figure(
    'fit.length',
    'Length of the joint that slot, step, chamfers, vent and pin leave whole',
    'length',
    'geometry of the layout; below the highest point of slot and step in the hub’s circle nothing counts',
    (d) => joinedLength(d).effective,
  ),
  figure(
    'fit.pressure.least',
    'Pressure in the joint, least',
    'pressure',
    lame,
    ofJoint((j) => j.least.pressure),
  ),
  figure(
    'fit.pressure.most',
    'Pressure in the joint, most, nothing smoothed',
    'pressure',
    lame,
    ofJoint((j) => j.most.fullPressure),
  ),
  figure(
    'fit.head.bore-hoop',
    'Hoop stress at the bore of the head, most',
    'pressure',
    lame,
    ofJoint((j) => j.most.stress.hubBore.hoop),
  ),
  figure(
    'fit.head.stress',
    'Stress of the head that counts, most: von Mises, of a brittle one the greatest principal',
    'pressure',
    lame,
    ofJoint((j) => j.most.hub.stress),
    most(ofJoint((j) => j.most.hub.limit)),
  ),
  figure(
    'fit.arbor.bore-hoop',
    'Hoop stress at the hole of the arbor, most',
    'pressure',
    lame,
    ofJoint((j) => j.most.stress.shaftBore?.hoop),
  ),
  figure(
    'fit.arbor.stress',
    'Stress of the arbor that counts, most',
    'pressure',
    lame,
    ofJoint((j) => j.most.shaft.stress),
    most(ofJoint((j) => j.most.shaft.limit)),
  ),
  figure(
    'fit.yield-onset',
    'Interference at which the first part yields or cracks',
    'length',
    lame,
    ofJoint((j) => j.onsets[0]?.interference),
  ),
]
