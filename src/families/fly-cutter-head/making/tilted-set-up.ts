import { angleBlockStack } from '../../../mechanics/measuring/angle-block-stack.ts'
import { sineBarHeight } from '../../../mechanics/measuring/gauge-stack.ts'
import { heldOn, jawGrip } from '../../../mechanics/set-up/jaw-grip.ts'
import { type ClampedCut, stickUpNeeded } from '../../../mechanics/set-up/stick-up.ts'
import { type TiltedWork, tiltedHeights } from '../../../mechanics/set-up/tilted-work.ts'
import { arborTop } from '../assembly-dimensions.ts'
import type { HeadDesign } from '../design.ts'
import { certain } from '../engineering/certain.ts'
import { acrossSlot } from '../section.ts'
import { parallelsOrPacking } from './parallels-or-packing.ts'
import { facingCutter } from './tooling.ts'

/** How the tilt is picked up. */
export type AngleSetting =
  | { readonly by: 'level' }
  /** Blocks whose angles add up, rad. */
  | { readonly by: 'angle-block'; readonly blocks: readonly number[] }
  /** Blocks under one end of the sine bar, mm. */
  | { readonly by: 'sine-bar'; readonly bar: number; readonly stack: number }
  | { readonly by: 'protractor' }

type CutId = 'face' | 'slot' | 'step'

/** A cut at the tilt: its depth below the finished face, and how far the face must stand above the jaws for it, mm. */
export interface TiltedCut {
  readonly id: CutId
  readonly depth: number
  readonly needed: number
}

/** The one clamping in which angled face, slot and step are milled, mm and rad; depths are below the finished face. */
export interface TiltedSetUp {
  readonly tilt: number
  readonly setting: AngleSetting
  /** What the jaws hold: the head itself, or the shank of an arbor that is joined before the tilt. */
  readonly heldBy: 'head' | 'shank'
  readonly cuts: readonly TiltedCut[]
  /** Deepest cut at this clamping, and how far the face must stand above the jaws for all of them. */
  readonly deepest: number
  readonly least: number
  /** How far it does, on the parallels that are used. */
  readonly stickUp: number
  /** The lowest place of the mounting face, below the finished face: what the height of the head is measured from. */
  readonly headHeight: number
  /** Lowest place of what is held: the edge of the mounting face, or of the shank's end, on the bit side. */
  readonly lowest: number
  /** Between the bed of the vise and that place: least that is needed, and what is used. 0 stands on the bed. */
  readonly underNeeded: number
  /** The most that leaves the wanted grip; below `underNeeded` where no height does. */
  readonly underMost: number
  readonly under: number
  /** Whether a pair of the shop's parallels is that high; without one the height must be packed. */
  readonly onParallels: boolean
  readonly jawHeight: number
  /** Flat (of a shank: length) left between the jaws below their tops, and how much is wanted. */
  readonly grip: number
  readonly gripWanted: number
  /** Whether what is lowest is a point midway between the jaws: then one parallel stands under it, and no pair. */
  readonly lowPoint: boolean
  /** How far the jaws open. */
  readonly opening: number
  /** How deep the wedge is that has to come off before the face is clean. */
  readonly wedge: number
}

/** Blocks are marked in minutes at best, rad. */
const sameAngle = Math.PI / 180 / 60 / 2

/** Worked out once; whether the vise can do it is for the findings to say. */
export const tiltedSetUp = (design: HeadDesign): TiltedSetUp => design.once('tilted set-up', () => workOut(design))

/** Whether the arbor is in when the tilt is cut, so that nothing but its shank is left to hold. */
export const isJoinedFirst = ({ parameters: { making } }: HeadDesign): boolean => making.join === 'before-tilt'

