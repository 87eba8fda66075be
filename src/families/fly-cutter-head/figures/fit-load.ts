import type { Figure } from '../../../figures/figure.ts'
import { temperatureLosing } from '../../../mechanics/fit/service-temperature.ts'
import type { HeadDesign } from '../design.ts'
import { holdOf, isShrunk, joinedLength, jointSpeedLimit, wantedTorque } from '../engineering/fit.ts'
import { fitLoadOf } from '../engineering/fit-load.ts'
import { figure, lame, least, ofJoint } from './fit-figure.ts'

const grip =
  'grip of a press joint, μ·π·d·L·p, at the least interference and the low friction; textbooks of machine design'
const demand = 'demand on the joint (rule of thumb)'

/** What cut and jam ask of the joint, against what it holds. */
export const fitLoadFigures: readonly Figure<HeadDesign>[] = [
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
