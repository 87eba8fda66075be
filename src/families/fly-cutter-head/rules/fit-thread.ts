import type { Finding, FindingLever } from '../../../checks/finding.ts'
import { type Rule, written } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import { fitLoadOf } from '../engineering/fit-load.ts'
import { threadedOf } from '../engineering/ways-to-hold.ts'
import { shouldered } from './shank.ts'

/** Whether a head that is screwed on stays on, and carries what it must. */
export const fitThread: Rule<HeadDesign> = {
  id: 'fit-thread',
  findings(design) {
    const { fit } = design.parameters
    if (fit.kind !== 'threaded') return []
    const holding = threadedOf(design, design.layout.spigotThread, fit.hand)?.holding
    if (holding === undefined) return []
    if (!holding.ok) {
      const text = 'No strength of head or arbor is published: what the thread carries is not known.'
      return [{ id: 'fit-thread:strength', level: 'caution', text, levers: [] }]
    }
    const { conditions, torque } = holding.value
    const found = conditions
      .filter((condition) => !condition.met)
      .map(({ id, level, says, measure, source }): Finding => {
        const figure = measure && { value: measure.found, kind: measure.kind }
        const limit = measure?.least
        return {
          id: `fit-thread:${id}`,
          level,
          text: figure ? `${says} It has ${written(figure, design.units)}.` : says,
          ...(figure && { figure }),
          ...(figure && limit !== undefined && { limit: { value: limit, kind: figure.kind, reason: source } }),
          levers: id === 'shoulder' ? shouldered(design) : (levers[id]?.(fit.hand) ?? []),
        }
      })
    const { cutTorque, jamTorque } = fitLoadOf(design)
    const wanted = Math.max(cutTorque, jamTorque)
    // A thread that turns off is told already.
    if (found.some((f) => f.id === 'fit-thread:hand') || torque >= wanted) return found
    const show = (value: number) => written({ value, kind: 'torque' }, design.units)
    return [
      ...found,
      {
        id: 'fit-thread:torque',
        level: torque < cutTorque ? 'stop' : 'caution',
        text: `The thread yields at ${show(torque)}, and ${torque < cutTorque ? 'the cut' : 'a jam'} gives ${show(torque < cutTorque ? cutTorque : jamTorque)}.`,
        figure: { value: torque, kind: 'torque' },
        limit: { value: wanted, kind: 'torque', reason: 'blow of the cut, or the motor in a jam (rule of thumb)' },
        levers: [{ path: 'arbor.spigot-length', turn: 'up' }],
      },
    ]
  },
}

const levers: Readonly<Record<string, (hand: 'right' | 'left') => readonly FindingLever[]>> = {
  hand: (hand) => [{ path: 'fit.hand', choose: hand === 'right' ? 'left' : 'right' }],
  'reversed-or-braked': () => [{ path: 'machine.reverse', choose: false }],
  engagement: () => [
    { path: 'arbor.spigot-length', turn: 'up' },
    { path: 'bore.chamfer', turn: 'down' },
  ],
}
