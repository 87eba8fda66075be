import { pointLength } from '../../../mechanics/measuring/drill-point.ts'
import { drillThrough } from '../../../mechanics/set-up/drill-through.ts'
import { type TapThrough, tapThrough } from '../../../mechanics/set-up/tap-through.ts'
import type { HeadDesign } from '../design.ts'
import { certain } from '../engineering/certain.ts'
import { acrossSlot } from '../section.ts'
import { parallelsOrPacking } from './parallels-or-packing.ts'
import { isSawn } from './sawing.ts'
import { isJoinedFirst } from './tilted-set-up.ts'
import { breakThrough, jobberPoint } from './tooling.ts'

/** The head laid down, step up and level: where the screw holes are drilled. mm */
export interface LaidSetUp {
  /** Between the jaws, along the spindle axis: mounting face to the far corner of the angled face. */
  readonly opening: number
  /** Height from the flat that it lies on to the highest metal, and to the drilled face. */
  readonly height: number
  readonly drilledFace: number
  /** Parallels under it, or packing of that height where no pair of the list is: 0 lies on the bed. */
  readonly under: number
  readonly onParallels: boolean
  /** Drilled face above the jaw tops. */
  readonly stickUp: number
  /** Height held between the jaws. */
  readonly grip: number
  /** Metal beside the holes that stands above the drilled face: a chuck or holder must stay above it. */
  readonly besideHoles: number
  /** How far spot drill, drill and tap must stand out of their holder. */
  readonly spotReach: number
  readonly drillReach: number
  readonly tapReach: number
  /** Tip of the drill below the drilled face, when its full diameter has come out of the wall. */
  readonly drillDepth: number
  /** Left by then to the far wall of the slot; negative: the point is in it. */
  readonly beforeFarWall: number
  /** The tap when it has done its work; depths below the drilled face. */
  readonly tap: TapThrough
}

/** Kept between a tap and the far wall of the slot, mm (common practice, no source). */
const beforeTap = 0.5

export const laidSetUp = (design: HeadDesign): LaidSetUp => design.once('laid set-up', () => workOut(design))

function workOut(design: HeadDesign): LaidSetUp {
  const { parameters: p, layout: l } = design
  const { stock } = p
  const half = acrossSlot(stock) / 2
  const drilledFace = half + l.step.towards * l.step.wall
  const jawHeight = p.machine.vise['jaw-height']
  const { clearance, 'least-grip': leastGrip } = p.settings['set-up']
  // The drilled face must stand above the jaws, so that a chuck beside the hole is stopped by neither of them.
  const needed = Math.max(0, jawHeight + clearance - drilledFace)
  const { under, onParallels } = parallelsOrPacking(design, needed, Math.max(needed, jawHeight - leastGrip))
  const besideHoles = Math.max(0, 2 * half - drilledFace)
  const drill = l.screws.thread.tapDrill
  const wall = { thickness: p.step['wall-thickness'], below: l.slot.width }
  const drilled = { diameter: drill, pointAngle: jobberPoint }
  const room = l.slot.width - certain(pointLength(drilled))
  // Where the slot is hardly wider than the point is long, out by half of what that leaves.
  const beyond = Math.max(0, Math.min(breakThrough, room / 2))
  const through = certain(drillThrough({ ...drilled, ...wall, beyond }))
  const tap = certain(tapThrough({ ...wall, pitch: l.screws.thread.pitch, kept: beforeTap }))
  return {
    opening: l.depthOnAxis + (l.across / 2) * Math.tan(l.faceAngle),
    height: 2 * half,
    drilledFace,
    under,
    onParallels,
    stickUp: under + drilledFace - jawHeight,
    grip: jawHeight - under,
    besideHoles,
    spotReach: besideHoles + clearance,
    drillReach: besideHoles + through.tipDepth + clearance,
    tapReach: besideHoles + tap.tipDepth + clearance,
    drillDepth: through.tipDepth,
    beforeFarWall: through.clear,
    tap,
  }
}

/** How the laid head is held, in words: jaws want two faces that are parallel, and an angled face is not. */
export function laidHold(design: HeadDesign): string {
  const { stock } = design.parameters
  const down = stock.shape === 'round' ? 'In a V-block, the step up and level' : 'The flat away from the step down'
  if (isJoinedFirst(design)) {
    return `${down}, on parallels beside the shank; strapped to the table over the mounting end, packed under the far end`
  }
  const far =
    design.parameters.face.angle > 0
      ? `${isSawn(design) ? 'the sawn-off wedge put back' : 'a wedge of the face angle'} between moving jaw and angled face, for an angled face by itself slides out`
      : 'the moving jaw on the face'
  return `${down}, mounting face against the fixed jaw, ${far}`
}

/** How the laid head is packed and levelled, in order. Common practice, no source. */
export function laidSetting(design: HeadDesign): string[] {
  const level = 'Indicate the step wall level both ways'
  if (isJoinedFirst(design)) return [`${level}, and the mounting face along the table's X, before it is strapped down.`]
  return [
    `Indicate the fixed jaw along the table's X; the mounting face flat on it, a feeler finds no gap. ${level} before it is tightened.`,
    ...slidWedge(design),
  ]
}

/** The thick end of the wedge lies away from the bit: slid towards the bit it fills more. */
function slidWedge(design: HeadDesign): string[] {
  if (design.parameters.face.angle === 0) return []
  const missing = isSawn(design) ? ': what saw and cutter took is missing in its old place' : ''
  return [`Slide the wedge along the face towards the bit side until it bears on jaw and face${missing}.`]
}
