import type { Finding } from '../../../checks/finding.ts'
import { mm, type Rule, ratio, written } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import type { HeadLayout } from './head-subject.ts'
import { thinnerScrews } from './screw-levers.ts'

/** Whether the set screws stand well in their wall: height, ends, spacing, thread. */
export const screwPlace: Rule<HeadLayout & Pick<HeadDesign, 'screwWallEnd' | 'tables'>> = {
  id: 'screws',
  findings({ units, layout, parameters, screwWallEnd, tables }) {
    const { screws, slot, step, materials } = layout
    const { settings } = parameters
    const d = screws.thread.majorDiameter
    const hole = screws.thread.tapDrill / 2
    const show = (v: number) => written(mm(v), units)
    const found: Finding[] = []
    const thinner = () => thinnerScrews({ layout, tables })

    const top = screws.height + hole
    if (top > slot.depth + 1e-9) {
      found.push({
        id: 'screws:above-floor',
        level: 'stop',
        text: `The screw holes reach ${show(top - slot.depth)} past the slot floor: the drill runs out into solid metal instead of the slot.`,
        figure: mm(top),
        limit: { ...mm(slot.depth), reason: 'slot floor' },
        levers: [
          { path: 'screws.height', turn: 'down' },
          { path: 'slot.depth', turn: 'up' },
        ],
      })
    }

    const room = step.depth - screws.height - d / 2
    if (room < 0) {
      found.push({
        id: 'screws:entry',
        level: 'stop',
        text: `The step floor stands ${show(-room)} in the way: drill, tap, screw and key come in along the screw axis over the step floor.`,
        figure: mm(step.depth),
        limit: { ...mm(screws.height + d / 2), reason: 'screw height and half the thread' },
        levers: [
          { path: 'step.depth', turn: 'up' },
          { path: 'screws.height', turn: 'down' },
        ],
      })
    }

    const least = settings.screws['from-end'] * d
    const ends = [screwWallEnd - screws.xs[0]!, screws.xs.at(-1)! + screwWallEnd]
    ends.forEach((distance, i) => {
      if (distance >= least - 1e-9) return
      found.push({
        id: i === 0 ? 'screws:outer-end' : 'screws:inner-end',
        level: distance < d / 2 ? 'stop' : 'caution',
        text: `The ${i === 0 ? 'first' : 'last'} screw stands ${distance < 0 ? `${show(-distance)} beyond` : `only ${show(distance)} from`} the ${i === 0 ? 'outer' : 'far'} end of its wall.`,
        figure: mm(distance),
        limit: { ...mm(least), reason: 'screw axis to the end of the wall, in thread diameters (rule of thumb)' },
        levers:
          i === 0
            ? [{ path: 'screws.first-from-corner', turn: 'up' }, ...thinner()]
            : [
                { path: 'screws.first-from-corner', turn: 'down' },
                { path: 'screws.spacing', turn: 'down' },
                { path: 'screws.count', turn: 'down' },
                ...thinner(),
              ],
      })
    })

    const spacing = settings.screws.spacing * d
    if (screws.xs.length > 1 && screws.spacing < spacing - 1e-9) {
      found.push({
        id: 'screws:spacing',
        level: screws.spacing <= d ? 'stop' : 'caution',
        text: `The screws stand ${show(screws.spacing)} apart.`,
        figure: mm(screws.spacing),
        limit: { ...mm(spacing), reason: 'spacing in thread diameters (rule of thumb)' },
        levers: [{ path: 'screws.spacing', turn: 'up' }, { path: 'screws.count', turn: 'down' }, ...thinner()],
      })
    }

    const factor = materials.body.threadEngagement
    const engaged = Math.min(parameters.step['wall-thickness'], screws.length)
    if (factor === undefined) {
      found.push({
        id: 'screws:material',
        level: 'caution',
        text: `${materials.body.title} has no figure for tapped thread in the materials table.`,
        levers: [],
      })
    } else if (engaged < factor * d - 1e-9) {
      found.push({
        id: 'screws:engagement',
        level: engaged < 0.5 * factor * d ? 'stop' : 'caution',
        text: `Only ${show(engaged)} of thread is engaged, ${(engaged / d).toFixed(2)} thread diameters.`,
        figure: ratio(engaged / d),
        limit: { ...ratio(factor), reason: `least engagement in ${materials.body.title}, materials table` },
        levers: [
          { path: 'step.wall-thickness', turn: 'up' },
          { path: 'screws.length', turn: 'up' },
        ],
      })
    }
    return found
  },
}
