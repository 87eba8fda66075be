import type { SpeedBars } from '../../../figures/pictures.ts'
import type { HeadDesign } from '../design.ts'
import { cuttingOf } from '../engineering/cutting.ts'
import { limitNames, neverExceedOf } from '../engineering/never-exceed.ts'

export function speedBarsOf(design: HeadDesign): SpeedBars {
  const { limits, cause, notAbove } = neverExceedOf(design)
  const { wanted, advised } = cuttingOf(design).speed
  const { speeds } = design.parameters.machine
  return {
    limits: limits.map(({ name, counted }) => ({
      id: name,
      label: limitNames[name],
      counted,
      isCause: name === cause,
    })),
    neverExceed: notAbove,
    advised: { low: wanted.low, high: wanted.high, runAt: advised?.runAt },
    spindle: Array.isArray(speeds) ? speeds.toSorted((a, b) => a - b) : [speeds.slowest, speeds.fastest],
    isVariable: !Array.isArray(speeds),
  }
}
