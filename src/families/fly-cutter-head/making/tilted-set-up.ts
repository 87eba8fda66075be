import type { HeadDesign } from '../design.ts'

/** How the tilt is picked up. */
export type AngleSetting =
  | { readonly by: 'level' }
  | { readonly by: 'angle-block' }
  /** Blocks under one end of the sine bar, mm. */
  | { readonly by: 'sine-bar'; readonly bar: number; readonly stack: number }
  | { readonly by: 'protractor' }

/** The one clamping in which angled face, slot and step are milled, mm and rad; depths are below the finished face. */
export interface TiltedSetUp {
  readonly tilt: number
  readonly setting: AngleSetting
  /** Deepest cut at this clamping, and how far the face must stand above the jaws for it. */
  readonly deepest: number
  readonly least: number
  /** How far it does, on the parallels that are used. */
  readonly stickUp: number
  /** Lowest place of the head: the edge of the mounting face on the bit side. */
  readonly lowest: number
  /** Between the bed of the vise and that place: 0 stands on the bed. */
  readonly under: number
  /** Whether a pair of the shop's parallels is that high; without one the height must be packed. */
  readonly onParallels: boolean
  readonly jawHeight: number
  /** Flat left between the jaws below their tops, and how much is wanted. */
  readonly grip: number
  readonly gripWanted: number
  /** How far the jaws open. */
  readonly opening: number
  /** How deep the wedge is that has to come off before the face is clean. */
  readonly wedge: number
}

/** Between the deepest cut and the jaws, mm (rule of thumb). */
const clearance = 1
/** Least flat to hold, mm, and share of the head's height (rules of thumb). */
const grips = { least: 12, share: 1 / 3 } as const
/** Blocks are marked in minutes at best, rad. */
const sameAngle = Math.PI / 180 / 60 / 2

/** Worked out once; whether the vise can do it is for the findings to say. */
export const tiltedSetUp = (design: HeadDesign): TiltedSetUp => design.once('tilted set-up', () => workOut(design))

function workOut(design: HeadDesign): TiltedSetUp {
  const { parameters: p, layout: l } = design
  const [sin, cos] = [Math.sin(l.faceAngle), Math.cos(l.faceAngle)]
  const jawHeight = p.machine.vise['jaw-height']
  const deepest = Math.max(l.slot.depth, l.step.depth)
  const least = deepest + clearance
  const lowest = l.depthOnAxis * cos + (l.across / 2) * sin
  const needed = Math.max(0, jawHeight + least - lowest)
  const pair = needed === 0 ? undefined : p.shop.parallels.filter((h) => h >= needed - 1e-9).sort((a, b) => a - b)[0]
  const under = pair ?? needed
  const stickUp = under + lowest - jawHeight
  return {
    tilt: l.faceAngle,
    setting: settingOf(design),
    deepest,
    least,
    stickUp,
    lowest,
    under,
    onParallels: pair !== undefined,
    jawHeight,
    grip: l.depthOnAxis * cos - (flatHeld(design) / 2) * sin - stickUp,
    gripWanted: Math.max(grips.least, l.depthOnAxis * cos * grips.share),
    opening: between(design),
    wedge: l.across * sin,
  }
}

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
  if (shop['angle-blocks'].some((a) => Math.abs(a - faceAngle) < sameAngle)) return { by: 'angle-block' }
  const bar = shop['sine-bar']
  return bar === undefined ? { by: 'protractor' } : { by: 'sine-bar', bar, stack: bar * Math.sin(faceAngle) }
}
