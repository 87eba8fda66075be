import type { Result } from '../../input/problem.ts'
import type { AdvisedSpeed } from '../cutting/advised-speed.ts'
import { spindleSpeedFor } from '../cutting/cutting-speed.ts'
import { outOfRange } from '../cutting/out-of-range.ts'

/** What can end the life of a turning tool, in the order in which limits are shown. */
export type SpeedLimitName = 'bit-hold' | 'joint' | 'unbalance-force' | 'spindle-maximum' | 'tip-speed' | 'proof-run'

export interface SpeedLimit {
  readonly name: SpeedLimitName
  /** Speed that the limit stands for, rad/s; undefined where it does not limit this tool. */
  readonly at: number | undefined
  /** What counts of it, rad/s: all of it, of a proof run its share. */
  readonly counted: number | undefined
}

/**
 * The speed that must never be exceeded: a safety limit. Its own shape, so that it can't stand where an
 * `AdvisedSpeed` is wanted, nor the other way round.
 */
export interface NeverExceedSpeed {
  readonly kind: 'never-exceed'
  /** rad/s */
  readonly notAbove: number
  /** The limit that it comes from. */
  readonly cause: SpeedLimitName
  /** Every limit, in a fixed order, for the report. */
  readonly limits: readonly SpeedLimit[]
}

export interface NeverExceedInput {
  /** Spindle speed at which the bit's hold falls to the wanted factor, rad/s, at least 0; undefined: no speed does. */
  readonly bitHold: number | undefined
  /** The same for the joint between head and arbor. */
  readonly joint: number | undefined
  /** Spindle speed at which the unbalance force reaches its limit, rad/s, at least 0; undefined: in balance. */
  readonly unbalanceForce: number | undefined
  /** Fastest speed of the spindle, rad/s, above 0. */
  readonly spindleMaximum: number
  /** Circle of the tip, mm, and the largest speed on it, mm/s, above 0. */
  readonly swing: number
  readonly tipSpeed: number
  /** Speed at which the tool was run up behind a guard and stayed whole, rad/s, above 0; undefined: not recorded. */
  readonly proofRun: number | undefined
  readonly rules: NeverExceedRules
}

export interface NeverExceedRules {
  /** Share of the lowest limit, above 0, at most 1. */
  readonly share: number
  /** Share of a proof run that counts as a limit, above 0, at most 1. */
  readonly proofShare: number
}

/**
 * Rules of thumb. The proof share is about 1/1.6: ISO 15641 proves cutters at 1.6 times the speed marked on them (from
 * memory). A tip speed of 25 m/s is common practice without a source.
 */
export const neverExceedRules: NeverExceedRules = { share: 0.8, proofShare: 0.6 }
export const usualTipSpeed = 25_000

/**
 * The never-exceed speed: a share of the lowest of all limits. Of equal limits the first in the list is named. A limit
 * of 0 (a bit that does not even hold at rest) gives 0: the tool must not run.
 *
 * Problems: a figure outside the ranges of the input.
 */
export function neverExceed(input: NeverExceedInput): Result<NeverExceedSpeed> {
  const { bitHold, joint, unbalanceForce, spindleMaximum, swing, tipSpeed, proofRun, rules } = input
  const least = (path: string, speed: number | undefined, bounds: { min: number } | { above: number }) =>
    speed === undefined ? [] : [[path, 'rotation-speed', speed, bounds] as const]
  const problems = outOfRange([
    ...least('bitHold', bitHold, { min: 0 }),
    ...least('joint', joint, { min: 0 }),
    ...least('unbalanceForce', unbalanceForce, { min: 0 }),
    ['spindleMaximum', 'rotation-speed', spindleMaximum, { above: 0 }],
    ['swing', 'length', swing, { above: 0 }],
    ['tipSpeed', 'cutting-speed', tipSpeed, { above: 0 }],
    ...least('proofRun', proofRun, { above: 0 }),
    ['rules.share', 'ratio', rules.share, { above: 0, max: 1 }],
    ['rules.proofShare', 'ratio', rules.proofShare, { above: 0, max: 1 }],
  ])
  if (problems.length > 0) return { ok: false, problems }

  const whole = (name: SpeedLimitName, at: number | undefined): SpeedLimit => ({ name, at, counted: at })
  const spindle = { name: 'spindle-maximum', at: spindleMaximum, counted: spindleMaximum } as const
  const limits: readonly SpeedLimit[] = [
    whole('bit-hold', bitHold),
    whole('joint', joint),
    whole('unbalance-force', unbalanceForce),
    spindle,
    whole('tip-speed', spindleSpeedFor(tipSpeed, swing)),
    { name: 'proof-run', at: proofRun, counted: proofRun === undefined ? undefined : proofRun * rules.proofShare },
  ]
  let [cause, lowest]: [SpeedLimitName, number] = [spindle.name, Infinity]
  for (const { name, counted } of limits) {
    if (counted !== undefined && counted < lowest) [cause, lowest] = [name, counted]
  }
  return { ok: true, value: { kind: 'never-exceed', notAbove: lowest * rules.share, cause, limits } }
}

/** Whether a speed to cut at would break the safety limit. */
export const exceeds = (advised: AdvisedSpeed, limit: NeverExceedSpeed): boolean => advised.runAt > limit.notAbove
