import type { Finding, FindingLever } from '../../../checks/finding.ts'
import type { Rule } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import { shankDriveOf } from '../engineering/shank.ts'

/** How the arbor is held in the spindle, and what seats the head on it. */
export const shank: Rule<HeadDesign> = {
  id: 'shank',
  findings(design) {
    const { machine, arbor } = design.parameters
    const drive = shankDriveOf(design)
    const found: Finding[] = []
    if (drive.needsDrawbar && !machine.drawbar) {
      found.push({
        id: 'shank:drawbar',
        level: 'stop',
        text: `There is no drawbar, and a fly cutter strikes once in every turn: the shank works out of the spindle. ${drive.says}`,
        levers: [{ path: 'machine.drawbar', choose: true }],
      })
    } else {
      found.push({ id: 'shank:drive', level: 'note', text: drive.says, levers: [] })
    }
    if (arbor.kind === 'straight') {
      found.push({
        id: 'shank:no-shoulder',
        level: 'caution',
        text: 'The arbor has no shoulder: nothing seats the head square to the axis, and the thrust of the cut rests on the fit alone.',
        levers: shouldered(design),
      })
    }
    return found
  },
}

/** The arbor with a shoulder instead: the largest plain shank that is no thicker than the spigot, and a disc to seat on. */
export function shouldered({ parameters: { bore, units }, layout, tables }: HeadDesign): readonly FindingLever[] {
  const plain = tables.shanks.filter(({ kind }) => kind === 'straight')
  const fitting = plain.filter(({ gaugeDiameter }) => gaugeDiameter <= bore.diameter + 1e-6)
  const shank = fitting.toSorted((a, b) => b.gaugeDiameter - a.gaugeDiameter)[0]
  if (shank === undefined) return []
  const step = units === 'in' ? 25.4 / 8 : 1
  const seat = step * Math.floor(Math.min(1.6 * bore.diameter, layout.inscribed) / step + 1e-9)
  return [
    {
      path: 'arbor.kind',
      choose: 'shank',
      bringing: [
        { path: 'arbor.shank', to: shank.name },
        { path: 'arbor.shoulder-diameter', to: seat, kind: 'length' },
        { path: 'arbor.shoulder-thickness', to: units === 'in' ? 25.4 / 4 : 6, kind: 'length' },
      ],
    },
  ]
}
