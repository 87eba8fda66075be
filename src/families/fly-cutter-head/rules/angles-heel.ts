import type { Finding } from '../../../checks/finding.ts'
import { mm, type Rule, written } from '../../../checks/rule.ts'
import { formatQuantity } from '../../../quantity/format-quantity.ts'
import type { HeadDesign } from '../design.ts'
import { anglesOf, feedUntilHeel, heelOfBit, leastReliefOf } from '../engineering/angles.ts'

/** Whether everything behind the two edges comes through without touching the work. */
export const heel: Rule<HeadDesign> = {
  id: 'heel',
  findings(design) {
    const clearances = heelOfBit(design)
    if (!clearances) return []
    const found: Finding[] = []
    const show = (v: number) => written(mm(v), design.units)
    const { tip, setting } = design.layout.bit
    const behind = (y: number) => setting.hand * (tip[1] - y)

    const fromTip = (y: number) => (behind(y) < 0 ? `${show(-behind(y))} ahead of` : `${show(behind(y))} behind`)

    const { end, workSide } = clearances
    const fed = feedUntilHeel(design, clearances)
    if (end.clearance < fed - rounding) {
      const least = leastReliefOf(design)
      const relief = least
        ? ` It wants at least ${degrees(least.inUse)} of relief in use, ${degrees(Math.max(0, least.asGround))} as ground on this bit.`
        : ' The bit is too wide for its circle: no relief on the end helps.'
      const stands =
        end.clearance < -rounding
          ? `stands ${show(-end.clearance)} outside the circle of its end edge: the heel strikes the work before the edge cuts`
          : `stays only ${show(Math.max(0, end.clearance))} inside the circle of its end edge, which the feed takes up: the heel rubs`
      found.push({
        id: 'heel:end',
        level: end.clearance < -rounding ? 'stop' : 'caution',
        text: `The bit ${stands}, ${fromTip(end.at[1])} the tip.${relief}`,
        figure: mm(end.clearance),
        limit: { ...mm(fed), reason: 'what the feed takes up from edge to heel' },
        levers: [
          { path: 'bit.facets.end-relief', turn: 'up' },
          { path: 'bit.grind', choose: 'for-work-material' },
          { path: 'slot.ahead-of-centre', turn: 'up' },
        ],
      })
    }

    const least = design.parameters.settings.grind['heel-clearance']
    // An edge that itself runs below the tip is another finding.
    if (workSide.clearance < least - rounding && anglesOf(design).minorCuttingEdgeAngle >= 0) {
      const place = `${fromTip(workSide.at[1])} the tip on a radius of ${show(Math.hypot(workSide.at[0], workSide.at[1]))}`
      const inside = workSide.between.includes('end of grinding') || workSide.between.includes('work side')
      const what = inside ? 'The blank inside the ground part' : 'No back relief under the bit: the heel'
      found.push({
        id: 'heel:work-side',
        level: workSide.clearance < -rounding ? 'stop' : 'caution',
        text:
          workSide.clearance < -rounding
            ? `The underside of the bit stands ${show(-workSide.clearance)} below the cut surface, ${place}: it digs in there before the tip cuts.`
            : `${what} stays only ${show(Math.max(0, workSide.clearance))} above the cut surface, ${place}: it rubs and leaves faint skip marks on the finished face.`,
        figure: mm(workSide.clearance),
        limit: { ...mm(least), reason: 'least height behind the work-side edge (rule of thumb)' },
        levers: [
          { path: 'bit.facets.work-side-relief', turn: 'up' },
          { path: 'bit.grind', choose: 'for-work-material' },
          ...(inside
            ? ([
                { path: 'bit.facets.length', turn: 'up' },
                { path: 'face.angle', turn: 'up' },
              ] as const)
            : []),
        ],
      })
    }
    return found
  },
}

/** Corners of the bit are exact to far less, mm. */
const rounding = 1e-7

const degrees = (value: number) => formatQuantity('angle', value, 'mm', { decimals: 1 })
