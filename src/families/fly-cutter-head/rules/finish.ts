import type { Finding } from '../../../checks/finding.ts'
import { mm, type Rule, written } from '../../../checks/rule.ts'
import { formatNumber } from '../../../quantity/format-number.ts'
import type { Units } from '../../../quantity/kind.ts'
import type { HeadDesign } from '../design.ts'
import { cuttingOf } from '../engineering/cutting.ts'
import { feedForRoughness, finishOf } from '../engineering/finish.ts'

/** Whether the surface comes out as wanted. An underside that rubs is a matter of the angles. */
export const finish: Rule<HeadDesign> = {
  id: 'finish',
  findings(design) {
    const { parameters, units } = design
    const { surface, noseFeed, tram } = finishOf(design)
    const { work, bit } = parameters
    const feed = work['feed-per-turn']
    const show = (value: number) => written(mm(value), units)
    const found: Finding[] = []
    const levers = [
      { path: 'work.feed-per-turn', turn: 'down' },
      { path: 'bit.nose-radius', turn: 'up' },
    ] as const

    const marks = surface.kind === 'feed-marks' ? surface : undefined
    const wanted = work['roughness-wanted']
    if (marks && wanted !== undefined && marks.meanDeviation > wanted) {
      const most = feedForRoughness(design)
      const advice = most === undefined ? '' : ` No more than ${show(most)} a turn would do.`
      found.push({
        id: 'finish:rough',
        level: 'caution',
        text: `Feed and nose alone leave Ra ${roughness(marks.meanDeviation, units)}, more than the ${roughness(wanted, units)} wanted, and a real surface is rougher.${advice}`,
        figure: mm(marks.meanDeviation),
        limit: { ...mm(wanted), reason: 'roughness wanted' },
        levers,
      })
    }
    if (marks && marks.cusp !== 'nose-nose') {
      found.push({
        id: 'finish:thread',
        level: 'caution',
        text: `A feed of ${show(feed)} a turn is more than the nose of ${show(bit['nose-radius'])} covers with this work-side edge (${show(noseFeed)}): the straight edge leaves a thread, ${roughness(marks.height, units)} deep.`,
        figure: mm(feed),
        limit: {
          ...mm(noseFeed),
          reason: 'twice the nose radius times the sine of κr′: beyond it the marks meet on the edge',
        },
        levers,
      })
    }

    const flat = work['flatness-wanted']
    if (flat !== undefined && tram && tram.dish > flat) {
      found.push({
        id: 'finish:dish',
        level: 'caution',
        text: `The spindle leans in the direction of travel: the surface comes out ${roughness(tram.dish, units)} hollow over its width of ${show(cuttingOf(design).passWidth)}. Tram the head.`,
        figure: mm(tram.dish),
        limit: { ...mm(flat), reason: 'flatness wanted' },
        levers: [{ path: 'machine.tram.along', turn: parameters.machine.tram!.along > 0 ? 'down' : 'up' }],
      })
    }
    return found
  },
}

/** Micrometres or microinches: as the trade writes roughness. */
const roughness = (value: number, units: Units): string =>
  units === 'in' ? `${formatNumber(value / 25.4e-6, 0)} µin` : `${formatNumber(value * 1000, 2, { trim: true })} µm`
