import type { Measuring } from '../../../figures/measuring.ts'
import type { Result } from '../../../input/problem.ts'
import { flatToWall } from '../../../mechanics/measuring/from-flat.ts'
import { betweenHoles, edgeToHole } from '../../../mechanics/measuring/hole-pins.ts'
import { choosePin } from '../../../mechanics/measuring/pin-choice.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import type { HeadDesign } from '../design.ts'
import { certain } from '../engineering/certain.ts'
import { cornersBeside } from '../section.ts'
import { outerEnd } from './outer-end.ts'

type Way = Pick<Measuring, 'how' | 'reading'>
type Line = Omit<NonNullable<Measuring['reading']>, 'says'>

/** What a tool shows for a size, from the working by which a reading gives the size: that is a straight line. */
export function lineOf(
  sizeAt: (reading: number) => Result<{ readonly size: number; readonly slopes: { readonly reading: number } }>,
  reading: number,
): Line {
  const { size, slopes } = certain(sizeAt(reading))
  const scale = 1 / slopes.reading
  return { scale, offset: reading - size * scale }
}

/** A pin of the shop between two diameters, mm, nearest to the ideal one; undefined where it has none. */
export function shopPin(
  { layout, units }: HeadDesign,
  ideal: number,
  above: number,
  below: number,
): number | undefined {
  const chosen = choosePin({ pins: layout.measuring.gaugePins, ideal, above, below, units })
  return chosen.ok ? chosen.value : undefined
}

/** A pin for the drilled holes: the thickest of the shop that goes in, else one as thick as the drill, which is one. */
function pinForHoles(design: HeadDesign): { readonly pin: number; readonly hole: number; readonly words: string } {
  const { layout, units } = design
  const hole = layout.screws.thread.tapDrill
  const pins = layout.measuring.gaugePins.filter((pin) => pin <= hole)
  // Thinner by more than a twentieth it hangs askew in the hole.
  const chosen = choosePin({ pins, ideal: hole, above: 0.95 * hole, below: 1.05 * hole, units })
  const pin = chosen.ok ? chosen.value : hole
  return { pin, hole, words: `pin of ${formatLength(pin, units)}` }
}

const playWords = ({ units }: HeadDesign, play: number): string =>
  play < 5e-3 ? '' : `; it may lie ${formatLength(play, units)} to either side`

/**
 * The first screw hole, from where its wall reaches furthest at the face: on a bar whose side slopes or bends, a jaw of the
 * caliper finds no other place of it.
 */
export function firstHole(design: HeadDesign): Way {
  const { screws, step } = design.layout
  const { pin, hole, words } = pinForHoles(design)
  const at = (reading: number) => edgeToHole({ reading, side: 'far', pin, hole })
  const { scale, offset } = lineOf(at, 2 * pin)
  const [low, high] = [Math.min(screws.seat, step.wall), Math.max(screws.seat, step.wall)]
  const end = outerEnd(design, Math.min(Math.max(0, low), high))
  const slopes = !isFlatAcross(design)
  const place = slopes
    ? 'outermost corner of the wall at the face, before it is broken'
    : 'outer end of the wall at the face'
  return {
    how: `caliper over a ${words} in the hole${playWords(design, certain(at(2 * pin)).play)}`,
    reading: {
      says: `from the ${place}, along the face, to the far side of the pin`,
      scale: -scale,
      offset: offset + scale * end,
    },
  }
}

/** Whether the outside on the bit side is a flat square to the slot. */
const isFlatAcross = ({ parameters: { stock } }: HeadDesign): boolean =>
  stock.shape === 'square' || cornersBeside(stock)

/** A screw hole from the first. */
export function nextHole(design: HeadDesign): Way {
  const { pin, hole, words } = pinForHoles(design)
  const at = (reading: number) => betweenHoles({ reading, first: { pin, hole }, second: { pin, hole } })
  const far = 4 * hole
  return {
    how: `caliper over a ${words} in each of both holes${playWords(design, certain(at(far)).play)}`,
    reading: { says: 'over both pins', ...lineOf(at, far) },
  }
}

/** The screw axis, from the angled face. */
export function holeHeight(design: HeadDesign): Way {
  const { pin, hole, words } = pinForHoles(design)
  const at = (reading: number) => edgeToHole({ reading, side: 'far', pin, hole })
  return {
    how: `height gauge or depth micrometer over a ${words} in the hole${playWords(design, certain(at(2 * pin)).play)}`,
    reading: { says: 'from the angled face to the far side of the pin', ...lineOf(at, 2 * pin) },
  }
}

/** The leading wall of the slot, from the flat outside of it; a step on that side takes the flat away. */
export function flatToLeadingWall(design: HeadDesign): Way {
  const { layout, parameters, units } = design
  const { width } = layout.slot
  const when = parameters.step.side === 'leading' ? ', before the step is cut' : ''
  const pin = shopPin(design, 0.6 * width, 0, 0.95 * width)
  if (pin === undefined) return { how: `micrometer from the flat to the leading wall${when}` }
  return {
    how: `micrometer over a pin of ${formatLength(pin, units)}, stood in the slot against the leading wall and out of it${when}`,
    reading: {
      says: 'from the flat to the far side of the pin',
      ...lineOf((reading) => flatToWall({ reading, pin }), 2 * pin),
    },
  }
}
