import { formatAngle } from '../../../quantity/format-angle.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { formatNumber } from '../../../quantity/format-number.ts'
import type { HeadDesign } from '../design.ts'
import { jawClearanceWords } from './jaw-clearance.ts'
import { lowPlace } from './low-place.ts'
import { protractorWords } from './protractor-words.ts'
import { sineStack } from './sine-stack.ts'
import { tiltedSetUp } from './tilted-set-up.ts'

/** How the tilted set-up is made, in order: what lies under the head, how its angle is picked up, what comes near the jaws. */
export function tiltNotes(design: HeadDesign): string[] {
  const set = tiltedSetUp(design)
  const size = (value: number) => formatLength(value, design.units)
  const nearest = jawClearanceWords(design, size)
  return [
    ...angleNotes(design),
    ...underNotes(design, size),
    ...(set.heldBy === 'shank'
      ? ['A shank turns and tips in its block: flats along the table by an indicator, jaws tight, light cuts.']
      : set.tilt > 0
        ? [
            'An edge is no seat and tips under the cutter: turn the head until its mounting face lies on the block or bevel without light, tighten, and look again.',
          ]
        : []),
    `The deepest cut ends ${size(set.stickUp - set.deepest)} above the jaws.`,
    ...(nearest === undefined ? [] : [nearest]),
  ]
}

/** What the lowest place stands on, and which heights will do as well: a block under the face lifts it by its own thin end. */
function underNotes(design: HeadDesign, size: (value: number) => string): string[] {
  const set = tiltedSetUp(design)
  const { under, underNeeded, underMost, onParallels, lowPoint } = set
  const low = lowPlace(set)
  const stands =
    under === 0
      ? `The ${low} stands on the bed of the vise.`
      : onParallels
        ? `The ${low} stands on ${lowPoint ? 'one parallel' : 'parallels'} of ${size(under)}${lowPoint ? ' in the middle between the jaws' : ''}.`
        : `Pack the ${low} ${size(under)} above the bed.`
  if (underMost <= underNeeded) return [stands]
  return [
    `${stands} Any height from ${size(underNeeded)} to ${size(underMost)} will do: the face is milled to the head, and the jaws only have to be clear of the cuts and hold enough.`,
  ]
}

function angleNotes(design: HeadDesign): string[] {
  const { setting, tilt, heldBy } = tiltedSetUp(design)
  const angle = formatAngle(tilt, { minutes: true }).replace(/°0'$/, '°')
  const on = heldBy === 'shank' ? 'against the shank' : 'under the mounting face'
  switch (setting.by) {
    case 'level':
      return []
    case 'angle-block':
      return [`${angleBlockWords(setting.blocks)} ${on}.`]
    case 'sine-bar': {
      const blocks = blocksWords(design)
      return [
        `Sine bar of ${formatLength(setting.bar, design.units)} on ${formatLength(setting.stack, design.units, { decimals: design.units === 'mm' ? 3 : 4 })} of blocks${blocks} makes ${angle}: on the surface plate set an adjustable angle block or a bevel to it, and put that ${on}.`,
      ]
    }
    case 'protractor':
      return [
        `${angle} by protractor (${protractorWords(tilt)}) ${on}: no sine bar or angle block of it is in the list.`,
      ]
  }
}

/** `Angle block of 7°`, or `Angle blocks of 5° + 2°`. */
export function angleBlockWords(blocks: readonly number[]): string {
  const angles = blocks.map((block) => formatAngle(block, { minutes: true }).replace(/°0'$/, '°'))
  return `Angle block${blocks.length > 1 ? 's' : ''} of ${angles.join(' + ')}`
}

/** The blocks of the shop's set that are wrung together: `, 10 + 1.18 + 1.007`; nothing where none are listed. */
export function blocksWords(design: HeadDesign): string {
  const stack = sineStack(design)
  if (!stack) return ''
  const sum = stack.blocks.length > 1 ? ` = ${blockWords(design, stack.height)}` : ''
  return ` (${sumWords(design, stack.blocks)}${sum})`
}

/** Blocks side by side or wrung together: `9 + 1.02`. */
export const sumWords = (design: HeadDesign, blocks: readonly number[]): string =>
  blocks.map((block) => blockWords(design, block)).join(' + ')

/** A block by the number that is marked on it. */
function blockWords({ units }: HeadDesign, block: number): string {
  const [unit, decimals] = units === 'mm' ? [1, 4] : [25.4, 5]
  return formatNumber(block / unit, decimals, { trim: true })
}
