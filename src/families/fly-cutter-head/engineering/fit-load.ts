import { demandOf } from '../../../mechanics/fit/demand.ts'
import type { HeadDesign } from '../design.ts'
import { cuttingIfAny } from './cutting.ts'

/** What head and arbor have to carry between them, demand factors included. N·mm and N. */
export interface FitLoad {
  /** Torque of the cut: peak of one tooth, times the cut factor; 0 where the force of this work is not known. */
  readonly cutTorque: number
  /** Torque of the motor at the speed of the job, times the jam factor. */
  readonly jamTorque: number
  /** Pull along the axis that the joint has to take up: without a shoulder the thrust as well. */
  readonly axial: number
  /** Moment that bends the head off the arbor, about the middle of the joint, `depth` mm below the mounting face. */
  bending(depth: number): number
  /** Speed the motor's torque was taken at, rad/s. */
  readonly speed: number
}

/** Load on the joint. Impact counts in torque, axial force and moment alike. */
export const fitLoadOf = (design: HeadDesign): FitLoad => design.once('fit load', () => loadOf(design))

function loadOf(design: HeadDesign): FitLoad {
  const { parameters, layout } = design
  const { settings, machine, arbor } = parameters
  const cutting = cuttingIfAny(design)
  const { main = 0, radial = 0, axial = 0 } = cutting?.load?.force ?? {}
  const cutFactor = settings.fit['cut-factor']
  const speed = cutting?.runAt ?? fastest(machine.speeds)
  const demand = demandOf({
    toothTorque: cutting?.load?.peakTorque ?? 0,
    power: machine.power,
    speed,
    cutFactor,
    jamFactor: settings.fit['jam-factor'],
  })
  if (!demand.ok) throw new RangeError('a load that the schema lets through')
  // A shoulder takes up what pushes the head on to the arbor, never what pulls it off.
  const pull = arbor.kind === 'shank' ? Math.max(0, -axial) : Math.abs(axial)
  return {
    cutTorque: demand.value.fromCut,
    jamTorque: demand.value.fromJam,
    axial: cutFactor * pull,
    bending(depth) {
      const lever = -layout.bit.tip[2] - depth
      // Thrust inwards and thrust upwards bend against each other; how they share is a rule of thumb, so the larger counts.
      const [inward, upward] = [lever * radial, layout.bit.tipRadius * axial]
      const inPlane = axial >= 0 ? Math.max(inward, upward) : inward - upward
      return cutFactor * Math.hypot(lever * main, inPlane)
    },
    speed,
  }
}

/** Only for a design whose cut cannot be worked out, which never gets as far as a check. */
const fastest = (speeds: HeadDesign['parameters']['machine']['speeds']): number =>
  Array.isArray(speeds) ? Math.max(...speeds) : speeds.fastest
