import type { Finding } from '../../../checks/finding.ts'
import { mm, type Rule, written } from '../../../checks/rule.ts'
import { formatQuantity } from '../../../quantity/format-quantity.ts'
import type { HeadDesign } from '../design.ts'
import { anglesOf } from '../engineering/angles.ts'

/** Whether the slot lies on the right side of the axis for the way the spindle turns. */
export const slotSide: Rule<HeadDesign> = {
  id: 'slot-side',
  findings(design) {
    const { parameters, layout, units } = design
    const { rotation, machine, slot, bit } = parameters
    const show = (v: number) => written(mm(v), units)
    const ahead = slot['ahead-of-centre']
    const found: Finding[] = []
    const { radialRake } = anglesOf(design)
    const half = bit.width / 2
    if (ahead > half + 1e-9) {
      const other = layout.slot.width - ahead
      const only = machine.reverse ? '' : ', and this spindle turns no other way'
      const rake = `Radial rake in use is ${degrees(radialRake)}: ${radialRake < 0 ? 'it pushes instead of cutting' : 'only because so much is ground off'}.`
      found.push({
        id: 'slot-side:ahead',
        level: radialRake < 0 ? 'stop' : 'caution',
        text: `${show(Math.min(ahead, bit.width))} of the ${show(bit.width)} bit lie ahead of the axis: turning ${rotation} it leads with its back, as in a head laid out for the other hand${only}. ${rake} The same slot on the other side of the axis would lie ${show(Math.abs(other))} ${other < 0 ? 'behind' : 'ahead'}.`,
        figure: mm(ahead),
        limit: {
          ...mm(half),
          reason: 'half the bit: more of it ahead of the axis than behind is the other hand’s side',
        },
        levers: [{ path: 'slot.ahead-of-centre', turn: 'down' }],
      })
    }
    if (ahead < -1e-9) {
      const ground = layout.bit.facets.rakeAlong > 0 || layout.bit.setting.groundOffLeading > 0
      found.push({
        id: 'slot-side:behind',
        level: ground ? 'caution' : 'note',
        text: `The leading wall of the slot lies ${show(-ahead)} behind the axis${
          ground
            ? ': there is no stock left to grind the rake from, and each grinding puts the tip further behind centre. If ahead was meant, the sign is wrong.'
            : ': the bit leads by itself with more rake, and whatever is ground off its face adds to that.'
        }`,
        figure: mm(ahead),
        limit: {
          ...mm(0),
          reason: 'leading wall on the axis or a little ahead, so that stock is left for the rake (common practice)',
        },
        levers: [{ path: 'slot.ahead-of-centre', turn: 'up' }],
      })
    }
    return found
  },
}

const degrees = (value: number) => formatQuantity('angle', value, 'mm', { decimals: 1 })
