import type { Figure } from '../../../figures/figure.ts'
import type { HeadDesign } from '../design.ts'
import { fitAssemblyFigures } from './fit-assembly.ts'
import { fitLimitFigures } from './fit-limits.ts'
import { fitLoadFigures } from './fit-load.ts'
import { fitStrengthFigures } from './fit-strength.ts'
import { otherWayFigures } from './other-ways.ts'

/** Fit of head and arbor: what to turn and bore to, what that holds and stands, how it goes together, how else to hold it. */
export const fitFigures: readonly Figure<HeadDesign>[] = [
  ...fitLimitFigures,
  ...fitStrengthFigures,
  ...fitLoadFigures,
  ...fitAssemblyFigures,
  ...otherWayFigures,
]
