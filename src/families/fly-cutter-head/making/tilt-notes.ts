import { formatAngle } from '../../../quantity/format-angle.ts'
import { formatLength } from '../../../quantity/format-length.ts'
import { formatNumber } from '../../../quantity/format-number.ts'
import type { HeadDesign } from '../design.ts'
import { sineStack } from './sine-stack.ts'
import { tiltedSetUp } from './tilted-set-up.ts'

/** How the tilted set-up is made, in order: what lies under the head, how its angle is picked up, what comes near the jaws. */
export function tiltNotes(design: HeadDesign): string[] {
  const set = tiltedSetUp(design)
  const size = (value: number) => formatLength(value, design.units)
  const low =
    set.heldBy === 'shank' ? 'end of the shank' : set.tilt > 0 ? 'low edge of the mounting face' : 'mounting face'
  const under =
    set.under === 0
      ? `The ${low} stands on the bed of the vise.`
      : set.onParallels
        ? `The ${low} stands on parallels of ${size(set.under)}.`
        : `Pack the ${low} ${size(set.under)} above the bed.`
  return [
    ...angleNotes(design),
    under,
    ...(set.heldBy === 'shank'
      ? ['A shank turns and tips in its block: flats along the table by an indicator, jaws tight, light cuts.']
      : set.tilt > 0
        ? [
            'An edge is no seat and tips under the cutter: the angle is held by the block or plate under the face, tight against it.',
          ]
        : []),
    `The deepest cut ends ${size(set.stickUp - set.deepest)} above the jaws: the cutter of the step passes over the jaw on its side.`,
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
      return [`${angleBlockWords(setting.blocks)} ${on}, on the parallels.`]
    case 'sine-bar': {
      const blocks = blocksWords(design)
      return [
        `Sine bar of ${formatLength(setting.bar, design.units)} on ${formatLength(setting.stack, design.units, { decimals: design.units === 'mm' ? 3 : 4 })} of blocks${blocks} makes ${angle}: on the surface plate set an adjustable angle block or a bevel to it, and put that ${on}.`,
      ]
    }
    case 'protractor':
      return [
        `${angle} by protractor ${on}, checked with an indicator: no sine bar or angle block of it is in the list.`,
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
  const [unit, decimals] = design.units === 'mm' ? [1, 4] : [25.4, 5]
  const number = (value: number) => formatNumber(value / unit, decimals, { trim: true })
  return ` (${stack.blocks.map(number).join(' + ')} = ${number(stack.height)})`
}
