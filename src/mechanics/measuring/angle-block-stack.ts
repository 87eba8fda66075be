import { nearestSum } from './nearest-sum.ts'

/** Angle blocks put together. rad */
export interface AngleBlockStack {
  /** Blocks whose angles add up, largest first. */
  readonly added: readonly number[]
  /** Blocks turned round, whose angles come off, largest first. */
  readonly takenOff: readonly number[]
  readonly angle: number
  /** How far that is from what was asked for; positive when it is too steep. */
  readonly off: number
}

export interface AngleBlockOptions {
  /** Whether blocks of this set can be turned round. */
  readonly subtracts: boolean
  /** Near enough, rad: no further block is added to come closer. Half a second of arc unless said. */
  readonly within?: number
  /** Most blocks, 1 to 6. Five unless said (common practice, no source). */
  readonly most?: number
}

/** What angles are counted in, rad: a thousandth of a second of arc. */
const unit = Math.PI / 180 / 3600 / 1000
const halfSecond = 500
const mostBlocks = 5

/**
 * The fewest angle blocks of a set that come near enough to an angle, each used once, else the nearest that can be put together. Angles
 * in rad: blocks above 0, the wanted one 0 to π/2, and 0 takes no blocks. Undefined for a set without blocks. Throws RangeError on angles outside
 * these ranges and on options outside theirs.
 */
export function angleBlockStack(
  set: readonly number[],
  angle: number,
  { subtracts, within = halfSecond * unit, most = mostBlocks }: AngleBlockOptions,
): AngleBlockStack | undefined {
  if (!(angle >= 0 && angle <= Math.PI / 2)) throw new RangeError(`an angle of ${angle} rad`)
  if (set.some((b) => !(b > 0))) throw new RangeError('angle blocks are above 0')
  if (!(within >= 0)) throw new RangeError(`stacks within ${within} rad`)
  if (set.length === 0) return undefined
  if (angle <= within) return { added: [], takenOff: [], angle: 0, off: -angle }
  const blocks = set.toSorted((a, b) => b - a)
  const best = nearestSum({
    values: blocks.map((b) => Math.round(b / unit)),
    wanted: Math.round(angle / unit),
    within: within / unit,
    most,
    subtracts,
  })!
  const side = (sign: 1 | -1) => best.picked.filter((_, k) => best.signs[k] === sign).map((i) => blocks[i]!)
  const [added, takenOff] = [side(1), side(-1)]
  const sum = (angles: readonly number[]) => angles.reduce((total, a) => total + a, 0)
  const made = sum(added) - sum(takenOff)
  return { added, takenOff, angle: made, off: made - angle }
}
