import type { Measuring } from '../../../figures/measuring.ts'
import type { Dimension } from '../../../part/dimension.ts'
import { featuresOf } from '../../../part/part.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import type { HeadDesign } from '../design.ts'
import { halfLengthAt } from '../section.ts'

type Way = Pick<Measuring, 'how' | 'reading'>

/**
 * How the named sizes of head, arbor and bit are measured, in the order of the drawings; walls in the metal follow from
 * others and are not asked for. Common practice, no source.
 */
export function headMeasuring(design: HeadDesign): Measuring[] {
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
  const special = ways[id.replace(/^screw-hole-[2-9]\./, 'screw-hole-n.')]?.(design)
  if (special) return special
  if (kind === 'angle') return { how: 'vernier protractor' }
  if (kind === 'diameter') return { how: 'micrometer, at three places' }
  if (kind === 'radius') return { how: 'radius gauge' }
  if (kind === 'thread') return { how: 'thread plug gauge, or the screw itself' }
  return { how: 'caliper' }
}

/** A pin as thick as the tap drill, pushed into the hole. */
const pinIn = ({ layout, units }: HeadDesign): string =>
  `pin of ${formatLength(layout.screws.thread.tapDrill, units)} in the hole`

const ways: Readonly<Record<string, (design: HeadDesign) => Way>> = {
  'stock.size': () => ({ how: 'micrometer across the flats beside the slot' }),
  'face.angle': ({ parameters: { shop }, layout, units }) => {
    const bar = shop['sine-bar']
    if (bar === undefined) return { how: 'vernier protractor on the mounting face, or an angle block' }
    const stack = formatLength(bar * Math.sin(layout.faceAngle), units)
    return {
      how: `sine bar of ${formatLength(bar, units)} on ${stack} of blocks under the mounting face, indicator over the face`,
    }
  },
  // At the tilt nothing may be unclamped until all cuts are done: what can be reached there is square to the face.
  'face.long-side': ({ layout }) => ({
    how: 'indicator or height gauge in the clamping of the tilt, after the face and before slot and step',
    reading: {
      says: 'from the lowest edge of the mounting face to the angled face, square to the face',
      scale: Math.cos(layout.faceAngle),
      offset: 0,
    },
  }),
  'face.short-side': () => ({ how: 'follows from the long side and the angle' }),
  'face.depth-on-axis': () => ({ how: 'follows from the long side and the angle' }),
  'slot.width': () => ({ how: 'the bit itself and feeler gauges, or a stack of blocks' }),
  'slot.depth': () => ({ how: 'depth micrometer on the angled face, before the step is cut' }),
  'slot.from-flat': () => ({
    how: 'micrometer from the flat to the leading wall, over a pin if the anvil does not reach',
  }),
  'slot.ahead': () => ({ how: 'follows from the flat and the leading wall; or edge finder from the bore axis' }),
  'slot.beyond-axis': (design) => ({
    how: 'depth micrometer along the slot',
    reading: {
      says: 'from the outside on the bit side to the deepest point of the end, along the face',
      scale: 1,
      offset: outerEnd(design, (design.layout.slot.leading + design.layout.slot.trailing) / 2),
    },
  }),
  'slot.end-radius': () => ({ how: 'radius gauge; left by the end mill' }),
  'step.wall': () => ({ how: 'micrometer across the wall' }),
  'step.depth': () => ({ how: 'depth micrometer on the angled face' }),
  'screw-hole-1.x': (design) => {
    const { screws } = design.layout
    const end = outerEnd(design, (screws.seat + design.layout.step.wall) / 2)
    return {
      how: `caliper over a ${pinIn(design)}`,
      reading: {
        says: 'from the outer end of the wall, along the face, to the far side of the pin',
        scale: -1,
        offset: end + screws.thread.tapDrill / 2,
      },
    }
  },
  'screw-hole-n.x': (design) => ({
    how: `caliper over pins in both holes`,
    reading: { says: 'over both pins', scale: 1, offset: design.layout.screws.thread.tapDrill },
  }),
  'screw-hole-1.height': (design) => ({
    how: `height gauge or depth micrometer over a ${pinIn(design)}`,
    reading: {
      says: 'from the angled face to the far side of the pin',
      scale: 1,
      offset: design.layout.screws.thread.tapDrill / 2,
    },
  }),
  'screw-hole-1.tap-drill': () => ({ how: 'gauge pin or the drill itself, before tapping' }),
  'bore.diameter': ({ parameters: { fit } }) => ({
    how:
      fit.kind === 'threaded'
        ? 'thread plug gauge, or the arbor itself'
        : 'bore gauge at three depths, two ways each, at 20 °C',
  }),
  'bore.depth': () => ({ how: 'depth micrometer to where the full diameter ends' }),
  'bore.point-angle': () => ({ how: 'angle of the drill, not measured' }),
  'bore.chamfer': () => ({ how: 'caliper across the mouth, less the bore, halved' }),
  'vent.diameter': () => ({ how: 'shank of the drill' }),
  'spigot.diameter': ({ parameters: { fit } }) => ({
    how:
      fit.kind === 'threaded'
        ? 'thread ring gauge, or the head itself'
        : 'micrometer at three places, two ways each, at 20 °C',
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

/** How far from O, along the face, the outside lies on the bit side, mm, beside the plane `y` from the axis. */
const outerEnd = ({ parameters, layout }: HeadDesign, y: number): number =>
  halfLengthAt(parameters.stock, y) / Math.cos(layout.faceAngle)
