import type { Pictures } from '../../figures/pictures.ts'
import type { HeadDesign } from './design.ts'
import { balanceSketchOf } from './pictures/balance-sketch.ts'
import { interferenceBandOf } from './pictures/interference-band.ts'
import { screwSectionOf } from './pictures/screw-section.ts'
import { speedBarsOf } from './pictures/speed-bars.ts'
import { swingPlanOf } from './pictures/swing-plan.ts'
import { tipViewsOf } from './pictures/tip-views.ts'
import { wallSectionOf } from './pictures/wall-section.ts'

/** What the report draws of a fly-cutter head. */
export const headPictures = (design: HeadDesign): Pictures =>
  design.once('pictures', () => ({
    'plan-of-swing': swingPlanOf(design),
    'tip-views': tipViewsOf(design),
    'wall-section': wallSectionOf(design),
    'screw-section': screwSectionOf(design),
    'interference-band': interferenceBandOf(design),
    'speed-bars': speedBarsOf(design),
    'balance-sketch': balanceSketchOf(design),
  }))
