import { nearestSum } from './nearest-sum.ts'

/** Gauge blocks wrung together. */
export interface GaugeStack {
  /** Lengths of the blocks, longest first, mm. */
  readonly blocks: readonly number[]
  /** Their sum, mm. */
  readonly height: number
  /** How far that is from what was asked for, mm; positive when it is too high. */
  readonly off: number
}

export interface StackOptions {
  /** Near enough, mm: no further block is wrung on to come closer. Half of a tenth of a micrometre unless said. */
  readonly within?: number
  /** Most blocks, 1 to 5; each joint adds its own film. Four unless said (common practice, no source). A set of 47 needs five. */
  readonly most?: number
}

/** What sizes are counted in, mm: a nanometre, so that sums of inch blocks are whole too. */
const unit = 1e-6
const nearEnough = 0.05e-3
const mostBlocks = 4
const mostEver = 5

/**
 * The fewest blocks of a set that come near enough to a height, else the nearest that can be built. Of equal stacks the one
 * with the longest block. Undefined for a set without blocks. Lengths in mm, above 0; a set may have a length twice. Throws RangeError on a
 * height or a block that is not above 0, and on options outside their ranges.
 */
export function gaugeStack(
  set: readonly number[],
  height: number,
  { within = nearEnough, most = mostBlocks }: StackOptions = {},
): GaugeStack | undefined {
  if (!(height > 0) || set.some((b) => !(b > 0))) throw new RangeError('gauge blocks and heights are above 0')
  if (!(within >= 0)) throw new RangeError(`stacks within ${within} mm`)
  if (!(most >= 1 && most <= mostEver)) throw new RangeError(`stacks of ${most} blocks`)
  const blocks = set.map((b) => Math.round(b / unit)).sort((a, b) => b - a)
  const wanted = Math.round(height / unit)
  const best = nearestSum({ values: blocks, wanted, within: within / unit, most, subtracts: false })
  return (
    best && {
      blocks: best.picked.map((i) => inMm(blocks[i]!)),
      height: inMm(best.sum),
      off: best.sum === wanted ? 0 : inMm(best.sum) - height,
    }
  )
}

/** A division by a whole number gives the number that a person would write; a product with 1e-6 does not. */
const inMm = (units: number): number => units / 1e6

/** Height under one end of a sine bar, mm: centre distance times the sine of the angle (rad, 0 to π/2). */
export const sineBarHeight = (bar: number, angle: number): number => bar * Math.sin(angle)

/** Angle that a stack under a sine bar sets, rad. Throws RangeError on a stack that is longer than the bar. */
export function sineBarAngle(bar: number, height: number): number {
  if (!(bar > 0 && Math.abs(height) <= bar)) throw new RangeError(`a stack of ${height} mm under a bar of ${bar} mm`)
  return Math.asin(height / bar)
}
