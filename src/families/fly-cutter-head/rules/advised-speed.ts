import type { Finding } from '../../../checks/finding.ts'
import { inSentence } from '../../../checks/in-sentence.ts'
import { mm, type Rule, written } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import { cuttingOf } from '../engineering/cutting.ts'
import { shorterReach } from './cut-levers.ts'

/** Whether the spindle has a speed that suits bit and work at this swing. About tool life; no safety limit. */
export const advisedSpeed: Rule<HeadDesign> = {
  id: 'advised-speed',
  findings(design) {
    const { units, swing, layout } = design
    const { range, speed, runAt, cuttingSpeed } = cuttingOf(design)
    const rotation = (value: number) => written({ value, kind: 'rotation-speed' }, units)
    const cutting = (value: number) => written({ value, kind: 'cutting-speed' }, units)
    const title = layout.materials.work.title
    const found: Finding[] = []

    if (speed.standing === 'slowest-too-fast') {
      const burns = design.parameters.settings.cutting['burn-ratio']
      const high = design.parameters.work['cutting-speed'] ?? range.high
      const over = cuttingSpeed / high
      const stop = over > burns
      found.push({
        id: 'advised-speed:slowest-too-fast',
        level: stop ? 'stop' : 'caution',
        text: `${title} at this swing wants ${rotation(speed.wanted.high)} at the most, and the spindle goes no slower than ${rotation(runAt)}: the tip then runs at ${cutting(cuttingSpeed)}, ${over.toFixed(2)} times what the edge stands${stop ? ', and burns off before the pass is done' : ''}. The largest swing that suits is ${written(mm(speed.largestSwing), units)}.`,
        figure: mm(swing),
        limit: {
          ...mm(speed.largestSwing),
          reason: 'cutting speed of the table, or your own, at the slowest speed of the spindle',
        },
        levers: shorterReach,
      })
    }
    if (speed.standing === 'spindle-too-slow' || speed.standing === 'between-steps') {
      found.push({
        id: 'advised-speed:slow',
        level: 'note',
        text: `${title} at this swing could take ${rotation(speed.wanted.low)} to ${rotation(speed.wanted.high)}; ${
          speed.nextAbove === undefined
            ? `the spindle goes no faster than ${rotation(runAt)}`
            : `of the speeds the spindle has, ${rotation(runAt)} is the next below`
        }. It only takes longer.`,
        figure: { value: runAt, kind: 'rotation-speed' },
        limit: {
          value: speed.wanted.low,
          kind: 'rotation-speed',
          reason: 'low end of the cutting speeds for bit and work (table of work materials)',
        },
        levers: [],
      })
    }
    const own = design.parameters.work['cutting-speed']
    if (own !== undefined && (speed.own === 'above-range' || speed.own === 'below-range')) {
      const above = speed.own === 'above-range'
      found.push({
        id: 'advised-speed:own',
        level: above ? 'caution' : 'note',
        text: `Your own cutting speed of ${cutting(own)} lies ${above ? 'above' : 'below'} the table’s ${cutting(range.low)} to ${cutting(range.high)} for ${inSentence(title)}: ${above ? 'the edge will not last as long' : 'it takes longer'}.`,
        figure: { value: own, kind: 'cutting-speed' },
        limit: {
          value: above ? range.high : range.low,
          kind: 'cutting-speed',
          reason: 'cutting speeds for bit and work (table of work materials)',
        },
        levers: [{ path: 'work.cutting-speed', turn: above ? 'down' : 'up' }],
      })
    }
    return found
  },
}
