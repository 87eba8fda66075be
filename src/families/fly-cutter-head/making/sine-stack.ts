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
    const blocks = design.layout.measuring.gaugeBlocks
    if (setting.by !== 'sine-bar' || blocks.length === 0) return undefined
    const height = sineBarHeight(setting.bar, tilt)
    const stack = gaugeStack(blocks, height, { within: wringing[design.units] })
    if (!stack || stack.height > setting.bar) return undefined
    return { ...stack, angle: sineBarAngle(setting.bar, stack.height) }
  })

/**
 * Whether one, two or three of the blocks come as near as `within` to a height, mm: a glance that spares the search for the best
 * stack of up to four where only near enough is asked for.
 */
export function comesNear(blocks: readonly number[], height: number, within: number): boolean {
  const sorted = [0, 0, ...blocks].sort((a, b) => a - b)
  return sorted.some((first, at) => {
    let [low, high] = [at + 1, sorted.length - 1]
    while (low < high) {
      const off = first + sorted[low]! + sorted[high]! - height
      if (Math.abs(off) <= within) return true
      if (off < 0) low++
      else high--
    }
    return false
  })
}
