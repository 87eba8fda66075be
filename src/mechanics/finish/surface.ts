import type { Problem, Result } from '../../input/problem.ts'
import { outOfRange } from '../cutting/out-of-range.ts'
import { type Cusp, cuspHeight, meanDeviation, type ToolProfile } from './feed-marks.ts'

export interface SurfaceInput {
  /** Feed of one edge, mm, above 0: with one bit, per turn. */
  readonly feed: number
  /** mm, at least 0. */
  readonly noseRadius: number
  /** κ_r of the end edge, rad, above 0 and below π. */
  readonly edgeAngle: number
  /** κ_r′ of the work-side edge, rad, above −π/2 and below π/2. */
  readonly workSideAngle: number
}

/** What the geometry of feed and nose leaves; a real surface is rougher, by chatter, built-up edge and tearing. */
export type Surface =
  | {
      readonly kind: 'feed-marks'
      readonly cusp: Cusp
      /** R_t and R_a, mm. */
      readonly height: number
      readonly meanDeviation: number
    }
  /** κ_r′ = 0: the whole work side of the bit rubs on the finished surface. The formulas would promise a mirror. */
  | { readonly kind: 'rubbing' }
  /** κ_r′ < 0: the work side falls away inwards, so that not the tip but the bit's inner end cuts the surface. */
  | { readonly kind: 'inner-end-cuts' }

/** A work-side edge flatter than this rubs, rad: half a minute, less than any shop grinds to. */
const rubbingBelow = Math.PI / 180 / 120

/**
 * Surface that the feed leaves, by nose radius and both edges in use. An end edge that overhangs (above 90°) leaves the
 * same marks as one at 90°. Problems: a figure outside the ranges of the input.
 */
export function surfaceLeft(input: SurfaceInput): Result<Surface> {
  const problems = rangeProblems(input)
  problems.push(...outOfRange([['feed', 'length', input.feed, { above: 0 }]]))
  if (problems.length > 0) return { ok: false, problems }
  const profile = profileOf(input)
  if (typeof profile === 'string') return { ok: true, value: { kind: profile } }
  const { height, cusp } = cuspHeight(profile, input.feed)
  return {
    ok: true,
    value: { kind: 'feed-marks', cusp, height, meanDeviation: meanDeviation(profile, input.feed) },
  }
}

/**
 * Largest feed, mm, that leaves no more than a wanted R_a (mm, above 0) with the same tool; undefined where the bit
 * rubs or its inner end cuts, since no feed helps there. Found by halving: R_a grows with the feed.
 */
export function largestFeedFor(wanted: number, tool: Omit<SurfaceInput, 'feed'>): Result<number | undefined> {
  const problems = rangeProblems(tool)
  problems.push(...outOfRange([['wanted', 'length', wanted, { above: 0 }]]))
  if (problems.length > 0) return { ok: false, problems }
  const profile = profileOf(tool)
  if (typeof profile === 'string') return { ok: true, value: undefined }
  let [enough, tooMuch] = [0, wanted]
  while (meanDeviation(profile, tooMuch) <= wanted) [enough, tooMuch] = [tooMuch, 2 * tooMuch]
  for (let step = 0; step < 60; step++) {
    const middle = (enough + tooMuch) / 2
    if (meanDeviation(profile, middle) <= wanted) enough = middle
    else tooMuch = middle
  }
  return { ok: true, value: enough }
}

function rangeProblems({ noseRadius, edgeAngle, workSideAngle }: Omit<SurfaceInput, 'feed'>): Problem[] {
  return outOfRange([
    ['noseRadius', 'length', noseRadius, { min: 0 }],
    ['edgeAngle', 'angle', edgeAngle, { above: 0, below: Math.PI }],
    ['workSideAngle', 'angle', workSideAngle, { above: -Math.PI / 2, below: Math.PI / 2 }],
  ])
}

function profileOf(tool: Omit<SurfaceInput, 'feed'>): ToolProfile | 'rubbing' | 'inner-end-cuts' {
  const { noseRadius, edgeAngle, workSideAngle } = tool
  if (workSideAngle < -rubbingBelow) return 'inner-end-cuts'
  if (workSideAngle < rubbingBelow) return 'rubbing'
  return { noseRadius, edges: [workSideAngle, Math.min(edgeAngle, Math.PI / 2)] }
}
