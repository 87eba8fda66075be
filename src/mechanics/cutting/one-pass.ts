import type { Result } from '../../input/problem.ts'
import { outOfRange } from './out-of-range.ts'

export interface OnePassInput {
  /** Circle of the tip and width of the work, mm, above 0. */
  readonly swing: number
  readonly width: number
  /** Swing over width for one clean pass, at least 1. */
  readonly overWidth: number
}

export interface OnePass {
  readonly onePass: boolean
  /** Least swing that clears the width in one pass, mm. */
  readonly swingNeeded: number
  /** Widest work that this swing clears in one pass, mm, and the passes it takes for the work at hand. */
  readonly widthPerPass: number
  readonly passes: number
}

/** Rule of thumb, common practice without a source: the bit enters and leaves beside the work, not on its edge. */
export const onePassRules = { overWidth: 1.1 } as const

/** Whether the swing clears the work in one pass. Problems: a figure outside the ranges of the input. */
export function onePass({ swing, width, overWidth }: OnePassInput): Result<OnePass> {
  const problems = outOfRange([
    ['swing', 'length', swing, { above: 0 }],
    ['width', 'length', width, { above: 0 }],
    ['overWidth', 'ratio', overWidth, { min: 1 }],
  ])
  if (problems.length > 0) return { ok: false, problems }
  const swingNeeded = overWidth * width
  // The needed swing itself is enough, whatever the last digit says.
  const fits = swing >= swingNeeded * (1 - 1e-12)
  const passes = fits ? 1 : Math.ceil((swingNeeded / swing) * (1 - 1e-12))
  return { ok: true, value: { onePass: fits, swingNeeded, widthPerPass: swing / overWidth, passes } }
}
