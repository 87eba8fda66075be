import type { Finding } from '../../../checks/finding.ts'
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
        levers: [],
      })
    } else {
      found.push({ id: 'shank:drive', level: 'note', text: drive.says, levers: [] })
    }
    if (arbor.kind === 'straight') {
      found.push({
        id: 'shank:no-shoulder',
        level: 'caution',
        text: 'The arbor has no shoulder: nothing seats the head square to the axis, and the thrust of the cut rests on the fit alone.',
        levers: [],
      })
    }
    return found
  },
}
