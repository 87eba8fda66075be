import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'
import { type TiltedWork, tiltedHeights } from './tilted-work.ts'

export interface HeldWork {
  readonly work: TiltedWork
  /** Bed of the vise to the top of its jaws, mm, above 0. */
  readonly jawHeight: number
  /** Least flat to hold, mm, 0 or more (rule of thumb). */
  readonly leastGrip: number
  /**
   * The same as a share, 0 to 1, of the height h·cos a of the work, or of what stands above the jaws; the larger of the two counts (rules
   * of thumb).
   */
  readonly gripShare: number
  readonly shareOf: 'height' | 'stick-up'
}

/** What the jaws can do with tilted work, mm. Whether it is enough is for the caller to say. */
export interface JawGrip {
  /** Flat between the jaws, below their tops, when the face stands just as high as the cuts need. Negative: the jaws hold nothing of it. */
  readonly left: number
  readonly wanted: number
  /** Under the lowest edge, above the bed, for that: 0 where the work stands on the bed and sticks out further by itself. */
  readonly underNeeded: number
  /** The most under it that still leaves the wanted grip; below `underNeeded` where no height does both. */
  readonly underMost: number
}

/**
 * Grip left h·cos a − (l/2)·sin a − J, wanted max(g, s·h·cos a) or max(g, s·J). Lowest edge above the bed: jaw height + J − lowest, at
 * least 0. `stickUp`: J, finished face above the jaws that the cuts need, mm, 0 or more. Problems: figures outside their ranges, and those of
 * `tiltedHeights`.
 */
export function jawGrip(held: HeldWork & { readonly stickUp: number }): Result<JawGrip> {
  const { work, stickUp, jawHeight, leastGrip, gripShare, shareOf } = held
  const heights = tiltedHeights(work)
  const faults = heldFaults(held)
  faults.keeps('stickUp', stickUp, 'length', { min: 0 })
  if (!heights.ok || faults.problems.length > 0) {
    return { ok: false, problems: [...(heights.ok ? [] : heights.problems), ...faults.problems] }
  }
  const { lowest, flatEnd } = heights.value
  // Where every millimetre that it stands out wants a share more of grip, both come out of the same length.
  const highest =
    shareOf === 'height' ? flatEnd - wantedGrip(held, 0) : Math.min(flatEnd - leastGrip, flatEnd / (1 + gripShare))
  return {
    ok: true,
    value: {
      left: flatEnd - stickUp,
      wanted: wantedGrip(held, stickUp),
      underNeeded: Math.max(0, jawHeight + stickUp - lowest),
      underMost: highest + jawHeight - lowest,
    },
  }
}

/** Where work stands on parallels or packing of a height `under` (mm, 0 or more): face above the jaws, flat held, and flat wanted. */
export function heldOn(held: HeldWork & { readonly under: number }): Result<{
  readonly stickUp: number
  readonly grip: number
  readonly wanted: number
}> {
  const { work, jawHeight, under } = held
  const heights = tiltedHeights(work)
  const faults = heldFaults(held)
  faults.keeps('under', under, 'length', { min: 0 })
  if (!heights.ok || faults.problems.length > 0) {
    return { ok: false, problems: [...(heights.ok ? [] : heights.problems), ...faults.problems] }
  }
  const stickUp = under + heights.value.lowest - jawHeight
  return { ok: true, value: { stickUp, grip: heights.value.flatEnd - stickUp, wanted: wantedGrip(held, stickUp) } }
}

function wantedGrip({ work, leastGrip, gripShare, shareOf }: HeldWork, stickUp: number): number {
  const of = shareOf === 'height' ? work.depthOnAxis * Math.cos(work.tilt) : stickUp
  return Math.max(leastGrip, gripShare * of)
}

function heldFaults({ jawHeight, leastGrip, gripShare }: HeldWork): InputFaults {
  const faults = new InputFaults()
  faults.keeps('jawHeight', jawHeight, 'length', { above: 0 })
  faults.keeps('leastGrip', leastGrip, 'length', { min: 0 })
  faults.keeps('gripShare', gripShare, 'ratio', { min: 0, max: 1 })
  return faults
}
