import type { Result } from '../../input/problem.ts'
import type { Range } from '../../tables/range.ts'
import { cuttingSpeedAt, spindleSpeedFor } from './cutting-speed.ts'
import { outOfRange } from './out-of-range.ts'

/** Every speed the spindle has, or the ends of a variable drive; rad/s, above 0. */
export type SpindleSpeeds = readonly number[] | { readonly slowest: number; readonly fastest: number }

/** A speed to cut at, for the life of the edge. Never a safety limit: that is a `NeverExceedSpeed`. */
export interface AdvisedSpeed {
  readonly kind: 'advised'
  /** rad/s */
  readonly runAt: number
  /** Of the tip at that speed, mm/s. */
  readonly cuttingSpeed: number
}

export interface SpeedAdviceInput {
  /** Circle of the tip, mm, above 0. */
  readonly swing: number
  /** Cutting speed by bit and work material, mm/s, above 0. */
  readonly range: Range
  /** The user's own cutting speed, mm/s, above 0; it takes the place of the range's high end. */
  readonly own?: number
  readonly spindle: SpindleSpeeds
}

export interface SpeedAdvice {
  /** Spindle speeds that give the range at this swing, rad/s. */
  readonly wanted: Range
  /**
   * `in-range`: a speed of the spindle lies in the range. `between-steps`: one lies below it and the next above.
   * `spindle-too-slow`: even the fastest lies below it. `slowest-too-fast`: even the slowest lies above it.
   */
  readonly standing: 'in-range' | 'between-steps' | 'spindle-too-slow' | 'slowest-too-fast'
  /** The spindle's nearest speed not above the high end; undefined where the slowest is too fast. */
  readonly advised: AdvisedSpeed | undefined
  /** The next speed up, where the spindle has one; undefined on a variable drive that can run at the high end. */
  readonly nextAbove: AdvisedSpeed | undefined
  /** Largest swing that the slowest speed of this spindle suits, mm. */
  readonly largestSwing: number
  /** How the user's own speed stands against the range; undefined where there is none. */
  readonly own: 'below-range' | 'in-range' | 'above-range' | undefined
}

/**
 * The speed of the spindle to cut at: n = v/(π·D), the nearest that the spindle has not above the high end of the
 * range; the speeds a spindle really has decide, not the formula. With a speed of the user's own the range runs up to
 * that instead, and from its low end or from the own speed, whichever is lower.
 *
 * Problems: no speeds, a figure that is not above zero, a range or a drive whose ends are exchanged.
 */
export function adviseSpeed({ swing, range, own, spindle }: SpeedAdviceInput): Result<SpeedAdvice> {
  const listed = 'slowest' in spindle ? [spindle.slowest, spindle.fastest] : spindle
  const problems = outOfRange([
    ['swing', 'length', swing, { above: 0 }],
    ['range.low', 'cutting-speed', range.low, { above: 0 }],
    ['range.high', 'cutting-speed', range.high, { min: range.low }],
    ...(own === undefined ? [] : [['own', 'cutting-speed', own, { above: 0 }] as const]),
    ...listed.map((speed, at) => [`spindle.${at}`, 'rotation-speed', speed, { above: 0 }] as const),
    ...('slowest' in spindle
      ? [['spindle.fastest', 'rotation-speed', spindle.fastest, { min: spindle.slowest }] as const]
      : []),
  ])
  if (listed.length === 0) {
    problems.push({
      code: 'missing-key',
      where: { file: '', path: 'spindle' },
      found: 'no spindle speed',
      allowed: 'at least one speed',
    })
  }
  if (problems.length > 0) return { ok: false, problems }

  const high = own ?? range.high
  const wanted = {
    low: spindleSpeedFor(Math.min(range.low, high), swing),
    high: spindleSpeedFor(high, swing),
  }
  const speeds = listed.toSorted((a, b) => a - b)
  const slowest = speeds[0] ?? 0
  // A speed asked for outright must be found again after the detour by the cutting speed.
  const highest = wanted.high * (1 + 1e-12)
  const continuous = 'slowest' in spindle && slowest <= highest
  const fitting = continuous ? Math.min(wanted.high, spindle.fastest) : speeds.findLast((speed) => speed <= highest)
  const above = continuous ? undefined : speeds.find((speed) => speed > highest)
  const standing =
    fitting === undefined
      ? 'slowest-too-fast'
      : fitting >= wanted.low * (1 - 1e-12)
        ? 'in-range'
        : above === undefined
          ? 'spindle-too-slow'
          : 'between-steps'
  const at = (runAt: number | undefined): AdvisedSpeed | undefined =>
    runAt === undefined ? undefined : { kind: 'advised', runAt, cuttingSpeed: cuttingSpeedAt(runAt, swing) }
  return {
    ok: true,
    value: {
      wanted,
      standing,
      advised: at(fitting),
      nextAbove: at(above),
      largestSwing: (2 * high) / slowest,
      own:
        own === undefined ? undefined : own < range.low ? 'below-range' : own > range.high ? 'above-range' : 'in-range',
    },
  }
}
