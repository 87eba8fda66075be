import type { Result } from '../../input/problem.ts'
import { outOfRange } from '../cutting/out-of-range.ts'

export interface ScrewForceInput {
  /** Tightening torque, N·mm, above 0. */
  readonly torque: number
  /** Major diameter of the thread, mm, above 0. */
  readonly majorDiameter: number
  /** K in T = K·d·F, a plain number, above 0. */
  readonly torqueFactor: number
  /** Share of the force that may be missing, 0 to below 1. */
  readonly shortfall: number
  /** Share by which the force may be larger, at least 0. */
  readonly excess: number
}

/** Force along the screw, N. What has to hold counts on the least, what may break is judged by the most. */
export interface ScrewForce {
  readonly nominal: number
  readonly least: number
  readonly most: number
}

/**
 * Rules of thumb that a shop may change: K and the shortfall are common practice without a source; the excess is the
 * spread of ±25 % at the recommended torque that a screw maker's product guide gives.
 */
export const screwForceRules = { torqueFactor: 0.2, shortfall: 0.35, excess: 0.25 } as const

/**
 * Force of a tightened screw, F = T/(K·d) (standard torque and preload relation of machine-design books), and its
 * spread. Problems: a figure outside the ranges of the input.
 */
export function screwForce(input: ScrewForceInput): Result<ScrewForce> {
  const { torque, majorDiameter, torqueFactor, shortfall, excess } = input
  const problems = outOfRange([
    ['torque', 'torque', torque, { above: 0 }],
    ['majorDiameter', 'length', majorDiameter, { above: 0 }],
    ['torqueFactor', 'ratio', torqueFactor, { above: 0 }],
    ['shortfall', 'ratio', shortfall, { min: 0, below: 1 }],
    ['excess', 'ratio', excess, { min: 0 }],
  ])
  if (problems.length > 0) return { ok: false, problems }
  const nominal = torque / (torqueFactor * majorDiameter)
  return { ok: true, value: { nominal, least: nominal * (1 - shortfall), most: nominal * (1 + excess) } }
}
