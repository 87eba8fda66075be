import type { FindingLever } from '../../../checks/finding.ts'
import { type Rule, written } from '../../../checks/rule.ts'
import type { SpeedLimitName } from '../../../mechanics/speed/never-exceed.ts'
import type { HeadDesign } from '../design.ts'
import { cuttingOf } from '../engineering/cutting.ts'
import { limitNames, neverExceedOf } from '../engineering/never-exceed.ts'
import { lighterCut, shorterReach, slowerCut, tighterScrews } from './cut-levers.ts'
import { tighter } from './fit-levers.ts'

/** Whether the job would run faster than the tool may ever turn. */
export const neverExceedRule: Rule<HeadDesign> = {
  id: 'never-exceed',
  findings(design) {
    const { notAbove, cause } = neverExceedOf(design)
    const { runAt, speed } = cuttingOf(design)
    if (runAt <= notAbove) return []
    const { units, parameters } = design
    const show = (value: number) => written({ value, kind: 'rotation-speed' }, units)
    const what = speed.advised
      ? `The speed advised for the edge, ${show(runAt)},`
      : `The slowest speed of the spindle, ${show(runAt)},`
    const atRest = notAbove === 0
    const text = atRest
      ? `This tool must not turn at all: ${cause === 'joint' ? 'the joint does not carry the cut' : 'the screws do not hold the bit'} even at rest.`
      : `${what} is above the speed that this tool must never exceed, ${show(notAbove)}, which comes from: ${limitNames[cause]}.`
    return [
      {
        id: 'never-exceed',
        level: 'stop',
        text,
        figure: { value: runAt, kind: 'rotation-speed' },
        limit: {
          value: notAbove,
          kind: 'rotation-speed',
          reason: `${limitNames[cause]}, of which ${parameters.settings.running['never-exceed-share']} counts (rule of thumb)`,
        },
        levers: [...leversFor(design, cause), ...(atRest ? lighterCut : slowerCut)],
      },
    ]
  },
}

function leversFor(design: HeadDesign, cause: SpeedLimitName): readonly FindingLever[] {
  switch (cause) {
    case 'bit-hold':
      return [...tighterScrews, ...shorterReach]
    case 'joint':
      return tighter(design)
    case 'unbalance-force':
      return [...shorterReach, { path: 'bit.length', turn: 'up' }]
    default:
      return []
  }
}
