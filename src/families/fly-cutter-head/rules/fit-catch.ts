import type { Finding } from '../../../checks/finding.ts'
import type { Rule } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'

/** What keeps the head on the arbor when the joint has slipped or the thread has turned off. */
export const fitCatch: Rule<HeadDesign> = {
  id: 'fit-catch',
  findings({ parameters: { fit, bore } }): Finding[] {
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
    if (fit.catch === 'pin' || bore.kind === 'through') return []
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
