import type { Finding } from '../../../checks/finding.ts'
import { type Rule, ratio, written } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import { clampingOf } from '../engineering/clamping.ts'

/** Whether wall and thread bear the screws at their largest force. */
export const screwStrength: Rule<HeadDesign> = {
  id: 'screw-strength',
  findings(design) {
    const { units, parameters, layout } = design
    const { screwForce, wall, thread, wallStrength } = clampingOf(design)
    const wanted = parameters.settings.screws['strength-factor']
    const force = (value: number) => written({ value, kind: 'force' }, units)
    const pressure = (value: number) => written({ value, kind: 'pressure' }, units)
    const gentler = [{ path: 'screws.tightening-torque', turn: 'down' }] as const
    const found: Finding[] = []
    if (wall?.factor !== undefined && wall.factor < wanted && wallStrength !== undefined) {
      found.push({
        id: 'screw-strength:wall',
        level: wall.factor < 1 ? 'stop' : 'caution',
        text: `The screws bend the wall between slot and step with ${pressure(wall.stress)}, and ${layout.materials.body.title} ${layout.materials.body.yieldStrength === undefined ? 'breaks' : 'yields'} at ${pressure(wallStrength)}: ${wall.factor < 1 ? 'it gives way' : `${wall.factor.toFixed(2)} times as much, where ${wanted} times is wanted`}.`,
        figure: ratio(wall.factor),
        limit: { ...ratio(wanted), reason: 'strength of the wall over its stress as a cantilever (rule of thumb)' },
        levers: [
          { path: 'step.wall-thickness', turn: 'up' },
          { path: 'screws.height', turn: 'up' },
          ...gentler,
          { path: 'screws.spacing', turn: 'up' },
        ],
      })
    }
    if (thread?.factor !== undefined && thread.factor < wanted) {
      found.push({
        id: 'screw-strength:thread',
        level: thread.factor < 1 ? 'stop' : 'caution',
        text: `A set screw pushes with up to ${force(screwForce.most)}, and the thread in its wall strips at ${force(thread.factor * screwForce.most)}.`,
        figure: ratio(thread.factor),
        limit: { ...ratio(wanted), reason: 'stripping of the thread over the screw’s force (rule of thumb)' },
        levers: [{ path: 'step.wall-thickness', turn: 'up' }, { path: 'screws.length', turn: 'up' }, ...gentler],
      })
    }
    return found
  },
}
