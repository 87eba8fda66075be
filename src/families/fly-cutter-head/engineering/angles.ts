import type { Result } from '../../../input/problem.ts'
import type { AnglesInUse } from '../../../mechanics/angles/angles-in-use.ts'
import type { GroundFacets } from '../../../mechanics/angles/facets.ts'
import { type GrinderSettings, grinderSettings } from '../../../mechanics/angles/grinder-table.ts'
import { type GroundBit, groundBit } from '../../../mechanics/angles/ground-bit.ts'
import { type GroundSection, groundSection } from '../../../mechanics/angles/ground-section.ts'
import { endEdgeReach, type Heel, heelOf } from '../../../mechanics/angles/heel.ts'
import { type LeastRelief, leastEndRelief, leastEndReliefAtTip } from '../../../mechanics/angles/least-end-relief.ts'
import { type Nose, noseOf } from '../../../mechanics/angles/nose.ts'
import type { SuitableAngles } from '../../../mechanics/angles/wanted-angles.ts'
import type { HeadDesign } from '../design.ts'
import { facetsForMiddle, suitableFor } from './grind.ts'

/** Angles in use at the tip, rad. */
export const anglesOf = (design: HeadDesign): AnglesInUse => design.layout.bit.inUse

/** The four angles that the table of work materials has a range for. */
export const tableAngles = ['radialRake', 'axialRake', 'radialRelief', 'axialRelief'] as const
export type TableAngle = (typeof tableAngles)[number]

/** What the work material wants of this bit, rad; undefined where the table has no angles for it. */
export const suitableOf = (design: HeadDesign): SuitableAngles | undefined =>
  design.once('suitable angles', () => {
    const { blank, setting, facets } = design.layout.bit
    const suitable = suitableFor(design.layout.materials.work, setting, blank.width, facets.endEdgeAngle)
    return suitable.ok ? suitable.value : undefined
  })

/** Facets that give the middle of what is wanted, with the edges as they are; undefined where nothing is wanted. rad */
export const facetsWantedOf = (design: HeadDesign): Result<GroundFacets> | undefined =>
  design.once('facets wanted', () => {
    const suitable = suitableOf(design)
    const { setting, facets } = design.layout.bit
    return suitable && facetsForMiddle(suitable, setting, facets.endEdgeAngle, facets.workSideEdgeAngle)
  })

/** The ground bit with its corners and edges. */
export const groundBitOf = (design: HeadDesign): GroundBit =>
  design.once('ground bit', () => {
    const { blank, facets, setting } = design.layout.bit
    const bit = groundBit(blank, facets, setting)
    // The layout refuses what cannot be ground.
    if (!bit.ok) throw new RangeError(`ground bit: ${JSON.stringify(bit.problems)}`)
    return bit.value
  })

/** How far up from the cut plane the end edge reaches, mm. */
export const edgeReachOf = (design: HeadDesign): number =>
  design.once('end edge reach', () => endEdgeReach(groundBitOf(design)))

/** Smallest clearances behind the two edges; undefined where the end edge does not reach up to the depth of cut. */
export const heelOfBit = (design: HeadDesign): Heel | undefined =>
  design.once('heel', () => {
    const heel = heelOf(groundBitOf(design), design.parameters.work['depth-of-cut'])
    return heel.ok ? heel.value : undefined
  })

/**
 * How much nearer the wall comes between end edge and heel because the work is fed meanwhile, mm: feed per turn times
 * the angle between the two over a full turn.
 */
export function feedUntilHeel(design: HeadDesign, heel: Heel): number {
  const { tip, setting } = design.layout.bit
  const [x, y] = heel.end.at
  const behind = Math.atan2(setting.hand * tip[1], tip[0]) - Math.atan2(setting.hand * y, x)
  return (design.parameters.work['feed-per-turn'] * Math.max(0, behind)) / (2 * Math.PI)
}

/** Least relief behind the end edge at the height of the tip, in closed form; undefined on a bit wider than its circle. */
export const leastReliefOf = (design: HeadDesign): LeastRelief | undefined =>
  design.once('least relief', () => {
    const { blank, setting, facets } = design.layout.bit
    const least = leastEndReliefAtTip(setting, blank.width, facets.endEdgeAngle)
    return least.ok ? least.value : undefined
  })

/** The same of the exact bit within the depth of cut, as ground, rad; undefined where no relief will do. Takes 1 ms. */
export const leastExactReliefOf = (design: HeadDesign): number | undefined =>
  design.once('least exact relief', () => {
    const { blank, setting, facets } = design.layout.bit
    const least = leastEndRelief(blank, facets, setting, design.parameters.work['depth-of-cut'])
    return least.ok ? least.value : undefined
  })

/** The round between the two edges. */
export const noseOfBit = (design: HeadDesign): Nose =>
  design.once('nose', () => noseOf(anglesOf(design), design.parameters.bit['nose-radius']))

/** Turn and tilt of the grinder's table for each facet. */
export const grinderOf = (design: HeadDesign): GrinderSettings =>
  design.once('grinder', () => grinderSettings(design.layout.bit.facets, design.layout.hand))

/** What grinding leaves of the bit where it ends, the weakest place of the ground part. */
export const groundSectionOf = (design: HeadDesign): GroundSection =>
  design.once('ground section', () => {
    const { blank, facets, setting } = design.layout.bit
    return groundSection(blank, facets, setting.groundOffLeading, groundRunOf(design))
  })

/** How far behind the tip the grinding ends, mm: no further than the bit. */
export const groundRunOf = ({ layout: { bit } }: HeadDesign): number =>
  Math.min(bit.groundLength, bit.blank.length - bit.blank.groundOffEnd)

/** How far behind the tip the facets, run on, would have gone through the bit, mm, to 1e-9; undefined where they don't. */
export function goesThroughAt(design: HeadDesign): number | undefined {
  const { blank, facets, setting } = design.layout.bit
  const isThrough = (run: number) => groundSection(blank, facets, setting.groundOffLeading, run).area === 0
  let [low, high] = [0, groundRunOf(design)]
  if (!isThrough(high)) return undefined
  while (high - low > 1e-9) {
    const middle = (low + high) / 2
    if (isThrough(middle)) high = middle
    else low = middle
  }
  return high
}

/** Whether anything at all is ground on the bit. */
export const isGround = ({ layout: { bit } }: HeadDesign): boolean =>
  Object.values(bit.facets).some((angle) => angle !== 0) ||
  bit.setting.groundOffLeading > 0 ||
  bit.blank.groundOffEnd > 0 ||
  bit.blank.groundOffWorkSide > 0
