import type { CutterRun } from '../../../mechanics/set-up/cutter-run.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { type Operation, operation, type Place } from '../../../route/operation.ts'
import type { HeadDesign } from '../design.ts'
import { acrossSlot, cornersBeside } from '../section.ts'
import { millFeed, millSpeed } from './cutting-data.ts'
import { headFoot, lowPlace } from './low-place.ts'
import { runAlong, travelOf } from './run-along.ts'
import { isSawn } from './sawing.ts'
import { tiltedSetUp } from './tilted-set-up.ts'
import { asTool, type Cutter, coveringMill, endMill, facingCutter } from './tooling.ts'

/** Face, slot and step: one clamping, the tilt picked up once. */
export function tiltedOperations(design: HeadDesign, before: readonly string[]): Operation[] {
  return [settingUp(design, before), facing(design), ...slotting(design), stepping(design)]
}

const tilted = { setUp: 'tilted', machine: 'mill' } as const

function settingUp(design: HeadDesign, before: readonly string[]): Operation {
  const set = tiltedSetUp(design)
  const size = (value: number) => formatLength(value, design.units)
  const level = set.tilt === 0
  return operation({
    ...tilted,
    id: 'tilt',
    title: level ? 'Set the head up level' : 'Set the head up at the tilt',
    steps: [
      level
        ? 'Clean jaws, parallels and head; far end up.'
        : 'Clean jaws, parallels and head; far end up, the bit side low and towards X +.',
      level
        ? 'Stand it on its mounting face, tap it down.'
        : 'Height, then angle, as the set-up says; tighten, and look at the angle again: jaws lift.',
      `The ${lowPlace(set)} ${set.under > 0 ? `${size(set.under)} above the bed` : 'on the bed'}: the finished face will then stand ${size(set.stickUp)} above the jaws, and slot and step clear them too.`,
      `Touch both ${set.heldBy === 'shank' ? 'sides of the head' : 'jaws'}: Y zero is midway between them.`,
    ],
    why: 'Once for face, slot and step: whatever is clamped twice is tilted twice, and never the same.',
    needs: before,
  })
}

/** Y of each pass over a width, even about the middle. */
function passesOver(from: number, to: number, cutter: number, places: (y: number, nth: number) => Place[]): Place[] {
  const lanes = Math.max(1, Math.ceil((to - from) / (0.75 * cutter) - 1e-9))
  const lane = (to - from) / lanes
  return Array.from({ length: lanes }, (_, i) => places(from + (i + 0.5) * lane, i + 1)).flat()
}

/** Where the cutter starts and ends a run. */
const endsOf = ({ start, stop }: Pick<CutterRun, 'start' | 'stop'>, name: string, y: number, z: number): Place[] => [
  { name: `${name}, start`, x: start, y, z },
  { name: `${name}, end`, x: stop, y, z },
]

/** Less than this, mm, is no cut. */
const nothingLeft = 0.05

