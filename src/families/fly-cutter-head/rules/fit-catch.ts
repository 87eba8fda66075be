import type { Finding } from '../../../checks/finding.ts'
import type { Rule } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import { otherWaysOf } from '../engineering/ways-to-hold.ts'

/** What a screw and washer lack; conditions that change nothing for the catch are told with the way itself. */
function noPlace(design: HeadDesign): Finding[] {
  const washer = otherWaysOf(design).find(({ way }) => way === 'screw-and-washer')
  const lacks = washer
    ? washer.holding.conditions.filter(({ met, level }) => !met && level === 'stop').map(({ says }) => says)
    : ['No screw of the thread table goes into the spigot with a washer that laps the bore.']
  return lacks.map((text, at) => ({
    id: at === 0 ? 'fit-catch:washer' : `fit-catch:washer-${at + 1}`,
    level: 'stop',
    text,
    levers: [{ path: 'fit.catch', choose: 'pin' }],
  }))
}

/** What keeps the head on the arbor when the joint has slipped or the thread has turned off. */
export const fitCatch: Rule<HeadDesign> = {
  id: 'fit-catch',
  findings(design): Finding[] {
    const { fit, bore } = design.parameters
    if (fit.catch === 'none') {
      return [
        {
          id: 'fit-catch:none',
          level: 'caution',
          text: `Should the ${fit.kind === 'threaded' ? 'thread turn off' : 'joint slip'}, nothing keeps the head from dropping off the arbor while it turns.`,
          levers: [{ path: 'fit.catch', choose: 'pin' }],
        },
      ]
    }
    if (fit.catch === 'pin') return []
    if (bore.kind === 'through') return fit.catch === 'screw-and-washer' ? noPlace(design) : []
    const what = fit.catch === 'shoulder-below' ? 'A shoulder below the head' : 'Screw and washer'
    return [
      {
        id: 'fit-catch:blind',
        level: 'stop',
        text: `${what} cannot catch a head with a blind bore: there is no way through to the end of the spigot.`,
        levers: [{ path: 'fit.catch', choose: 'pin' }],
      },
    ]
  },
}
