import type { Problem } from '../../../input/problem.ts'
import type { HeadDesign } from '../design.ts'
import { clampingProblems } from './clamping.ts'
import { cuttingProblems } from './cutting.ts'
import { fitProblems } from './fit.ts'

/**
 * What the engineering cannot be worked out from: a code no standard has, an angle that leaves no bit, a figure outside
 * its table. Paths are those of parameters; nothing here is a finding, since there is no design to judge.
 */
export function engineeringProblems(design: HeadDesign): Problem[] {
  return sources.flatMap((problems) => problems(design))
}

/** One entry a topic. */
const sources: readonly ((design: HeadDesign) => Problem[])[] = [fitProblems, cuttingProblems, clampingProblems]
