import type { DrawnNotes } from '../../../drawing/plan/sheet-plan.ts'
import { formatAngle } from '../../../quantity/format-angle.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import type { HeadDesign } from '../design.ts'
import { laidHold, laidSetUp } from '../making/laid-set-up.ts'
import { lowPlace } from '../making/low-place.ts'
import { outerPlace } from '../making/outer-place.ts'
import { angleBlockWords, blocksWords } from '../making/tilt-notes.ts'
import { isJoinedFirst, type TiltedSetUp, tiltedSetUp } from '../making/tilted-set-up.ts'
import { written } from './words.ts'

/** How the head is held for its two clampings, and in which order it is cut. */
export function setUpNotes(design: HeadDesign): DrawnNotes[] {
  const { parameters: p, layout: l } = design
  const set = tiltedSetUp(design)
  const length = (value: number) => written(design, 'length', value)
  const about = (value: number) => formatLength(value, design.units, { decimals: design.units === 'mm' ? 1 : 2 })
  const bored = laidSetUp(design)
  const opens = p.machine.vise['jaw-opening']
  const tilted = [
    `Jaws: ${held(design)}. They open ${length(set.opening)} of ${length(opens)}${set.opening > opens ? ': TOO LITTLE' : ''}.`,
    ...(set.tilt > 0 ? [`Saw the wedge off first, ${about(set.wedge)} deep on the side away from the bit.`] : []),
    angleWords(design, set),
    underWords(set, length),
    `Face above the jaws: ${length(set.least)} at least (${set.heldBy === 'shank' ? 'mounting face and shoulder clear of them' : `deepest cut ${length(set.deepest)}, and clearance`}); it stands ${length(set.stickUp)}.`,
    gripWords(design, set, about),
    `Zero O: bore axis at the finished face; Y midway between ${set.heldBy === 'shank' ? 'the sides of the head' : 'the jaws'}, X ${length(l.corner)} along the face from its outer ${outerPlace(design)} on the bit side.`,
    'In this order, the tilt not lost in between: face; slot, roughed under size, then each wall to the bit as measured; step.',
  ]
  const laid = [
    `${laidHold(design)}.`,
    ...laidHeight(design, length),
    "Step level by indicator, mounting face square to the table's Y or X, zero on A and B.",
    `Spot; drill ⌀${length(l.screws.thread.tapDrill)} through the wall into the slot, its tip ${length(bored.drillDepth)} deep; tap ${l.screws.thread.name} until its lead is out of the wall, its tip ${length(bored.tap.tipDepth)} deep: square to C, ${l.screws.xs.length} off.`,
  ]
  return [
    { kind: 'notes', title: 'At the tilt: face, slot and step in one clamping', lines: numbered(tilted) },
    { kind: 'notes', title: 'Laid down: screw holes', lines: numbered(laid) },
  ]
}

const numbered = (lines: readonly string[]): string[] => lines.map((line, i) => `${i + 1}. ${line}`)

function laidHeight(design: HeadDesign, length: (value: number) => string): string[] {
  const { under, onParallels, stickUp, drillReach, tapReach } = laidSetUp(design)
  const stands =
    under === 0
      ? 'On the bed of the vise'
      : onParallels
        ? `On parallels of ${length(under)}`
        : `Packed ${length(under)} above the bed`
  const jaws = isJoinedFirst(design) ? [] : [`${stands}: the drilled face stands ${length(stickUp)} above the jaws.`]
  return [
    ...jaws,
    `Drill ${length(drillReach)}, tap ${length(tapReach)} out of its holder, which passes over the metal beside the holes.`,
  ]
}

function held(design: HeadDesign): string {
  const { stock } = design.parameters
  if (isJoinedFirst(design)) return 'on the shank of the arbor, in a V-block'
  if (stock.shape === 'round') return 'round bar in a V-block or soft jaws, the line of the slot marked first'
  if (stock.shape === 'hexagon' && stock['slot-runs'] === 'flat-to-flat') {
    return 'V-jaws, for plain ones meet the hexagon on its corners'
  }
  return 'on the two flats beside the slot'
}

function angleWords(design: HeadDesign, { setting, tilt, heldBy }: TiltedSetUp): string {
  const on = heldBy === 'shank' ? 'against the shank' : 'under the mounting face'
  const angle = formatAngle(tilt, { minutes: true }).replace(/°0'$/, '°')
  switch (setting.by) {
    case 'level':
      return 'No tilt: the mounting face lies level.'
    case 'angle-block':
      return `${angleBlockWords(setting.blocks)} ${on}.`
    case 'sine-bar':
      return `Angle: sine bar of ${written(design, 'length', setting.bar)} on ${written(design, 'length', setting.stack)} of blocks${blocksWords(design)}, ${angle}, ${on}.`
    case 'protractor':
      return `Angle: ${angle} by protractor ${on}; pack it.`
  }
}

function underWords(set: TiltedSetUp, length: (value: number) => string): string {
  const { under, underNeeded, underMost, onParallels, tilt, lowPoint } = set
  const what = `The ${lowPlace(set)}`
  if (under === 0) return `${what} stands on the bed of the vise.`
  const by = onParallels
    ? `on ${lowPoint ? 'one parallel of that height, midway between the jaws' : 'parallels of that height'}`
    : 'packed: no pair of parallels in the list is as high'
  const range = underMost > underNeeded ? ` ${length(underNeeded)} to ${length(underMost)} will do.` : ''
  return `${what} stands ${length(under)} above the bed, ${by}.${range}${tilt > 0 ? ' An edge is no seat: the angle is held by what lies under the face.' : ''}`
}

function gripWords(
  { parameters }: HeadDesign,
  { grip, gripWanted, heldBy }: TiltedSetUp,
  length: (value: number) => string,
): string {
  const enough = grip >= gripWanted ? '' : ': TOO LITTLE'
  const round = parameters.stock.shape === 'round' || heldBy === 'shank'
  const where = round ? 'Held below the jaw tops' : 'Flat held below the jaw tops'
  return grip > 0
    ? `${where}: ${length(grip)}, wanted ${length(gripWanted)}${enough}.`
    : `${where}: none, wanted ${length(gripWanted)}: TOO LITTLE.`
}
