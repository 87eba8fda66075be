import type { Measuring } from '../../../figures/measuring.ts'
import { fullDepthFromRod } from '../../../mechanics/measuring/drill-point.ts'
import { gaugeStack } from '../../../mechanics/measuring/gauge-stack.ts'
import type { Dimension } from '../../../part/dimension.ts'
import { deviationsOf } from '../../../part/general-tolerance.ts'
import { featuresOf } from '../../../part/part.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { referenceTemperature } from '../../../quantity/format-quantity.ts'
import { boreRadius } from '../bore-radius.ts'
import type { HeadDesign } from '../design.ts'
import { faceAngleWay } from './angle-measuring.ts'
import { sumWords } from './block-words.ts'
import { headFoot } from './low-place.ts'
import { outerEnd } from './outer-end.ts'
import { firstHole, flatToLeadingWall, holeHeight, lineOf, nextHole, shopPin } from './over-pins.ts'
import { tiltedSetUp } from './tilted-set-up.ts'

type Way = Pick<Measuring, 'how' | 'reading'>

/**
 * How the named sizes of head, arbor and bit are measured, in the order of the drawings; walls in the metal follow from
 * others and are not asked for. Common practice, no source.
 */
export const headMeasuring = (design: HeadDesign): readonly Measuring[] =>
  design.once('measuring', () => measuringOf(design))

function measuringOf(design: HeadDesign): Measuring[] {
  return (['body', 'arbor', 'bit'] as const).flatMap((part) =>
    featuresOf(design.part(part)).flatMap((f) =>
      f.dimensions
        .filter(({ id }) => !id.startsWith('bore.wall-'))
        .map((dimension): Measuring => ({ part, dimension, ...wayFor(design, dimension) })),
    ),
  )
}

function wayFor(design: HeadDesign, dimension: Dimension): Way {
  const { id, kind } = dimension
  const special = ways[id.replace(/^screw-hole-[2-9]\./, 'screw-hole-n.')]?.(design, dimension)
  if (special) return special
  if (kind === 'angle') return { how: 'vernier protractor' }
  if (kind === 'diameter') return { how: 'micrometer, at three places' }
  if (kind === 'radius') return { how: 'radius gauge' }
  if (kind === 'thread') return { how: 'thread plug gauge, or the screw itself' }
  return { how: 'caliper' }
}

/** Blocks that just go in and blocks that just do not; undefined where the shop's come to neither. */
function goAndNoGo(design: HeadDesign, dimension: Dimension): string | undefined {
  const { gaugeBlocks } = design.layout.measuring
  const by = deviationsOf(dimension)
  if (by === undefined) return undefined
  const [go, not] = [by.lower, by.upper].map((off) => {
    const stack = gaugeStack(gaugeBlocks, dimension.value + off, { within: near })
    return stack && Math.abs(stack.off) <= near ? stack.blocks : undefined
  })
  return go && not && `blocks of ${sumWords(design, go)} go in, blocks of ${sumWords(design, not)} do not`
}

/** A tenth of what a slot may be off, mm: rule of thumb for a gauge. */
const near = 0.004

/** The bore down to where a pin stops in the cone that the drill left. */
function toTheCone(design: HeadDesign): Way {
  const { bore } = design.parameters
  if (bore.kind !== 'blind' || bore.bottom === 'flat') return { how: 'depth micrometer to the bottom' }
  const { 'point-angle': pointAngle } = bore
  const diameter = 2 * boreRadius(bore, design.layout)
  const rod = shopPin(design, 0.5 * diameter, 0, diameter)
  if (rod === undefined) return { how: 'depth micrometer to where the full diameter ends' }
  const at = (reading: number) => fullDepthFromRod({ diameter, pointAngle, reading, rod })
  return {
    how: `pin of ${formatLength(rod, design.units)}, its length less what stands out`,
    reading: {
      says: 'from the mounting face to where the pin stops in the cone',
      ...lineOf(at, bore.depth + diameter),
    },
  }
}

