import { largestFeedFor, type Surface, surfaceLeft } from '../../../mechanics/finish/surface.ts'
import { largestLeanFor, leanFromReading, type Tram, tram } from '../../../mechanics/finish/tram.ts'
import type { HeadDesign } from '../design.ts'
import { anglesOf } from './angles.ts'
import { certain } from './certain.ts'
import { cuttingOf } from './cutting.ts'

/** What feed, nose and a spindle that leans leave on the work. */
export interface Finish {
  readonly surface: Surface
  /** Feed, mm, up to which only the round nose leaves its marks; beyond it the bit cuts a thread. */
  readonly noseFeed: number
  /** Undefined where the tram is not known. */
  readonly tram: Tram | undefined
}

/** Finish of a design that holds together. */
export const finishOf = (design: HeadDesign): Finish => design.once('finish', () => workOut(design))

/** Largest feed that leaves the Ra wanted, mm; undefined where none is wanted, or no feed helps. */
export const feedForRoughness = (design: HeadDesign): number | undefined =>
  design.once('feed for roughness', () => {
    const wanted = design.parameters.work['roughness-wanted']
    return wanted === undefined ? undefined : certain(largestFeedFor(wanted, toolOf(design)))
  })

/** Largest lean in the direction of travel that keeps the surface as flat as wanted, rad; undefined without a wish. */
export const leanForFlatness = (design: HeadDesign): number | undefined =>
  design.once('lean for flatness', () => {
    const wanted = design.parameters.work['flatness-wanted']
    if (wanted === undefined) return undefined
    return certain(largestLeanFor(wanted, design.layout.bit.tipRadius, cuttingOf(design).passWidth))
  })

function toolOf(design: HeadDesign) {
  const { cuttingEdgeAngle, minorCuttingEdgeAngle } = anglesOf(design)
  return {
    noseRadius: design.parameters.bit['nose-radius'],
    edgeAngle: cuttingEdgeAngle,
    workSideAngle: minorCuttingEdgeAngle,
  }
}

function workOut(design: HeadDesign): Finish {
  const { work, machine } = design.parameters
  const tool = toolOf(design)
  const { passWidth, passes } = cuttingOf(design)
  const reading = machine.tram
  const lean = (difference: number) => leanFromReading(difference, reading?.span ?? 1)
  const flatter = Math.min(Math.max(0, tool.workSideAngle), tool.edgeAngle, Math.PI / 2)
  return {
    surface: certain(surfaceLeft({ ...tool, feed: work['feed-per-turn'] })),
    noseFeed: 2 * tool.noseRadius * Math.sin(flatter),
    tram:
      reading &&
      certain(
        tram({
          along: lean(reading.along),
          across: lean(reading.across),
          radius: design.layout.bit.tipRadius,
          width: passWidth,
          stepOver: passes > 1 ? passWidth : 0,
        }),
      ),
  }
}
