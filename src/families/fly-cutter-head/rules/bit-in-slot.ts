import type { Finding } from '../../../checks/finding.ts'
import { mm, type Rule, written } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import type { HeadLayout } from './head-subject.ts'
import { thinnerScrews } from './screw-levers.ts'

/** Whether the bit lies in its slot: tail, stop, screws on steel. */
export const bitInSlot: Rule<HeadLayout & Pick<HeadDesign, 'tables'>> = {
  id: 'bit',
  findings({ units, layout, gripped, parameters, tables }) {
    const { bit, slot, screws, faceAngle } = layout
    const found: Finding[] = []
    const show = (v: number) => written(mm(v), units)
    const along = (x: number) => `${show(Math.abs(x))} ${x < 0 ? 'beyond the axis' : 'from the axis on the bit side'}`
    const above = (z: number) => `${show(Math.abs(z))} ${z < 0 ? 'below' : 'above'}`
    const shorterBit = [
      { path: 'bit.length', turn: 'down' },
      { path: 'bit.overhang', turn: 'up' },
    ] as const
    if (slot.end) {
      const room = slot.end.x + slot.end.radius
      if (bit.innerEnd < room - 1e-9) {
        found.push({
          id: 'bit:hits-stop',
          level: 'stop',
          text: `The square tail of the bit needs ${show(room - bit.innerEnd)} more slot than there is before the end radius of ${show(slot.end.radius)} begins.`,
          figure: mm(room - bit.innerEnd),
          limit: { ...mm(0), reason: 'square tail clear of the end radius' },
          levers: [...shorterBit, { path: 'slot.beyond-axis', turn: 'up' }, { path: 'slot.runs', choose: 'through' }],
        })
      }
    } else {
      const farSide = -layout.across / 2 / Math.cos(faceAngle)
      if (bit.innerEnd < farSide - 1e-9) {
        found.push({
          id: 'bit:tail-out',
          level: 'caution',
          text: `The tail of the bit stands ${show(farSide - bit.innerEnd)} out of the far side: it is swept, it catches, and it adds to the unbalance. Cut it off.`,
          figure: mm(farSide - bit.innerEnd),
          limit: { ...mm(0), reason: 'nothing out of the far side' },
          levers: shorterBit,
        })
      }
    }
    const grip = gripped.from - gripped.to
    if (grip < parameters.bit.width) {
      found.push({
        id: 'bit:grip',
        level: 'stop',
        text: `Only ${show(Math.max(grip, 0))} of the bit lies in the slot.`,
        figure: mm(grip),
        limit: { ...mm(parameters.bit.width), reason: 'less than the bit is wide holds nothing (rule of thumb)' },
        levers: [
          { path: 'bit.length', turn: 'up' },
          { path: 'bit.overhang', turn: 'down' },
          { path: 'bit.swing', turn: 'down' },
        ],
      })
    }
    const point = screws.screw.flatPointDiameter / 2
    screws.xs.forEach((x, i) => {
      if (x - point >= bit.innerEnd && x + point <= gripped.from) return
      found.push({
        id: `bit:off-screw-${i + 1}`,
        level: 'stop',
        text: `Screw ${i + 1} bears on no steel: along the face the bit in the slot reaches from ${along(bit.innerEnd)} to ${along(gripped.from)}, and the screw stands ${along(x)}.`,
        figure: mm(x),
        limit: {
          ...mm(x - point < bit.innerEnd ? bit.innerEnd + point : gripped.from - point),
          reason: 'whole screw point on the bit',
        },
        levers: [
          { path: 'screws.first-from-corner', turn: x - point < bit.innerEnd ? 'down' : 'up' },
          { path: 'screws.spacing', turn: 'down' },
          { path: 'bit.length', turn: 'up' },
          { path: 'screws.count', turn: 'down' },
          { path: 'bit.overhang', turn: 'down' },
          ...thinnerScrews({ layout, tables }),
        ],
      })
    })
    const low = screws.height - point
    const high = screws.height + point
    if (low < bit.workSide || high > bit.back) {
      found.push({
        id: 'bit:screw-height',
        level: 'stop',
        text: `The screw points miss the side of the bit: it reaches from ${above(bit.workSide)} to ${above(bit.back)} the face, the points from ${above(low)} to ${above(high)} it.`,
        figure: mm(screws.height),
        limit: {
          ...mm(low < bit.workSide ? bit.workSide + point : bit.back - point),
          reason: 'whole screw point on the bit',
        },
        levers: [
          { path: 'screws.height', turn: low < bit.workSide ? 'up' : 'down' },
          { path: 'bit.height', turn: 'up' },
          ...thinnerScrews({ layout, tables }),
        ],
      })
    }
    return found
  },
}
