import { angleBlockStack } from '../../../mechanics/measuring/angle-block-stack.ts'
import { arborTop } from '../assembly-dimensions.ts'
import type { HeadDesign } from '../design.ts'
import { facingCutter } from './tooling.ts'

/** How the tilt is picked up. */
export type AngleSetting =
  | { readonly by: 'level' }
  /** Blocks whose angles add up, rad. */
  | { readonly by: 'angle-block'; readonly blocks: readonly number[] }
  /** Blocks under one end of the sine bar, mm. */
  | { readonly by: 'sine-bar'; readonly bar: number; readonly stack: number }
  | { readonly by: 'protractor' }

/** A cut at the tilt: its depth below the finished face, and how far the face must stand above the jaws for it, mm. */
export interface TiltedCut {
  readonly id: 'face' | 'slot' | 'step'
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
  const [sin, cos] = [Math.sin(l.faceAngle), Math.cos(l.faceAngle)]
  const settings = p.settings['set-up']
  const jawHeight = p.machine.vise['jaw-height']
  const opening = between(design)
  const shell = facingCutter(design, opening).kind === 'face-mill'
  const cuts = [
    { id: 'face', depth: 0, needed: shell ? settings['clearance-shell-mill'] : settings.clearance },
    { id: 'slot', depth: l.slot.depth, needed: l.slot.depth + settings.clearance },
    { id: 'step', depth: l.step.depth, needed: l.step.depth + settings.clearance },
  ] as const
  const held = isJoinedFirst(design) ? shankHeld(design, sin, cos) : headHeld(design, sin, cos)
  const least = Math.max(held.above, ...cuts.map((cut) => cut.needed))
  const { lowest, end } = held
  const underNeeded = Math.max(0, jawHeight + least - lowest)
  const wanted = (stickUp: number) => Math.max(settings['least-grip'], settings['grip-share'] * held.height(stickUp))
  const gripOn = (under: number) => end - (under + lowest - jawHeight)
  // On too high a pair the head would stand out too far to be held: then it is packed to just what the cuts need.
  const enough = (under: number) => gripOn(under) >= wanted(under + lowest - jawHeight)
  const low = p.shop.parallels.filter((h) => h >= underNeeded - 1e-9).sort((a, b) => a - b)[0]
  const pair = underNeeded > 0 && low !== undefined && enough(low) ? low : undefined
  const under = pair ?? underNeeded
  const stickUp = under + lowest - jawHeight
  return {
    tilt: l.faceAngle,
    setting: settingOf(design),
    heldBy: isJoinedFirst(design) ? 'shank' : 'head',
    cuts,
    deepest: Math.max(l.slot.depth, l.step.depth),
    least,
    stickUp,
    lowest,
    underNeeded,
    underMost: end + jawHeight - lowest - wanted(stickUp),
    under,
    onParallels: pair !== undefined,
    jawHeight,
    grip: end - stickUp,
    gripWanted: wanted(stickUp),
    opening: isJoinedFirst(design) ? shankDiameter(design) : opening,
    wedge: l.across * sin,
  }
}

/** What the jaws have to do with, in depths below the finished face, mm. */
interface Held {
  /** Lowest place. */
  readonly lowest: number
  /** Where the flat that the jaws lie on ends on its shorter side. */
  readonly end: number
  /** What must stay above the jaws whatever is cut. */
  readonly above: number
  /** Height whose share the jaws should hold, by how far the face stands above them. */
  height(stickUp: number): number
}

function headHeld(design: HeadDesign, sin: number, cos: number): Held {
  const { depthOnAxis: h, across } = design.layout
  return {
    lowest: h * cos + (across / 2) * sin,
    end: h * cos - (flatHeld(design) / 2) * sin,
    above: 0,
    height: () => h * cos,
  }
}

/** The head stands on its shank, in a V-block or V-jaws: mounting face and shoulder must clear the jaw tops. */
function shankHeld(design: HeadDesign, sin: number, cos: number): Held {
  const { parameters: p, layout: l } = design
  const radius = shankDiameter(design) / 2
  const [h, top] = [l.depthOnAxis, arborTop(design)]
  const shoulder =
    p.arbor.kind === 'shank' ? (h + p.arbor['shoulder-thickness']) * cos + (p.arbor['shoulder-diameter'] / 2) * sin : 0
  return {
    lowest: (h + top) * cos + radius * sin,
    end: (h + top) * cos - radius * sin,
    above: Math.max(h * cos + (l.across / 2) * sin, shoulder) + p.settings['set-up'].clearance,
    height: (stickUp) => stickUp,
  }
}

/** What of the arbor is held, mm: its thinnest place above the shoulder. */
export const shankDiameter = ({ parameters: p, layout: l }: HeadDesign): number =>
  p.arbor.kind === 'straight' ? p.bore.diameter : Math.min(...l.shank!.profile.map((piece) => piece.to))

/** Length along x of the flat that a jaw lies on, mm: none of a round bar, nor of corners. */
function flatHeld({ parameters: { stock } }: HeadDesign): number {
  if (stock.shape === 'square') return stock.size
  return stock.shape === 'hexagon' && stock['slot-runs'] === 'point-to-point' ? stock.size / Math.sqrt(3) : 0
}

/** Across the bar along Y, mm. */
function between({ parameters: { stock } }: HeadDesign): number {
  const corners = stock.shape === 'hexagon' && stock['slot-runs'] === 'flat-to-flat'
  return corners ? (2 * stock.size) / Math.sqrt(3) : stock.size
}

function settingOf({ parameters: { shop }, layout: { faceAngle } }: HeadDesign): AngleSetting {
  if (faceAngle === 0) return { by: 'level' }
  // Turned round, a block on a block slides: only blocks that add up are stood under a head.
  const stack = angleBlockStack(shop['angle-blocks'], faceAngle, { subtracts: false, within: sameAngle, most: 3 })
  if (stack && Math.abs(stack.off) <= sameAngle) return { by: 'angle-block', blocks: stack.added }
  const bar = shop['sine-bar']
  return bar === undefined ? { by: 'protractor' } : { by: 'sine-bar', bar, stack: bar * Math.sin(faceAngle) }
}