const ways: Readonly<Record<string, (design: HeadDesign, dimension: Dimension) => Way>> = {
  'stock.size': () => ({ how: 'micrometer across the flats beside the slot' }),
  'face.angle': faceAngleWay,
  // At the tilt nothing may be unclamped until all cuts are done: what can be reached there is square to the face.
  'face.long-side': (design) => ({
    how: 'indicator or height gauge in the clamping of the tilt, after the face and before slot and step',
    reading: {
      says: `from the ${headFoot(tiltedSetUp(design))} to the angled face, square to the face`,
      scale: Math.cos(design.layout.faceAngle),
      offset: 0,
    },
  }),
  'face.short-side': () => ({ how: 'follows from the long side and the angle' }),
  'face.depth-on-axis': () => ({ how: 'follows from the long side and the angle' }),
  'slot.width': (design, dimension) => ({
    how: goAndNoGo(design, dimension) ?? 'the bit itself and feeler gauges, or a stack of blocks',
  }),
  'slot.depth': () => ({ how: 'depth micrometer on the angled face, before the step is cut' }),
  'slot.from-flat': flatToLeadingWall,
  'slot.ahead': () => ({ how: 'follows from the flat and the leading wall; or edge finder from the bore axis' }),
  'slot.beyond-axis': (design) => ({
    how: 'depth micrometer along the slot',
    reading: {
      says: 'from the outside on the bit side to the deepest point of the end, along the face',
      scale: 1,
      offset: outerEnd(design, (design.layout.slot.leading + design.layout.slot.trailing) / 2),
    },
  }),
  'slot.end-radius': () => ({ how: 'radius gauge; left by the end mill, and smaller than drawn is no fault' }),
  'step.wall': () => ({ how: 'micrometer across the wall' }),
  'step.depth': () => ({ how: 'depth micrometer on the angled face' }),
  'screw-hole-1.x': firstHole,
  'screw-hole-n.x': nextHole,
  'screw-hole-1.height': holeHeight,
  'screw-hole-1.tap-drill': () => ({ how: 'gauge pin or the drill itself, before tapping' }),
  'bore.diameter': ({ parameters: { fit }, units }) => ({
    how:
      fit.kind === 'threaded'
        ? 'thread plug gauge, or the arbor itself'
        : `bore gauge at three depths, two ways each, at ${referenceTemperature(units)}`,
  }),
  'bore.depth': toTheCone,
  'bore.point-angle': () => ({ how: 'angle of the drill, not measured' }),
  'bore.chamfer': () => ({ how: 'caliper across the mouth, less the bore, halved' }),
  'vent.diameter': () => ({ how: 'shank of the drill' }),
  'spigot.diameter': ({ parameters: { fit }, units }) => ({
    how:
      fit.kind === 'threaded'
        ? 'thread ring gauge, or the head itself'
        : `micrometer at three places, two ways each, at ${referenceTemperature(units)}`,
  }),
  'spigot.length': () => ({ how: 'depth micrometer from the seat of the shoulder' }),
  'spigot.lead-in': () => ({ how: 'caliper' }),
  'shoulder.thickness': () => ({ how: 'micrometer' }),
  'vent-flat.depth': ({ parameters: { bore } }) => ({
    how: 'micrometer over the flat',
    reading: { says: 'from the flat to the far side of the spigot', scale: -1, offset: bore.diameter },
  }),
  'arbor-bore.diameter': () => ({ how: 'gauge pin or the drill itself' }),
  'bit.width': () => ({ how: 'micrometer' }),
  'bit.height': () => ({ how: 'micrometer' }),
  'bit.length': () => ({ how: 'caliper' }),
  'bit.off-leading': () => ({ how: 'indicator over the leading face, from the blank to the tip' }),
  'bit.off-end': () => ({ how: 'caliper along the bit, before and after' }),
  'bit.off-underside': () => ({ how: 'indicator over the work side, from the blank to the tip' }),
  'bit.ground-length': () => ({ how: 'caliper from the tip' }),
  'bit.rake-along': () => ({ how: 'protractor on the rake face, held parallel to the work side' }),
  'bit.rake-across': () => ({ how: 'protractor on the rake face, held square to the bit' }),
  'bit.end-edge-angle': () => ({ how: 'protractor on the end flank, held parallel to the leading side' }),
  'bit.end-relief': () => ({ how: 'protractor on the end flank, held parallel to the work side' }),
  'bit.work-side-edge-angle': () => ({ how: 'protractor on the work-side flank, held parallel to the leading side' }),
  'bit.work-side-relief': () => ({ how: 'protractor on the work-side flank, held square to the bit' }),
  'bit.nose-radius': () => ({ how: 'radius gauge, before a light, from the leading side' }),
}
