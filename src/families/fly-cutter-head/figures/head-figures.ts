import type { Figure } from '../../../figures/figure.ts'
import type { HeadDesign } from '../design.ts'
import { anglesFigures } from './angles.ts'
import { balanceFigures } from './balance.ts'
import { clampingFigures } from './clamping.ts'
import { cuttingFigures } from './cutting.ts'
import { finishFigures } from './finish.ts'
import { fitFigures } from './fit.ts'
import { geometryFigures } from './geometry.ts'
import { speedFigures } from './speed.ts'

/** Every figure of a fly-cutter head. */
export const headFigures: readonly Figure<HeadDesign>[] = [
  ...geometryFigures,
  ...anglesFigures,
  ...fitFigures,
  ...cuttingFigures,
  ...clampingFigures,
  ...finishFigures,
  ...balanceFigures,
  ...speedFigures,
]
