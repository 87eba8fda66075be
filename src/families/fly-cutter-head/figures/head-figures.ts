import type { Figure } from '../../../figures/figure.ts'
import type { HeadDesign } from '../design.ts'
import { geometryFigures } from './geometry.ts'

/** Every figure of a fly-cutter head. */
export const headFigures: readonly Figure<HeadDesign>[] = [...geometryFigures]
