import { angleInMinutes } from '../../../quantity/format-angle.ts'
import { formatNumber } from '../../../quantity/format-number.ts'
import type { HeadDesign } from '../design.ts'
import { sineStack } from './sine-stack.ts'

/** `Angle block of 7°`, or `Angle blocks of 5° + 2°`. */
export function angleBlockWords(blocks: readonly number[]): string {
  const angles = blocks.map(angleInMinutes)
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
