import type { DrawnNotes } from '../../../drawing/plan/sheet-plan.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import type { HeadDesign } from '../design.ts'
import { laidHold, laidSetting, laidSetUp } from '../making/laid-set-up.ts'
import { outerPlace } from '../making/outer-place.ts'
import { laidStandsOn } from '../making/stands-on.ts'
import { tiltSetting } from '../making/tilt-setting.ts'
import { isJoinedFirst, type TiltedSetUp, tiltedSetUp } from '../making/tilted-set-up.ts'
import { cornersBeside } from '../section.ts'
import { written } from '../words.ts'

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
    ...tiltSetting(design, length),
    `Face above the jaws: ${length(set.least)} at least (${set.heldBy === 'shank' ? 'mounting face and shoulder clear of them' : `deepest cut ${length(set.deepest)}, and clearance`}); it stands ${length(set.stickUp)}.`,
    gripWords(design, set, about),
    `Zero O: bore axis at the finished face; Y midway between ${set.heldBy === 'shank' ? 'the sides of the head' : 'the jaws'}, X ${length(l.corner)} along the face from its outer ${outerPlace(design)} on the bit side.`,
    'In this order, the tilt not lost in between: face; slot, roughed under size, then each wall to the bit as measured; step.',
  ]
  const laid = [
    `${laidHold(design)}.`,
    ...laidHeight(design, length),
    ...laidSetting(design),
    'Zero on A and B.',
    `Spot; drill ⌀${length(l.screws.thread.tapDrill)} through the wall into the slot, its tip ${length(bored.drillDepth)} deep; tap ${l.screws.thread.name} until its lead is out of the wall, its tip ${length(bored.tap.tipDepth)} deep: square to C, ${l.screws.xs.length} off.`,
  ]
  return [
    { kind: 'notes', title: 'At the tilt: face, slot and step in one clamping', lines: numbered(tilted) },
    { kind: 'notes', title: 'Laid down: screw holes', lines: numbered(laid) },
  ]
}

const numbered = (lines: readonly string[]): string[] => lines.map((line, i) => `${i + 1}. ${line}`)

function laidHeight(design: HeadDesign, length: (value: number) => string): string[] {
  const { stickUp, drillReach, tapReach } = laidSetUp(design)
  const jaws = isJoinedFirst(design)
    ? []
    : [`${laidStandsOn(design, length)}. The drilled face stands ${length(stickUp)} above the jaws.`]
  return [
    ...jaws,
    `Drill ${length(drillReach)}, tap ${length(tapReach)} out of its holder, which passes over the metal beside the holes.`,
  ]
}

function held(design: HeadDesign): string {
  const { stock } = design.parameters
  if (isJoinedFirst(design)) return 'on the shank of the arbor, in a V-block'
  if (stock.shape === 'round') return 'round bar in a V-block or soft jaws, the line of the slot marked first'
  if (cornersBeside(stock)) {
    return 'V-jaws, for plain ones meet the hexagon on its corners'
  }
  return 'on the two flats beside the slot'
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
