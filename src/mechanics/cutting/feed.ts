import type { WorkMaterialRow } from '../../tables/work-materials.ts'

/** Speed of the table, mm/s, for a feed in one turn (mm) at a spindle speed (rad/s): v_f = f·ω/(2π). */
export const tableSpeed = (feedPerTurn: number, spindleSpeed: number): number =>
  (feedPerTurn * spindleSpeed) / (2 * Math.PI)

/** Feed of each of `teeth` edges, mm, of a table speed (mm/s) at a spindle speed (rad/s, above 0). */
export const feedPerTooth = (speed: number, spindleSpeed: number, teeth: number): number =>
  (2 * Math.PI * speed) / (spindleSpeed * teeth)

/**
 * How a feed per tooth (mm; with one bit, per turn) stands against the table's range for a face mill of high-speed
 * steel. The table is no limit: a fly cutter finishes with less.
 */
export function feedAgainstTable(
  work: Pick<WorkMaterialRow, 'feedPerTooth'>,
  feed: number,
): 'below-range' | 'in-range' | 'above-range' | 'no-table-figure' {
  const range = work.feedPerTooth
  if (range === undefined) return 'no-table-figure'
  return feed < range.low ? 'below-range' : feed > range.high ? 'above-range' : 'in-range'
}