function facing(design: HeadDesign): Operation {
  const { parameters: p, layout: l, units } = design
  const set = tiltedSetUp(design)
  const size = (value: number) => formatLength(value, units)
  const cutter = facingCutter(design, set.opening)
  const left = isSawn(design)
    ? p.making['left-by-saw']
    : (l.prismLength - l.depthOnAxis + (l.across / 2) * Math.tan(l.faceAngle)) * Math.cos(l.faceAngle)
  const pass = p.making['facing-pass'] * cutter.diameter
  const half = acrossSlot(p.stock) / 2
  const wide = cutter.diameter >= 2 * half
  const run = runAlong(design, { diameter: cutter.diameter, z: 0, from: 0, to: 0 })
  if (left < nothingLeft) {
    return operation({
      ...tilted,
      id: 'face',
      title: 'Look at the face',
      steps: [
        `The far end is the face as it was faced, ${size(l.depthOnAxis)} from the mounting face: nothing comes off.`,
        'Indicate it level both ways, touch it: that is Z zero for slot, step and screws.',
      ],
      places: [{ name: 'face', z: 0 }],
      measure: [{ part: 'body', dimension: 'face.long-side' }],
      why: 'The first at this clamping: depths of slot, step and screws are measured from it.',
      needs: ['tilt'],
    })
  }
  return operation({
    ...tilted,
    id: 'face',
    title: set.tilt > 0 ? 'Mill the angled face' : 'Mill the face',
    steps: [
      ...(set.tilt > 0 ? ['Take the high spot first.'] : []),
      `Down until the face stands ${size(set.headHeight)} above the ${headFoot(set)}${set.tilt > 0 ? ', square to the face' : ''}, and no further: it sets the height of the whole head.`,
      `With the ${lowPlace(set)} ${set.under > 0 ? `${size(set.under)} above the bed` : 'on the bed'} it is then ${size(set.stickUp)} above the jaw tops.`,
      'That is Z zero for slot, step and screws.',
    ],
    tool: asTool(design, cutter),
    ...speedOf(design, cutter),
    depth: left,
    passes: Math.max(1, Math.ceil(left / pass - 1e-9)),
    travel: travelOf(run),
    places: wide
      ? endsOf(run, 'middle of the pass', 0, 0)
      : passesOver(-half, half, cutter.diameter, (y, nth) => endsOf(run, `lane ${nth}`, y, 0)),
    measure: [
      { part: 'body', dimension: 'face.long-side' },
      { part: 'body', dimension: 'face.angle' },
    ],
    why: 'The first cut at the tilt: depths of slot, step and screws are measured from it.',
    needs: ['tilt'],
  })
}

/** Rough under size, then one wall after the other to the bit as measured. */
function slotting(design: HeadDesign): Operation[] {
  const { parameters: p, layout: l, units } = design
  const { slot, hand } = l
  const size = (value: number) => formatLength(value, units)
  const left = p.making['left-to-finish']
  const reach = slot.depth + p.settings['set-up'].clearance
  const most = slot.end ? Math.min(slot.width - 2 * left, 2 * slot.end.radius) : slot.width - 2 * left
  const cutter = endMill(design, most, reach) ?? {
    kind: 'end-mill',
    diameter: slot.width / 2,
    reach: undefined,
    reachNeeded: reach,
  }
  const r = cutter.diameter / 2
  const middle = (slot.leading + slot.trailing) / 2
  const rough = Math.max(slot.depth - left, slot.depth / 2)
  const { diameter } = cutter
  const runs = (z: number) =>
    runAlong(design, { diameter, z, from: slot.leading, to: slot.trailing, stopsAt: slot.end?.x })
  const ends = (name: string, y: number, z: number): Place[] => endsOf(runs(z), name, y, z)
  const leading = slot.leading - hand * r
  const trailing = slot.trailing + hand * r
  // Roughing lanes where the slot is much wider than the cutter.
  const lanes = Math.max(1, Math.ceil((slot.width - 2 * left - cutter.diameter) / (0.75 * cutter.diameter) - 1e-9) + 1)
  const spread = slot.width - 2 * left - cutter.diameter
  const tool = asTool(design, cutter)
  return [
    operation({
      ...tilted,
      id: 'slot-rough',
      title: 'Rough the slot',
      steps: [
        lanes === 1
          ? `Down the middle, ${size(left)} short of floor and walls.`
          : `${lanes} lanes side by side, ${size(left)} short of floor and walls.`,
        ...(slot.end ? ['From the bit side in to the end, and back out: the slot is stopped.'] : []),
        'Clear the chips at every pass: recut chips pull the cutter over.',
      ],
      tool,
      ...speedOf(design, cutter),
      depth: rough,
      passes: Math.max(1, Math.ceil(rough / deepestPass(design, cutter) - 1e-9)),
      travel: travelOf(runs(rough)),
      places:
        lanes === 1
          ? ends('middle', middle, rough)
          : Array.from({ length: lanes }, (_, i) =>
              ends(`lane ${i + 1}`, middle - spread / 2 + (i * spread) / (lanes - 1), rough),
            ).flat(),
      why: 'Under size first: a cutter in a full slot leans, and would leave the walls askew.',
      needs: ['face'],
    }),
    operation({
      ...tilted,
      id: 'slot-walls',
      title: 'Finish the slot, floor and walls',
      steps: [
        `At the full depth of ${size(slot.depth)}: one pass along the floor, then one along the trailing wall, which backs the bit, then one along the leading wall.`,
        ...(slot.end && r < slot.end.radius - 1e-9
          ? [
              `The corners at the end keep the radius of the cutter, ${size(r)} for ${size(slot.end.radius)} drawn: no fault, the end of the bit must only not touch them.`,
            ]
          : []),
        'Lock the axis that does not move. The last cut on each wall with the cutter fresh and no dwell.',
        `Wide enough for the bit as measured and ${size(p.slot.clearance)}: try the bit before the cutter leaves.`,
      ],
      tool,
      ...speedOf(design, cutter),
      depth: slot.depth,
      travel: travelOf(runs(slot.depth)),
      places: [
        ...ends('floor, middle', middle, slot.depth),
        ...ends('trailing wall, cutter', trailing, slot.depth),
        ...ends('leading wall, cutter', leading, slot.depth),
        { name: 'trailing wall', y: slot.trailing },
        { name: 'leading wall', y: slot.leading },
      ],
      measure: [
        { part: 'body', dimension: 'slot.width' },
        { part: 'body', dimension: 'slot.depth' },
        ...(cornersBeside(p.stock) ? [] : [{ part: 'body', dimension: 'slot.from-flat' }]),
      ],
      why: 'Before the step: both walls are still whole and stand up to the cutter, and the depth can be measured from the face on both sides.',
      needs: ['slot-rough', 'measure-bit'],
    }),
  ]
}