function workOut(design: HeadDesign): TiltedSetUp {
  const { parameters: p, layout: l } = design
  const { clearance, ...settings } = p.settings['set-up']
  const jawHeight = p.machine.vise['jaw-height']
  const opening = acrossSlot(design.parameters.stock)
  const shell = facingCutter(design, opening).kind === 'face-mill'
  const { each, all } = certain(
    stickUpNeeded([
      { id: 'face', depth: 0, clearance: shell ? settings['clearance-shell-mill'] : clearance },
      { id: 'slot', depth: l.slot.depth, clearance },
      { id: 'step', depth: l.step.depth, clearance },
    ] satisfies ClampedCut<CutId>[]),
  )
  const depths = { face: 0, slot: l.slot.depth, step: l.step.depth } as const
  const { work, above } = isJoinedFirst(design) ? shankHeld(design) : headHeld(design)
  const least = Math.max(above, all)
  const held = {
    work,
    jawHeight,
    leastGrip: settings['least-grip'],
    gripShare: settings['grip-share'],
    shareOf: isJoinedFirst(design) ? 'stick-up' : 'height',
  } as const
  const { underNeeded, underMost } = certain(jawGrip({ ...held, stickUp: least }))
  // On too high a pair the head would stand out too far to be held: then it is packed to just what the cuts need.
  const { under, onParallels } = parallelsOrPacking(design, underNeeded, underMost)
  const { stickUp, grip, wanted } = certain(heldOn({ ...held, under }))
  return {
    tilt: l.faceAngle,
    setting: settingOf(design),
    heldBy: isJoinedFirst(design) ? 'shank' : 'head',
    cuts: each.map(({ id, needed }) => ({ id, depth: depths[id], needed })),
    deepest: Math.max(l.slot.depth, l.step.depth),
    least,
    stickUp,
    headHeight: certain(tiltedHeights(headAsWork(design))).lowest,
    lowest: certain(tiltedHeights(work)).lowest,
    underNeeded,
    underMost,
    under,
    onParallels,
    jawHeight,
    grip,
    gripWanted: wanted,
    lowPoint: isLowPoint(design),
    opening: isJoinedFirst(design) ? shankDiameter(design) : opening,
    wedge: certain(tiltedHeights(headAsWork(design))).wedge,
  }
}

/** What the jaws have to do with, and what of it must stay above them whatever is cut, mm. */
interface Held {
  readonly work: TiltedWork
  readonly above: number
}

const headAsWork = (design: HeadDesign): TiltedWork => {
  const { depthOnAxis, across, faceAngle: tilt } = design.layout
  return { depthOnAxis, across, flat: flatHeld(design), tilt }
}

const headHeld = (design: HeadDesign): Held => ({ work: headAsWork(design), above: 0 })

/** The head stands on its shank, in a V-block or V-jaws: mounting face and shoulder must clear the jaw tops. */
function shankHeld(design: HeadDesign): Held {
  const { parameters: p, layout: l } = design
  const tilt = l.faceAngle
  const shank = shankDiameter(design)
  const stands = [headAsWork(design)]
  if (p.arbor.kind === 'shank') {
    const { 'shoulder-thickness': thick, 'shoulder-diameter': across } = p.arbor
    stands.push({ depthOnAxis: l.depthOnAxis + thick, across, flat: 0, tilt })
  }
  return {
    work: { depthOnAxis: l.depthOnAxis + arborTop(design), across: shank, flat: shank, tilt },
    above: Math.max(...stands.map((part) => certain(tiltedHeights(part)).lowest)) + p.settings['set-up'].clearance,
  }
}

/** What of the arbor is held, mm: its thinnest place above the shoulder. */
export const shankDiameter = ({ parameters: p, layout: l }: HeadDesign): number =>
  p.arbor.kind === 'straight' ? p.bore.diameter : Math.min(...l.shank!.profile.map((piece) => piece.to))

/** A round, and a hexagon whose corner points to the bit side, come down on a point when they are tilted. */
function isLowPoint(design: HeadDesign): boolean {
  const { stock } = design.parameters
  if (design.layout.faceAngle === 0) return false
  return (
    isJoinedFirst(design) ||
    stock.shape === 'round' ||
    (stock.shape === 'hexagon' && stock['slot-runs'] === 'point-to-point')
  )
}

/** Length along x of the flat that a jaw lies on, mm: none of a round bar, nor of corners. */
function flatHeld({ parameters: { stock } }: HeadDesign): number {
  if (stock.shape === 'square') return stock.size
  return stock.shape === 'hexagon' && stock['slot-runs'] === 'point-to-point' ? stock.size / Math.sqrt(3) : 0
}

function settingOf({ parameters: { shop }, layout: { faceAngle, measuring } }: HeadDesign): AngleSetting {
  if (faceAngle === 0) return { by: 'level' }
  // Turned round, a block on a block slides: only blocks that add up are stood under a head.
  const stack = angleBlockStack(measuring.angleBlocks, faceAngle, { subtracts: false, within: sameAngle, most: 3 })
  if (stack && Math.abs(stack.off) <= sameAngle) return { by: 'angle-block', blocks: stack.added }
  const bar = shop['sine-bar']
  return bar === undefined ? { by: 'protractor' } : { by: 'sine-bar', bar, stack: sineBarHeight(bar, faceAngle) }
}
