import type { Result } from '../../input/problem.ts'
import { outOfRange } from './out-of-range.ts'

export interface EdgeInCutInput {
  /** Depth of cut, mm, above 0. */
  readonly depth: number
  /** mm, at least 0. */
  readonly noseRadius: number
  /** κ_r of the end edge, which does the main cutting: rad, above 0 and below π. */
  readonly edgeAngle: number
}

export interface EdgeInCut {
  /** Length of edge that cuts, mm. */
  readonly length: number
  /** Distance that the edge in cut covers along the radius, mm, positive from the tip outwards. */
  readonly alongRadius: number
  /** Angle of its chord against the plane of the cut surface, rad: the direction that thrust is square to. */
  readonly chordAngle: number
  /** Whether only the round nose cuts. */
  readonly insideNose: boolean
}

/**
 * Edge in cut from the lowest point of the nose up to the depth of cut. Inside the nose, r·acos(1 − a/r); beyond it,
 * r·κ + (a − r(1 − cos κ))/sin κ. Elementary geometry; the chord stands for the whole edge, since forces square to
 * each piece of edge and alike along it add up to one square to the chord.
 *
 * Problems: a figure outside the ranges of the input.
 */
export function edgeInCut({ depth, noseRadius: r, edgeAngle }: EdgeInCutInput): Result<EdgeInCut> {
  const problems = outOfRange([
    ['depth', 'length', depth, { above: 0 }],
    ['noseRadius', 'length', r, { min: 0 }],
    ['edgeAngle', 'angle', edgeAngle, { above: 0, below: Math.PI }],
  ])
  if (problems.length > 0) return { ok: false, problems }
  // 2·sin² keeps its digits where 1 − cos of a small angle would lose them.
  const noseHeight = 2 * r * Math.sin(edgeAngle / 2) ** 2
  const insideNose = depth <= noseHeight
  const length = insideNose
    ? 2 * r * Math.asin(Math.sqrt(depth / (2 * r)))
    : r * edgeAngle + (depth - noseHeight) / Math.sin(edgeAngle)
  const alongRadius = insideNose
    ? noseSide(depth, r)
    : r * Math.sin(edgeAngle) + (depth - noseHeight) / Math.tan(edgeAngle)
  return { ok: true, value: { length, alongRadius, chordAngle: Math.atan2(depth, alongRadius), insideNose } }
}

/** Half-chord of the nose at a height above its lowest point. On an overhanging edge the nose comes back above r. */
function noseSide(height: number, r: number): number {
  return Math.sqrt(height * (2 * r - height))
}
