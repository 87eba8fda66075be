import type { Result } from '../../input/problem.ts'
import { InputFaults } from './input-faults.ts'

/** What drives and what resists; factors are rules of thumb. */
export interface DemandInput {
  /** Peak torque while one tooth cuts, N·mm, 0 or more. */
  readonly toothTorque: number
  /** Of the spindle motor, W, above 0. */
  readonly power: number
  /** Slowest speed that the job will run at, rad/s, above 0. */
  readonly speed: number
  /** Over the tooth's torque; left out: 2, since an interrupted cut strikes. */
  readonly cutFactor?: number
  /** Over the jam torque; left out: 1.5, since a jammed spindle gives its momentum besides. */
  readonly jamFactor?: number
}

/** Torques that the joint must carry, N·mm. */
export interface Demand {
  readonly fromCut: number
  readonly fromJam: number
  /** The larger of the two. */
  readonly torque: number
  readonly governs: 'cut' | 'jam'
}

/**
 * Torque that a joint must carry: peak single-tooth torque × 2, and what the motor gives at that speed (power / speed)
 * × 1.5, whichever is larger. Rules of thumb. Problems: no power, a spindle that stands still, a negative torque, a
 * factor below 1. RangeError for NaN or infinity.
 */
export function demandOf(input: DemandInput): Result<Demand> {
  const { toothTorque, power, speed, cutFactor = 2, jamFactor = 1.5 } = input
  const faults = new InputFaults()
  faults.keeps('toothTorque', toothTorque, 'torque', { min: 0 })
  faults.keeps('power', power, 'power', { above: 0 })
  faults.keeps('speed', speed, 'rotation-speed', { above: 0 })
  faults.keeps('cutFactor', cutFactor, 'ratio', { min: 1 })
  faults.keeps('jamFactor', jamFactor, 'ratio', { min: 1 })
  return faults.result(() => {
    const fromCut = cutFactor * toothTorque
    const fromJam = jamFactor * jamTorque(power, speed)
    const governs = fromCut >= fromJam ? 'cut' : 'jam'
    return { fromCut, fromJam, torque: Math.max(fromCut, fromJam), governs }
  })
}

/** Torque, N·mm, that a motor of some power, W, gives a spindle at some speed, rad/s: 1 W·s is 1000 N·mm. */
export function jamTorque(power: number, speed: number): number {
  if (!(speed > 0)) throw new RangeError(`speed of a spindle that gives torque: ${speed}`)
  return (1000 * power) / speed
}
