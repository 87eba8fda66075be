import type { Finding } from '../../../checks/finding.ts'
import { mm, written } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import { tiltedOperations } from '../making/tilted-operations.ts'
import { isJoinedFirst, tiltedSetUp } from '../making/tilted-set-up.ts'
import { coveringMill } from '../making/tooling.ts'

/** Whether the mill has the room and the travel to make the head, and what holds an arbor that is turned in its spindle. */
export function machineFindings(design: HeadDesign): Finding[] {
  return [...travel(design), ...headroom(design), ...joinedFirst(design), ...spindleTurned(design)]
}

/** The widest cutter runs furthest. */
const stepMill = (design: HeadDesign) => {
  const { step } = design.layout
  const outside = step.towards * (tiltedSetUp(design).opening / 2)
  const reach = step.depth + design.parameters.settings['set-up'].clearance
  return { cutter: coveringMill(design, Math.abs(outside - step.wall), reach), outside }
}

function travel(design: HeadDesign): Finding[] {
  const { machine, settings } = design.parameters
  const has = machine['table-travel']
  if (has === undefined) return []
  // In one clamping, all from the same zero: as far as the places of face, slot and step lie apart.
  const xs = tiltedOperations(design, [])
    .filter((o) => o.travel !== undefined)
    .flatMap((o) => o.places.flatMap(({ x }) => (x === undefined ? [] : [x])))
  const needs = xs.length === 0 ? 0 : Math.max(...xs) - Math.min(...xs)
  if (needs <= has + 1e-9) return []
  return [
    {
      id: 'set-up:table-travel',
      level: 'caution',
      text: `To cut face, slot and step from clear to clear, ${written(mm(settings.cutting.gap), design.units)} before and after, the table has to travel ${written(mm(needs), design.units)}.`,
      figure: mm(needs),
      limit: { ...mm(has), reason: 'travel of the table' },
      levers: [
        { path: 'machine.table-travel', turn: 'up' },
        { path: 'stock.size', turn: 'down' },
      ],
    },
  ]
}

function headroom(design: HeadDesign): Finding[] {
  const { headroom: has, vise } = design.parameters.machine
  const bed = vise['bed-height']
  if (has === undefined || bed === undefined) return []
  const set = tiltedSetUp(design)
  const { cutter } = stepMill(design)
  const needs = bed + set.jawHeight + set.stickUp + (cutter.reach ?? cutter.reachNeeded)
  if (needs <= has) return []
  return [
    {
      id: 'set-up:headroom',
      level: 'stop',
      text: `Vise, head and cutter are ${written(mm(needs), design.units)} high at the tilt, the holder not counted: more than there is under the spindle.`,
      figure: mm(needs),
      limit: { ...mm(has), reason: 'spindle nose to table' },
      levers: [
        { path: 'face.depth-on-axis', turn: 'down' },
        ...(isJoinedFirst(design) ? [{ path: 'making.join', choose: 'after-face' }] : []),
      ],
    },
  ]
}

function joinedFirst(design: HeadDesign): Finding[] {
  const { shank } = design.layout
  if (!isJoinedFirst(design) || shank === undefined || shank.kind === 'straight') return []
  return [
    {
      id: 'set-up:tapered-shank',
      level: 'caution',
      text: 'Joined before the tilt, the head is held by its shank, and no vise holds a taper: it takes a socket of that taper in a dividing head or angle plate.',
      levers: [{ path: 'making.join', choose: 'after-face' }],
    },
  ]
}

function spindleTurned({ parameters: { making, machine } }: HeadDesign): Finding[] {
  if (making['spigot-turned-in'] === 'lathe' || machine.drawbar) return []
  return [
    {
      id: 'set-up:no-drawbar',
      level: 'caution',
      text: 'The spigot is turned in the spindle of the mill, and no drawbar holds the shank in: the side load of the cut walks it out.',
      levers: [{ path: 'making.spigot-turned-in', choose: 'lathe' }],
    },
  ]
}
