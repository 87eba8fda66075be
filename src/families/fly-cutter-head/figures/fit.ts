import type { Figure } from '../../../figures/figure.ts'
import type { Joint } from '../../../mechanics/fit/joint.ts'
import type { MatchedFit } from '../../../mechanics/fit/matched-fit.ts'
import { temperatureLosing } from '../../../mechanics/fit/service-temperature.ts'
import { isAllowed, type WayToHold, waysToHold } from '../../../mechanics/fit/way-to-hold.ts'
import type { HeadDesign } from '../design.ts'
import {
  heatLimit,
  holdOf,
  isShrunk,
  joinedLength,
  jointOfHead,
  jointSpeedLimit,
  trappedAir,
  wantedTorque,
} from '../engineering/fit.ts'
import { fitLoadOf } from '../engineering/fit-load.ts'
import { drawbarPull } from '../engineering/shank.ts'
import { otherWaysOf } from '../engineering/ways-to-hold.ts'

type Of = (design: HeadDesign) => number | undefined
type Held = Pick<Figure<HeadDesign>, 'limit' | 'limitIs'>

const lame = 'thick cylinders (Lamé), elastic, plane stress'
const grip =
  'grip of a press joint, μ·π·d·L·p, at the least interference and the low friction; textbooks of machine design'
const smoothing = 'smoothing by a share of Rz of both faces: DIN 7190 (second-hand); the share is a setting'
const demand = 'demand on the joint (rule of thumb)'
const heat = 'thermal expansion; clearance and limits are rules of thumb'

const figure = (
  id: string,
  label: string,
  kind: Figure<HeadDesign>['kind'],
  source: string,
  of: Of,
  held: Held = {},
) => ({
  id,
  label,
  kind,
  source,
  of,
  ...held,
})

const least = (limit: Of): Held => ({ limit, limitIs: 'least' })
const most = (limit: Of): Held => ({ limit, limitIs: 'most' })

/** A figure of the joint, of a head that has one. */
const ofJoint =
  (of: (joint: Joint, design: HeadDesign) => number | undefined): Of =>
  (design) => {
    const joint = jointOfHead(design)
    return joint && of(joint, design)
  }

/** Limits of a matched spigot for the smallest or the largest bore that the zone allows. */
const turnTo =
  (bore: 0 | -1, end: 'smallest' | 'largest'): Of =>
  ({ layout: { fit } }) =>
    fit?.kind === 'matched' ? (fit as MatchedFit).turnTo.at(bore)?.spigot[end] : undefined

const fitSource = 'limits of the fit, at 20 °C'
const matchedSource = 'spigot turned to the measured bore, at 20 °C; common practice, no source'

