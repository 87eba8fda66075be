import type { Units } from '../../quantity/kind.ts'
import type { Finding } from '../finding.ts'
import { mm, type Rule, ratio, written } from '../rule.ts'

interface Subject {
  readonly units: Units
  readonly swing: number
  readonly sweptRadius: number
  readonly parameters: {
    readonly work: { readonly width: number }
    readonly machine: { readonly 'largest-swing': number }
    readonly settings: { readonly swing: { readonly 'over-width': number } }
  }
}

/** Whether everything that turns clears the machine, and whether one pass clears the work. */
export const swing: Rule<Subject> = {
  id: 'swing',
  findings(design) {
    const { machine, work, settings } = design.parameters
    const found: Finding[] = []
    const shorter = [
      { path: 'bit.overhang', turn: 'down' },
      { path: 'bit.swing', turn: 'down' },
      { path: 'bit.length', turn: 'down' },
    ] as const
    const swept = 2 * design.sweptRadius
    if (swept > machine['largest-swing']) {
      found.push({
        id: 'swing:clears-machine',
        level: 'stop',
        text: `The tool sweeps a circle of ${written(mm(swept), design.units)}, more than clears the machine.`,
        figure: mm(swept),
        limit: { ...mm(machine['largest-swing']), reason: 'largest swing that clears, as given for the machine' },
        levers: shorter,
      })
    }
    const share = design.swing / work.width
    const wanted = settings.swing['over-width']
    if (share < wanted) {
      found.push({
        id: 'swing:covers-work',
        level: share < 1 ? 'caution' : 'note',
        text:
          share < 1
            ? `The swing of ${written(mm(design.swing), design.units)} is less than the work's width of ${written(mm(work.width), design.units)}: it takes more than one pass, with a step between them.`
            : `The swing is ${share.toFixed(2)} times the work's width: the bit enters and leaves almost along the edge.`,
        figure: ratio(share),
        limit: { ...ratio(wanted), reason: 'swing over width for one clean pass (rule of thumb)' },
        levers: [
          { path: 'bit.overhang', turn: 'up' },
          { path: 'bit.swing', turn: 'up' },
        ],
      })
    }
    return found
  },
}
