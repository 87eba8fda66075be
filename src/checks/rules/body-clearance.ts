import type { Vec3 } from '../../geometry/vector.ts'
import type { Units } from '../../quantity/kind.ts'
import { mm, type Rule, written } from '../rule.ts'

interface Subject {
  readonly units: Units
  readonly lowestPoint: number
  readonly layout: { readonly bit: { readonly tip: Vec3 } }
  readonly parameters: {
    readonly work: { readonly 'depth-of-cut': number }
    readonly settings: { readonly 'body-clearance': { readonly least: number; readonly 'depths-of-cut': number } }
  }
}

/** Whether head and screws stay clear of the surface just cut. */
export const bodyClearance: Rule<Subject> = {
  id: 'body-clearance',
  findings(design) {
    const { settings, work } = design.parameters
    const rule = settings['body-clearance']
    const least = Math.max(rule.least, rule['depths-of-cut'] * work['depth-of-cut'])
    const clearance = design.lowestPoint - design.layout.bit.tip[2]
    if (clearance >= least) return []
    return [
      {
        id: 'body-clearance',
        level: clearance <= work['depth-of-cut'] ? 'stop' : 'caution',
        text:
          clearance <= 0
            ? `The head reaches ${written(mm(-clearance), design.units)} below the tip: it rubs on the work before the bit cuts.`
            : `Head and screws are only ${written(mm(clearance), design.units)} above the cut surface.`,
        figure: mm(clearance),
        limit: { ...mm(least), reason: 'room for chips and for a slip in depth (rule of thumb)' },
        levers: [
          { path: 'slot.depth', turn: 'down' },
          { path: 'bit.height', turn: 'up' },
          { path: 'bit.overhang', turn: 'up' },
          { path: 'bit.swing', turn: 'up' },
          { path: 'face.angle', turn: 'up' },
          { path: 'work.depth-of-cut', turn: 'down' },
        ],
      },
    ]
  },
}
