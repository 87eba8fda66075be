import type { Result } from '../../input/problem.ts'
import { arcInCut, widestCovered } from './arc-in-cut.ts'
import type { CuttingForce } from './cutting-force.ts'
import { specificForce } from './kienzle.ts'
import { outOfRange } from './out-of-range.ts'

export interface MeanPowerInput {
  readonly force: CuttingForce
  /** Depth of cut and feed of the one edge in a turn, mm, above 0, as the force was worked out for. */
  readonly depth: number
  readonly feed: number
  /** Radius of the tip's circle, mm, above 0. */
  readonly radius: number
  /** Width of the work, mm, above 0, and how far the tip's circle runs beside its middle, mm. */
  readonly width: number
  readonly offset: number
  /** Of the spindle, rad/s, above 0. */
  readonly speed: number
}

export interface MeanPower {
  /** Over whole turns, at the tip, W. */
  readonly power: number
  /** Share of the turn in which the bit cuts, 0 to 0.5. */
  readonly shareOfTurn: number
  /** Mean chip thickness over the arc, mm. */
  readonly meanChip: number
  /** Specific cutting force at it, MPa. */
  readonly specific: number
  /** Metal taken off, mm³/s. */
  readonly removal: number
  /** As for the force: an upper bound where the mean chip is thinner than the formula holds for. */
  readonly basis: 'formula' | 'upper-bound'
}

/**
 * Mean cutting power of a one-edge cutter: P = a·w·v_f·k_c with k_c at the mean chip, h_m·(sin φ₂ − sin φ₁)/(φ₂ − φ₁)
 * over the arc from φ₁ to φ₂ either side of the feed (standard milling power formula of machining books). It is never
 * below the integral of the chip force over the arc, because that force grows less than in step with the chip: above it
 * by less than 0.6 % up to 130° of arc and 3.4 % at half a turn, for exponents up to 0.28. Below the formula's range the
 * force is bounded by that of its thinnest chip over the whole arc.
 *
 * Problems: a figure outside the ranges of the input, work that the tip's circle does not cover.
 */
export function meanPower({ force, depth, feed, radius, width, offset, speed }: MeanPowerInput): Result<MeanPower> {
  const problems = outOfRange([
    ['depth', 'length', depth, { above: 0 }],
    ['feed', 'length', feed, { above: 0 }],
    ['radius', 'length', radius, { above: 0 }],
    ['offset', 'length', offset, {}],
    ['width', 'length', width, { above: 0, max: widestCovered(radius, offset) }],
    ['speed', 'rotation-speed', speed, { above: 0 }],
  ])
  if (problems.length > 0) return { ok: false, problems }
  const { from, to } = arcInCut(radius, width, offset)
  const arc = to - from
  const meanChip = (force.chipThickness * (width / radius)) / arc
  const turnsPerSecond = speed / (2 * Math.PI)
  const removal = depth * width * feed * turnsPerSecond
  const { low } = force.chips
  const bounded = meanChip < low
  // At the thinnest chip of the range both roads give the same power.
  const kc = specificForce(force.unitForce, force.exponent, Math.max(meanChip, low))
  const bound = kc * low * force.edge.length * radius * arc * turnsPerSecond
  return {
    ok: true,
    value: {
      power: (bounded ? bound : removal * kc) / 1000,
      shareOfTurn: arc / (2 * Math.PI),
      meanChip,
      specific: kc,
      removal,
      basis: bounded ? 'upper-bound' : 'formula',
    },
  }
}
