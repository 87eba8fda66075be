import type { Result } from '../../input/problem.ts'
import { outOfRange } from '../cutting/out-of-range.ts'

export interface GripRatioInput {
  /** Length of bit held, mm, at least 0; length that stands out, mm, above 0. */
  readonly grip: number
  readonly overhang: number
  /** Ratio below which to caution, and below which to note; the second no lower than the first. */
  readonly cautionBelow: number
  readonly noteBelow: number
}

export interface GripRatio {
  readonly ratio: number
  /** No stop: those come from stress, deflection, prying and hold. */
  readonly level: 'caution' | 'note' | 'none'
  /** Largest overhang without a caution and without a note, mm, for a bit that is pushed in: grip and overhang add up. */
  readonly overhangForNoCaution: number
  readonly overhangForNone: number
}

/** Rules of thumb, common practice without a source. */
export const gripRatioRules = { cautionBelow: 1, noteBelow: 1.5 } as const

/** Grip over overhang, and what to say about it. Problems: a figure outside the ranges of the input. */
export function gripRatio({ grip, overhang, cautionBelow, noteBelow }: GripRatioInput): Result<GripRatio> {
  const problems = outOfRange([
    ['grip', 'length', grip, { min: 0 }],
    ['overhang', 'length', overhang, { above: 0 }],
    ['cautionBelow', 'ratio', cautionBelow, { min: 0 }],
    ['noteBelow', 'ratio', noteBelow, { min: cautionBelow }],
  ])
  if (problems.length > 0) return { ok: false, problems }
  const ratio = grip / overhang
  const least = (wanted: number) => (grip + overhang) / (1 + wanted)
  return {
    ok: true,
    value: {
      ratio,
      level: ratio < cautionBelow ? 'caution' : ratio < noteBelow ? 'note' : 'none',
      overhangForNoCaution: least(cautionBelow),
      overhangForNone: least(noteBelow),
    },
  }
}
