import type { Finding, FindingLever } from '../../../checks/finding.ts'
import { mm, written } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import { laidSetUp } from '../making/laid-set-up.ts'
import { isJoinedFirst, type TiltedSetUp, tiltedSetUp } from '../making/tilted-set-up.ts'

/** What the vise holds, how high, and how wide it opens. */
export function viseFindings(design: HeadDesign): Finding[] {
  const set = tiltedSetUp(design)
  return [...grip(design, set), ...underneath(design, set), ...opening(design, set), ...laid(design)]
}

const lessDepth: readonly FindingLever[] = [
  { path: 'step.depth', turn: 'down' },
  { path: 'slot.depth', turn: 'down' },
]

function grip(design: HeadDesign, set: TiltedSetUp): Finding[] {
  if (set.grip >= set.gripWanted - 1e-9) return []
  const show = (value: number) => written(mm(value), design.units)
  const onShank = set.heldBy === 'shank'
  const held =
    set.grip > 0
      ? `${show(set.grip)} of ${onShank ? 'shank' : 'flat'} are left between the jaws`
      : 'nothing is left between the jaws'
  const settings = design.parameters.settings['set-up']
  return [
    {
      id: 'set-up:grip',
      level: set.grip < settings['never-grip'] * set.gripWanted ? 'stop' : 'caution',
      text: onShank
        ? `Joined before the tilt, the head stands on its shank: with the face ${show(set.stickUp)} above the jaws ${held}. A longer shank holds it, or the head is finished by itself and joined last.`
        : `With the face ${show(set.stickUp)} above the jaws, so that ${set.deepest === design.layout.step.depth ? 'the step' : 'the slot'} clears them, ${held}: the head is too short to be cut in one clamping.`,
      figure: mm(set.grip),
      limit: {
        ...mm(set.gripWanted),
        reason: `the larger of ${show(settings['least-grip'])} and ${onShank ? 'a share of what stands out' : 'a third of the height'} (rule of thumb)`,
      },
      levers: onShank
        ? [{ path: 'making.join', choose: 'after-face' }]
        : [{ path: 'face.depth-on-axis', turn: 'up' }, ...lessDepth],
    },
  ]
}

/** Jaws that are too high for the head on what lies in the drawer. */
function underneath(design: HeadDesign, set: TiltedSetUp): Finding[] {
  if (set.underNeeded === 0 || set.onParallels) return []
  const show = (value: number) => written(mm(value), design.units)
  const listed = design.parameters.shop.parallels.length > 0
  const most = set.underMost > set.underNeeded ? ` to ${show(set.underMost)}` : ''
  return [
    {
      id: 'set-up:parallels',
      level: listed ? 'caution' : 'note',
      text: `The jaws are ${show(set.jawHeight)} high: for the deepest cut to clear them the low edge of the head must stand ${show(set.underNeeded)}${most} above the bed of the vise, and ${listed ? 'no pair of parallels in the list is of that height' : 'no parallels are listed'}: pack it.`,
      figure: mm(set.jawHeight),
      limit: { ...mm(set.jawHeight - set.underNeeded), reason: 'highest jaws that need nothing under the head' },
      levers: listed
        ? [
            { path: 'machine.vise.jaw-height', turn: 'down' },
            { path: 'face.depth-on-axis', turn: 'up' },
          ]
        : [],
    },
  ]
}

function opening(design: HeadDesign, set: TiltedSetUp): Finding[] {
  const opens = design.parameters.machine.vise['jaw-opening']
  if (set.opening <= opens + 1e-9) return []
  return [
    {
      id: 'set-up:opening',
      level: 'stop',
      text: `The vise opens ${written(mm(opens), design.units)}, and ${written(mm(set.opening), design.units)} have to go between its jaws.`,
      figure: mm(set.opening),
      limit: { ...mm(opens), reason: 'widest opening of the vise' },
      levers: [
        { path: 'machine.vise.jaw-opening', turn: 'up' },
        { path: 'stock.size', turn: 'down' },
      ],
    },
  ]
}

/** Laid down for the screw holes the head lies along the opening, its whole length between the jaws. */
function laid(design: HeadDesign): Finding[] {
  const set = laidSetUp(design)
  const opens = design.parameters.machine.vise['jaw-opening']
  if (isJoinedFirst(design) || set.opening <= opens + 1e-9) return []
  return [
    {
      id: 'set-up:laid-opening',
      level: 'caution',
      text: `Laid down for its screw holes the head is ${written(mm(set.opening), design.units)} long between the jaws, which open ${written(mm(opens), design.units)}: strap it to the table instead.`,
      figure: mm(set.opening),
      limit: { ...mm(opens), reason: 'widest opening of the vise' },
      levers: [{ path: 'machine.vise.jaw-opening', turn: 'up' }],
    },
  ]
}
