import type { HeadDesign } from '../design.ts'
import { isSawn } from './sawing.ts'
import { isJoinedFirst } from './tilted-set-up.ts'

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
  /** Below the drilled face: the drill's full diameter is through the wall. */
  readonly drillDepth: number
}

/** A jobber drill's point, of 118°, over the diameter. */
const point = 0.3

export const laidSetUp = (design: HeadDesign): LaidSetUp => design.once('laid set-up', () => workOut(design))

function workOut(design: HeadDesign): LaidSetUp {
  const { parameters: p, layout: l } = design
  const { stock } = p
  const corners = stock.shape === 'hexagon' && stock['slot-runs'] === 'flat-to-flat'
  const half = corners ? stock.size / Math.sqrt(3) : stock.size / 2
  const drilledFace = half + l.step.towards * l.step.wall
  const jawHeight = p.machine.vise['jaw-height']
  const { clearance } = p.settings['set-up']
  // The drilled face must stand above the jaws, so that a chuck beside the hole is stopped by neither of them.
  const needed = Math.max(0, jawHeight + clearance - drilledFace)
  const pair =
    needed === 0 ? undefined : p.shop.parallels.filter((h) => h >= needed - 1e-9).toSorted((a, b) => a - b)[0]
  const under = pair ?? needed
  const besideHoles = Math.max(0, 2 * half - drilledFace)
  const drill = l.screws.thread.tapDrill
  const drillDepth = p.step['wall-thickness'] + point * drill
  return {
    opening: l.depthOnAxis + (l.across / 2) * Math.tan(l.faceAngle),
    height: 2 * half,
    drilledFace,
    under,
    onParallels: pair !== undefined,
    stickUp: under + drilledFace - jawHeight,
    grip: jawHeight - under,
    besideHoles,
    spotReach: besideHoles + clearance,
    drillReach: besideHoles + drillDepth + clearance,
    drillDepth,
  }
}

/** How the laid head is held, in words: jaws want two faces that are parallel, and an angled face is not. */
export function laidHold(design: HeadDesign): string {
  const { stock } = design.parameters
  const down = stock.shape === 'round' ? 'in a V-block, the step up and level' : 'the flat away from the step down'
  if (isJoinedFirst(design)) {
    return `Laid down: ${down}, on parallels beside the shank; strapped to the table over the mounting end, packed under the far end`
  }
  const far =
    design.parameters.face.angle > 0
      ? `${isSawn(design) ? 'the sawn-off wedge put back' : 'a wedge of the face angle'} between moving jaw and angled face, for an angled face by itself slides out`
      : 'the moving jaw on the face'
  return `Laid down: ${down}, mounting face against the fixed jaw, ${far}`
}
