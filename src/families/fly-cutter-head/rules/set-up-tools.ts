import type { Finding, FindingLever } from '../../../checks/finding.ts'
import { mm, written } from '../../../checks/rule.ts'
import type { HeadDesign } from '../design.ts'
import { pinDiameter } from '../engineering/fit.ts'
import { laidSetUp } from '../making/laid-set-up.ts'
import { pinDrill } from '../making/pin-drill.ts'
import { comesNear, sineStack } from '../making/sine-stack.ts'
import { tiltedSetUp } from '../making/tilted-set-up.ts'
import { asTool, type Cutter, coveringMill, endMill, leftToReam, roundTool } from '../making/tooling.ts'

/** Whether the cutters of the list get down to where they cut, and what the tilt is picked up with. */
export function toolFindings(design: HeadDesign): Finding[] {
  return [...reaches(design), ...tilt(design)]
}

function reaches(design: HeadDesign): Finding[] {
  const { parameters: p, layout: l, units } = design
  const { cutters } = p.shop
  if (cutters.length === 0) return []
  const { clearance } = p.settings['set-up']
  const left = 2 * p.making['left-to-finish']
  const most = l.slot.end ? Math.min(l.slot.width - left, 2 * l.slot.end.radius) : l.slot.width - left
  const across = Math.abs(l.step.towards * (tiltedSetUp(design).opening / 2) - l.step.wall)
  const found: Finding[] = []
  const check = (id: string, what: string, cutter: Cutter | undefined, levers: readonly FindingLever[]) => {
    if (cutter?.reach === undefined || cutter.reach >= cutter.reachNeeded - 1e-9) return
    found.push({
      id: `set-up:reach-${id}`,
      level: 'caution',
      text: `The longest cutter in the list for ${what}, ${written(mm(cutter.diameter), units)}, stands ${written(mm(cutter.reach), units)} out of its holder: the holder would rub before it is deep enough.`,
      figure: mm(cutter.reach),
      limit: { ...mm(cutter.reachNeeded), reason: 'depth of the cut, what stands beside it, and clearance' },
      levers,
    })
  }
  const slot = endMill(design, most, l.slot.depth + clearance)
  check('slot', 'the slot', slot, [{ path: 'slot.depth', turn: 'down' }])
  check('step', 'the step', coveringMill(design, across, l.step.depth + clearance), [
    { path: 'step.depth', turn: 'down' },
  ])
  check(
    'drill',
    'the screw holes',
    roundTool(design, 'drill', l.screws.thread.tapDrill, laidSetUp(design).drillReach),
    [{ path: 'step.wall-thickness', turn: 'up' }],
  )
  check('pin', 'the hole of the catch pin', pinDrill(design)?.drill, [])
  found.push(...pinDrillMissing(design))
  const mills = cutters.some((c) => c.kind === 'end-mill')
  if (mills && slot?.reach === undefined) {
    found.push({
      id: 'set-up:slot-cutter',
      level: 'note',
      text: `No end mill in the list is narrow enough to rough the slot and leave ${written(mm(left / 2), units)} on each wall: ${written(mm(most), units)} at the most.`,
      levers: [],
    })
  }
  return found
}

/** A list without a single drill does not say which drills there are. */
function pinDrillMissing(design: HeadDesign): Finding[] {
  const pin = pinDrill(design)
  if (pin === undefined || pin.drill.reach !== undefined) return []
  if (!design.parameters.shop.cutters.some((c) => c.kind === 'drill')) return []
  const length = (value: number) => written(mm(value), design.units)
  return [
    {
      id: 'set-up:pin-drill',
      level: 'note',
      text: `No drill in the list leaves the reamer of the catch pin, ${length(pinDiameter(design.parameters))}, what it wants, ${length(leftToReam.least)} to ${length(leftToReam.most)}: get one of ${asTool(design, pin.drill).name.replace(/^.*⌀/, '')}.`,
      levers: [],
    },
  ]
}

/** A quarter of what the face angle may be off, rad: a set-up should be so much better than what it makes (common practice). */
const settingError = (15 / 60 / 4) * (Math.PI / 180)

function tilt(design: HeadDesign): Finding[] {
  const set = tiltedSetUp(design)
  if (set.setting.by === 'protractor') {
    return [
      {
        id: 'set-up:angle',
        level: 'note',
        text: 'Neither sine bar nor an angle block of the face angle is listed: a protractor sets the tilt, to some minutes of arc.',
        levers: [],
      },
    ]
  }
  if (set.setting.by !== 'sine-bar') return []
  const { bar, stack: height } = set.setting
  if (comesNear(design.layout.measuring.gaugeBlocks, height, 0.99 * bar * Math.cos(set.tilt) * settingError)) return []
  const stack = sineStack(design)
  if (!stack || Math.abs(stack.angle - set.tilt) <= settingError) return []
  const angle = (value: number) => ({ value, kind: 'angle' }) as const
  return [
    {
      id: 'set-up:stack',
      level: 'caution',
      text: `The gauge blocks listed come no nearer than ${written(angle(stack.angle), design.units)} under the sine bar, for ${written(angle(set.tilt), design.units)}.`,
      figure: angle(Math.abs(stack.angle - set.tilt)),
      limit: { ...angle(settingError), reason: 'a quarter of what the face angle may be off (common practice)' },
      levers: [{ path: 'face.angle', turn: stack.angle > set.tilt ? 'up' : 'down' }],
    },
  ]
}