const limits: readonly Figure<HeadDesign>[] = [
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

const strength: readonly Figure<HeadDesign>[] = [
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

const load: readonly Figure<HeadDesign>[] = [
  figure(
    'fit.demand.cut',
    'Torque of the cut on the joint, its blow counted in',
    'torque',
    `${demand}: peak of one tooth times the cut factor`,
    (d) => fitLoadOf(d).cutTorque,
  ),
  figure(
    'fit.demand.jam',
    'Torque of the motor in a jam',
    'torque',
    `${demand}: power over speed, times the jam factor`,
    (d) => fitLoadOf(d).jamTorque,
  ),
  figure(
    'fit.demand.bending',
    'Moment of the cut on the joint, its blow counted in',
    'torque',
    `${demand}: forces at the tip about the middle of the joint`,
    (d) => fitLoadOf(d).bending(joinedLength(d).middle),
  ),
  figure(
    'fit.capacity.torque',
    'Torque that the joint carries as it is put together',
    'torque',
    grip,
    ofJoint((j, d) => holdOf(d, j).torque),
    least(wantedTorque),
  ),
  figure(
    'fit.capacity.axial',
    'Force along the axis that the joint carries',
    'force',
    grip,
    ofJoint((j, d) => holdOf(d, j).axial),
  ),
  figure(
    'fit.capacity.bending',
    'Moment at which the joint gapes on one side',
    'torque',
    'p·d·L²/6, pressure spread evenly; textbooks of machine elements',
    ofJoint((j, d) => holdOf(d, j).bending),
    least((d) => fitLoadOf(d).bending(joinedLength(d).middle)),
  ),
  figure(
    'fit.pressed.torque',
    'Torque that it carries pressed',
    'torque',
    grip,
    ofJoint((j) => j.least.pressed.torque),
  ),
  figure(
    'fit.shrunk.torque',
    'Torque that it carries shrunk on',
    'torque',
    grip,
    ofJoint((j) => j.least.shrunk.torque),
  ),
  figure(
    'fit.slip-factor',
    'Capacity over what the cut asks, torque and pull together',
    'ratio',
    grip,
    ofJoint((j, d) => holdOf(d, j).slip),
    least((d) => d.parameters.settings.fit['safety-factor']),
  ),
  figure(
    'fit.needed.interference',
    'Least interference that carries the cut with the wanted safety',
    'length',
    lame,
    ofJoint(({ needed }, d) => needed[isShrunk(d) ? 'shrunk' : 'pressed'].interference),
  ),
  figure(
    'fit.needed.length',
    'Length that does so at the least interference',
    'length',
    grip,
    ofJoint(({ needed }, d) => needed[isShrunk(d) ? 'shrunk' : 'pressed'].length),
  ),
  figure(
    'fit.speed-that-loosens',
    'Speed at which the turning hub has opened until the joint just carries the cut',
    'rotation-speed',
    'free growth of turning rings; theory of elasticity',
    jointSpeedLimit,
  ),
  figure(
    'fit.warmth-that-loosens',
    'Temperature of head and arbor together that takes the whole interference',
    'temperature',
    'difference of thermal expansion',
    ofJoint((j, d) =>
      temperatureLosing(j.least.effective, j.diameter, {
        hub: d.layout.materials.body.expansion,
        shaft: d.layout.materials.arbor.expansion,
      }),
    ),
  ),
]

const assembly: readonly Figure<HeadDesign>[] = [
  figure(
    'fit.press-force',
    'Force of the press at full depth, most',
    'force',
    'μ·π·d·L·p at the most interference, the high friction and nothing smoothed',
    ofJoint((j, d) => (isShrunk(d) ? undefined : j.most.pressForce)),
  ),
  figure(
    'fit.head-temperature',
    'Temperature of the head to slip over the largest spigot',
    'temperature',
    heat,
    ofJoint(({ most: { assembly: plan } }) => (plan.need === 'none' ? undefined : plan.heat.temperature)),
    most(heatLimit),
  ),
  figure(
    'fit.head-temperature.cold-arbor',
    'The same with the arbor in liquid nitrogen',
    'temperature',
    heat,
    ofJoint(({ most: { assembly: plan } }) => (plan.need === 'none' ? undefined : plan.both?.temperature)),
    most(heatLimit),
  ),
  figure(
    'fit.assembly-clearance',
    'Room to slip the spigot in',
    'length',
    'max(0.001·d, 0.02 mm) (rule of thumb)',
    ofJoint((j) => j.most.assembly.clearance),
  ),
  figure('fit.trapped-air', 'Force of the air shut in below the spigot', 'force', 'Boyle, without leaks', (d) => {
    const force = trappedAir(d)?.force
    return force !== undefined && Number.isFinite(force) ? force : undefined
  }),
  figure(
    'shank.drawbar-pull',
    'Pull of the drawbar at which the taper carries the wanted torque',
    'force',
    'as of a cone clutch, N = F/(sin α + μ·cos α); textbooks of machine design',
    drawbarPull,
  ),
]

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
const ways: readonly Figure<HeadDesign>[] = waysToHold.flatMap((way) => {
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

/** Fit of head and arbor: what to turn and bore to, what that holds and stands, how it goes together, how else to hold it. */
export const fitFigures: readonly Figure<HeadDesign>[] = [...limits, ...strength, ...load, ...assembly, ...ways]
