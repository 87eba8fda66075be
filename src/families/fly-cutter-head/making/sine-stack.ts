import { type GaugeStack, gaugeStack, sineBarAngle, sineBarHeight } from '../../../mechanics/measuring/gauge-stack.ts'
import type { HeadDesign } from '../design.ts'
import { tiltedSetUp } from './tilted-set-up.ts'

/** Blocks of the shop's set under its sine bar, and the angle, rad, that they make. */
export interface SineStack extends GaugeStack {
  readonly angle: number
}

/** Nobody wrings closer: over a bar of 100 mm it is two to five seconds of arc. */
const wringing = { mm: 0.001, in: 25.4e-4 } as const

/** Undefined where the tilt is not set by a sine bar, or no blocks are listed. */
export const sineStack = (design: HeadDesign): SineStack | undefined =>
  design.once('sine stack', () => {
    const { setting, tilt } = tiltedSetUp(design)
    const blocks = design.parameters.shop['gauge-blocks']
    if (setting.by !== 'sine-bar' || blocks.length === 0) return undefined
    const height = sineBarHeight(setting.bar, tilt)
    const step = wringing[design.units]
    const stack = gaugeStack(blocks, step * Math.max(1, Math.round(height / step)))
    if (!stack || stack.height > setting.bar) return undefined
    return { ...stack, off: stack.height - height, angle: sineBarAngle(setting.bar, stack.height) }
  })
