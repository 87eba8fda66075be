import type { Rule } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import { machineFindings } from './set-up-machine.ts'
import { toolFindings } from './set-up-tools.ts'
import { viseFindings } from './set-up-vise.ts'

/** Whether vise, tools and machine of the shop can do the set-ups that the head needs. */
export const setUp: Rule<HeadDesign> = {
  id: 'set-up',
  findings: (design) => [...viseFindings(design), ...toolFindings(design), ...machineFindings(design)],
}
