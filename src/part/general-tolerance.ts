import { type GeneralStep, generalAngles, generalEdges, generalLengths } from '../tables/iso-2768.ts'
import type { Dimension } from './dimension.ts'

/** Angles of these parts have sides of 10 mm and more; the wider tolerance of short ones is not taken. */
const shorterSide = 50

/**
 * Lower and upper deviation of a size, mm, or rad for an angle; what has no tolerance of its own takes the general one (ISO
 * 2768-1 class m). Undefined for a size that is not to be machined to, a thread, and one beyond the table.
 */
export function deviationsOf({
  tolerance,
  kind,
  value,
  id,
}: Pick<Dimension, 'tolerance' | 'kind' | 'value' | 'id'>):
  | { readonly lower: number; readonly upper: number }
  | undefined {
  if (tolerance.kind === 'limits') return { lower: tolerance.lower, upper: tolerance.upper }
  if (tolerance.kind === 'reference' || kind === 'thread') return undefined
  const within = (steps: readonly GeneralStep[], size: number) =>
    steps.find(({ upTo }) => Math.abs(size) <= upTo)?.deviation
  const isEdge = kind === 'radius' || /chamfer|lead-in/.test(id)
  const by =
    kind === 'angle' ? within(generalAngles, shorterSide) : within(isEdge ? generalEdges : generalLengths, value)
  return by === undefined ? undefined : { lower: -by, upper: by }
}