function stepping(design: HeadDesign): Operation {
  const { parameters: p, layout: l, units } = design
  const { step } = l
  const size = (value: number) => formatLength(value, units)
  const reach = step.depth + p.settings['set-up'].clearance
  const outside = step.towards * (acrossSlot(p.stock) / 2)
  const cutter = coveringMill(design, Math.abs(outside - step.wall), reach)
  const r = cutter.diameter / 2
  const [wall, width] = [step.wall + step.towards * r, Math.abs(outside - step.wall)]
  const { diameter } = cutter
  const run = runAlong(design, { diameter, z: step.depth, from: step.wall, to: outside })
  const left = Math.min(p.making['left-to-finish'], width / 2)
  const [lane, beyond] = [0.75 * diameter, Math.max(0, width - left - diameter)]
  const lanes = 1 + Math.ceil(beyond / lane - 1e-9)
  // From the outside in to where the wall is left thick; the last pass takes that off it.
  const rough = Array.from({ length: lanes }, (_, i) => wall + step.towards * (left + (lanes - 1 - i) * lane))
  const along = (name: string, y: number): Place[] => endsOf(run, name, y, step.depth)
  return operation({
    ...tilted,
    id: 'step',
    title: 'Mill the step',
    steps: [
      `Rough from the outside in, down in passes, and leave ${size(left)} on the wall.`,
      `Then one pass along the wall at full depth, light: it leaves ${size(p.step['wall-thickness'])} between slot and step, and that bends.`,
      'Now the tilt may be lost: check all sizes below before the vise is opened.',
    ],
    tool: asTool(design, cutter),
    ...speedOf(design, cutter),
    depth: step.depth,
    passes: Math.max(1, Math.ceil(step.depth / deepestPass(design, cutter) - 1e-9)),
    travel: travelOf(run),
    places: [
      ...rough.flatMap((y, i) => along(lanes === 1 ? 'roughing, cutter' : `lane ${i + 1}`, y)),
      ...along('along the wall, cutter', wall),
      { name: 'step wall', y: step.wall, z: step.depth },
    ],
    measure: [
      { part: 'body', dimension: 'step.wall' },
      { part: 'body', dimension: 'step.depth' },
    ],
    why: 'After the slot, from whose finished wall its own is measured; before the screws, which are drilled into it.',
    needs: ['slot-walls'],
  })
}

/** Of an end mill in slot or step, mm. */
const deepestPass = ({ parameters: { making } }: HeadDesign, { diameter }: Cutter): number =>
  Math.min(making['slot-pass'] * diameter, making['deepest-pass'])

const speedOf = (design: HeadDesign, cutter: Cutter) => {
  const speed = millSpeed(design, {
    of: design.layout.materials.body,
    diameter: cutter.diameter,
    feedPerTurn: millFeed(design, cutter),
  })
  return speed === undefined ? {} : { speed }
}
