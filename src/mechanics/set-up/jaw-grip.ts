import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'
import { type TiltedWork, tiltedHeights } from './tilted-work.ts'

export interface JawGripInput {
  readonly work: TiltedWork
  /** Finished face above the jaws that the cuts need, mm, 0 or more. */
  readonly stickUp: number
  /** Bed of the vise to the top of its jaws, mm, above 0. */
  readonly jawHeight: number
  /** Least flat to hold, mm, 0 or more, and the same as a share of the height h·cos a, 0 to below 1; the larger counts (rules of thumb). */
  readonly leastGrip: number
  readonly gripShare: number
}

/** What the jaws can do with a tilted head, mm. Whether it is enough is for the caller to say. */
export interface JawGrip {
  /** Flat between the jaws, below their tops, when the face stands just as high as the cuts need. Negative: the jaws hold nothing of it. */
  readonly left: number
  readonly wanted: number
  /** Under the lowest edge, above the bed, for that: 0 where the head stands on the bed and sticks out further by itself. */
  readonly underNeeded: number
  /** The most under it that still leaves the wanted grip; below `underNeeded` where no height does both. */
  readonly underMost: number
  /** Depth on the axis at which a head is just long enough for stick-up and grip. */
  readonly leastDepth: number
  /** Jaws as high as this hold the wanted flat of a head that stands on the bed. */
  readonly leastJawHeight: number
}

/**
 * Grip left h·cos a − (l/2)·sin a − J, wanted max(g, s·h·cos a). Lowest edge above the bed: jaw height + J − lowest, at least 0. A head is long enough
 * when both halves of the wanted grip are kept: h ≥ (g + J + (l/2)·sin a)/cos a and h ≥ (J + (l/2)·sin a)/((1 − s)·cos a). Problems: figures outside
 * their ranges, and those of `tiltedHeights`.
 */
export function jawGrip({ work, stickUp, jawHeight, leastGrip, gripShare }: JawGripInput): Result<JawGrip> {
  const heights = tiltedHeights(work)
  const faults = new InputFaults()
  if (!heights.ok) faults.problems.push(...heights.problems)
  faults.keeps('stickUp', stickUp, 'length', { min: 0 })
  faults.keeps('jawHeight', jawHeight, 'length', { above: 0 })
  faults.keeps('leastGrip', leastGrip, 'length', { min: 0 })
  faults.keeps('gripShare', gripShare, 'ratio', { min: 0, below: 1 })
  if (!heights.ok || faults.problems.length > 0) return { ok: false, problems: faults.problems }
  const { lowest, flatEnd } = heights.value
  const cos = Math.cos(work.tilt)
  const lost = (work.flat / 2) * Math.sin(work.tilt)
  const wanted = Math.max(leastGrip, gripShare * work.depthOnAxis * cos)
  return {
    ok: true,
    value: {
      left: flatEnd - stickUp,
      wanted,
      underNeeded: Math.max(0, jawHeight + stickUp - lowest),
      underMost: flatEnd - wanted + jawHeight - lowest,
      leastDepth: Math.max((leastGrip + stickUp + lost) / cos, (stickUp + lost) / ((1 - gripShare) * cos)),
      leastJawHeight: lowest - flatEnd + wanted,
    },
  }
}

/** Where a head stands on parallels or packing of a height `under` (mm, 0 or more): face above the jaws, and flat held. */
export function heldOn({
  work,
  jawHeight,
  under,
}: Pick<JawGripInput, 'work' | 'jawHeight'> & { readonly under: number }): Result<{
  readonly stickUp: number
  readonly grip: number
}> {
  const heights = tiltedHeights(work)
  const faults = new InputFaults()
  if (!heights.ok) faults.problems.push(...heights.problems)
  faults.keeps('jawHeight', jawHeight, 'length', { above: 0 })
  faults.keeps('under', under, 'length', { min: 0 })
  if (!heights.ok || faults.problems.length > 0) return { ok: false, problems: faults.problems }
  const stickUp = under + heights.value.lowest - jawHeight
  return { ok: true, value: { stickUp, grip: heights.value.flatEnd - stickUp } }
}
