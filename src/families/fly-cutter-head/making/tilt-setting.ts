import { inSentence } from '../../../checks/in-sentence.ts'
import { angleInMinutes } from '../../../quantity/format-angle.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import type { HeadDesign } from '../design.ts'
import { angleBlockWords, blocksWords } from './block-words.ts'
import { outerPlace } from './outer-place.ts'
import { protractorWords } from './protractor-words.ts'
import { tiltedStandsOn } from './stands-on.ts'
import { tiltedSetUp } from './tilted-set-up.ts'

/**
 * Height, then angle, then both once more when the jaws are tight. Two seats cannot carry at once: what stands under the low place is a stop
 * for the height, what has the angle is a gauge, and the jaws alone hold. Common practice, no source.
 */
export function tiltSetting(design: HeadDesign, length: (value: number) => string): string[] {
  const set = tiltedSetUp(design)
  const stands = tiltedStandsOn(set, length)
  const range =
    set.underMost > set.underNeeded
      ? ` Any height from ${length(set.underNeeded)} to ${length(set.underMost)} will do: the face is milled to the head, and the jaws only have to be clear of the cuts and hold enough.`
      : ''
  if (set.tilt === 0) return [`${stands}.${range}`]
  return [
    `${stands}. That is the stop for the height; it carries no cut.${range}`,
    ...gauging(design),
    tightening(design, length),
  ]
}

/** What has the angle, and how the head is turned to it. */
function gauging(design: HeadDesign): string[] {
  const { setting, tilt, heldBy } = tiltedSetUp(design)
  const angle = angleInMinutes(tilt)
  const [turned, where] =
    heldBy === 'shank'
      ? ['Turn V-block and shank', 'held between a square on the bed and the side of the V-block']
      : ['Turn the head', 'brought up from the bed to the mounting face']
  switch (setting.by) {
    case 'level':
      return []
    case 'angle-block':
      return [
        `${angleBlockWords(setting.blocks)}: ${inSentence(turned)} on that stop until the ${setting.blocks.length > 1 ? 'stack' : 'block'}, ${where}, shows no light: it is a gauge and carries nothing.`,
      ]
    case 'sine-bar': {
      const stack = formatLength(setting.stack, design.units, { decimals: design.units === 'mm' ? 3 : 4 })
      return [
        `Sine bar of ${formatLength(setting.bar, design.units)} on ${stack} of blocks${blocksWords(design)} makes ${angle}: on the surface plate set an adjustable angle block or a bevel to it. ${turned} on that stop until the block or bevel, ${where}, shows no light: it is a gauge and carries nothing.`,
      ]
    }
    case 'protractor':
      return [
        `${turned} on that stop until a protractor of ${angle} (${protractorWords(tilt)}), ${where}, shows no light: no sine bar or angle block of it is in the list.`,
      ]
  }
}

/** Once more with the jaws tight, by the bar itself: down its side an indicator comes away from the bit side by the tangent of the tilt. */
function tightening(design: HeadDesign, length: (value: number) => string): string {
  const { heldBy, tilt, under, onParallels, lowPoint, stickUp } = tiltedSetUp(design)
  const [short, long] = down[design.units]
  const drop = stickUp > long + 2 ? long : short
  const side = outerPlace(design) === 'corner' ? 'corner' : 'side'
  const again = `Tighten and look again: jaws lift. An indicator on the ${side} of the bar towards the bit reads the same ${length(drop)} further down with X ${length(drop * Math.tan(tilt))} less.`
  const holds = `the jaws alone hold the ${heldBy === 'shank' ? 'shank' : 'head'}.`
  if (under === 0) return `${again} An edge on the bed is no seat: ${holds}`
  return `${again} Then the ${onParallels ? (lowPoint ? 'parallel' : 'parallels') : 'packing'} may come out or stay loose: an edge is no seat, and ${holds}`
}

/** Travels down the side of the bar, mm, which a readout shows as round numbers. */
const down = { mm: [5, 10], in: [0.2 * 25.4, 0.4 * 25.4] } as const
