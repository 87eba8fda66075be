import type { Finding, FindingLever } from '../../../checks/finding.ts'
import { mm, type Rule, ratio, written } from '../../../checks/rule.ts'
import type { Joint } from '../../../mechanics/fit/joint.ts'
import type { HeadDesign } from '../design.ts'
import { holdOf, isShrunk, joinedLength, jointOfHead, pressedFit } from '../engineering/fit.ts'
import { fitLoadOf } from '../engineering/fit-load.ts'
import { crossPinOf } from '../engineering/ways-to-hold.ts'
import { tighter } from './fit-levers.ts'

/** Whether the joint of head and arbor carries the cut, a jam and the bending, at its least interference. */
export const fitGrip: Rule<HeadDesign> = {
  id: 'fit-grip',
  findings(design) {
    const joint = jointOfHead(design)
    if (joint === undefined) return nothingJoined(design)
    if (joint.least.effective <= 0) return [nothingHolds(design, joint)]
    return [...inTheCut(design, joint), ...inAJam(design, joint), ...underBending(design, joint)]
  },
}

const lengthen: readonly FindingLever[] = [
  { path: 'arbor.spigot-length', turn: 'up' },
  { path: 'bore.depth', turn: 'up' },
]

function nothingJoined(design: HeadDesign): Finding[] {
  const { effective } = joinedLength(design)
  // A head that is screwed on has no joint to press, and may still have no length.
  if (pressedFit(design) === undefined && effective > 0) return []
  return [
    {
      id: 'fit-grip:length',
      level: 'stop',
      text: `Slot, step and chamfers leave ${written(mm(effective), design.units)} of the spigot in a whole bore: nothing is joined.`,
      figure: mm(effective),
      limit: { ...mm(0), reason: 'length of closed hub round the spigot' },
      levers: [
        { path: 'arbor.spigot-length', turn: 'up' },
        { path: 'face.depth-on-axis', turn: 'up' },
        { path: 'step.depth', turn: 'down' },
      ],
    },
  ]
}

function nothingHolds(design: HeadDesign, joint: Joint): Finding {
  const show = (v: number) => written(mm(v), design.units)
  const { interference } = joint.least
  const needed = joint.needed[isShrunk(design) ? 'shrunk' : 'pressed'].interference
  const ends = [show(-joint.most.interference), show(-interference)]
  const clearance = ends[0] === ends[1] ? ends[0] : ends.join(' to ')
  const text =
    joint.most.interference <= 0
      ? `The spigot has ${clearance} of clearance in the bore: nothing holds.`
      : interference < 0
        ? `At the wrong end of the limits the spigot has ${show(-interference)} of clearance in the bore: nothing holds.`
        : interference === 0
          ? 'At the wrong end of the limits spigot and bore are line to line: nothing holds.'
          : `The least interference is ${show(interference)}, and ${show(joint.smoothingLoss)} goes into smoothing the two surfaces: nothing is left to hold.`
  return {
    id: 'fit-grip:none',
    level: 'stop',
    text: `${text} The cut asks for ${show(needed)}.`,
    figure: mm(interference),
    limit: {
      ...mm(needed),
      reason: 'interference that carries the cut with the wanted safety (thick cylinders, Lamé)',
    },
    levers: tighter(design),
  }
}

function inTheCut(design: HeadDesign, joint: Joint): Finding[] {
  const { slip, torque } = holdOf(design, joint)
  const wanted = design.parameters.settings.fit['safety-factor']
  if (slip === undefined || slip >= wanted) return []
  const { cutTorque } = fitLoadOf(design)
  const show = (value: number) => written({ value, kind: 'torque' }, design.units)
  return [
    {
      id: 'fit-grip:cut',
      level: slip < 1 ? 'stop' : 'caution',
      text: `At its least interference the joint carries ${show(torque)}, ${slip.toFixed(2)} times what the cut asks (${show(cutTorque)}, blow counted in)${slip < 1 ? ': it slips' : ''}.`,
      figure: ratio(slip),
      limit: { ...ratio(wanted), reason: 'capacity over demand of the cut (rule of thumb)' },
      levers: [
        ...(isShrunk(design) ? [] : [{ path: 'fit.assembly', choose: 'heat' } as const]),
        ...tighter(design),
        ...lengthen,
        { path: 'work.depth-of-cut', turn: 'down' },
        { path: 'work.feed-per-turn', turn: 'down' },
        { path: 'bit.overhang', turn: 'down' },
        { path: 'bit.swing', turn: 'down' },
      ],
    },
  ]
}

function inAJam(design: HeadDesign, joint: Joint): Finding[] {
  const { jamTorque, speed } = fitLoadOf(design)
  const { torque } = holdOf(design, joint)
  if (torque >= jamTorque) return []
  const pin = design.parameters.fit.catch === 'pin' ? crossPinOf(design) : undefined
  const pinned = pin?.ok === true && pin.value.torque >= jamTorque
  const show = (value: number) => written({ value, kind: 'torque' }, design.units)
  const at = written({ value: speed, kind: 'rotation-speed' }, design.units)
  return [
    {
      id: 'fit-grip:jam',
      level: pinned ? 'note' : 'caution',
      text: `Should the bit jam, the spindle gives ${show(jamTorque)} at ${at}, and the joint slips at ${show(torque)}${pinned ? `: the pin then takes it, up to ${show(pin.value.torque)}` : ''}.`,
      figure: { value: torque, kind: 'torque' },
      limit: {
        value: jamTorque,
        kind: 'torque',
        reason: 'torque of the motor at that speed, momentum counted in (rule of thumb)',
      },
      levers: pinned
        ? []
        : [
            ...(isShrunk(design) ? [] : [{ path: 'fit.assembly', choose: 'heat' } as const]),
            ...tighter(design),
            ...lengthen,
          ],
    },
  ]
}

function underBending(design: HeadDesign, joint: Joint): Finding[] {
  const { gape, bending } = holdOf(design, joint)
  if (gape === undefined || gape >= 1) return []
  const { 'cut-factor': cutFactor } = design.parameters.settings.fit
  const opens = gape < 1 / cutFactor
  return [
    {
      id: 'fit-grip:bending',
      level: opens ? 'stop' : 'caution',
      text: `The cut bends the head off the arbor: the joint gapes on one side at ${written({ value: bending, kind: 'torque' }, design.units)}, ${gape.toFixed(2)} times what the cut gives with its blow${opens ? ', and already without it' : ''}; it works loose.`,
      figure: ratio(gape),
      limit: { ...ratio(1), reason: 'pressure in the joint over 6·M/(d·L²)' },
      levers: [
        ...tighter(design),
        ...lengthen,
        { path: 'work.depth-of-cut', turn: 'down' },
        { path: 'work.feed-per-turn', turn: 'down' },
      ],
    },
  ]
}
