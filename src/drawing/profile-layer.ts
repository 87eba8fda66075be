import type { Profile } from '../profiles/profile.ts'
import { formatNumber } from '../quantity/format-number.ts'

/**
 * `SLOT_DEPTH_12.7MM`, `BORE_THROUGH`, `SCREW-HOLE_M6_TAPDRILL_DEPTH_9MM_THROUGH-WALL`: letters, digits, point, hyphen
 * and underscore, which every CAM takes. Depths to 0.001 mm or 0.0001 in, in the file's unit.
 */
export function profileLayer(profile: Profile, units: 'mm' | 'in'): string {
  const { name, thread, depth, blankAbove, notes = [] } = profile
  const size = (value: number) =>
    `${units === 'mm' ? formatNumber(value, 3, { trim: true }) : formatNumber(value / 25.4, 4, { trim: true })}${units.toUpperCase()}`
  return [
    layerWord(name),
    ...(thread === undefined ? [] : [layerWord(inDecimals(thread)), 'TAPDRILL']),
    depth === undefined ? 'THROUGH' : `DEPTH_${size(depth)}`,
    ...(blankAbove === undefined ? [] : [`BLANK-ABOVE_${size(blankAbove)}`]),
    ...notes.map(layerWord),
  ].join('_')
}

/** Capitals, digits, points and hyphens, whatever the words have between them. */
export const layerWord = (words: string): string => words.toUpperCase().replace(/[^A-Z0-9.-]+/g, '-')

/** `1/4-28` as `0.25-28`: a stroke cannot stand in a layer's name, and without it the size could not be told. */
const inDecimals = (thread: string): string =>
  thread.replace(/(\d+)\/(\d+)/, (_, over, under) => formatNumber(Number(over) / Number(under), 4, { trim: true }))
