import type { Result } from '../../input/problem.ts'
import { arcInCut, widestCovered } from './arc-in-cut.ts'
import { outOfRange } from './out-of-range.ts'

export interface TableTravelInput {
  /** Of the tip's circle, mm, above 0. */
  readonly radius: number
  /** Of the work, along and across the feed, mm, above 0. */
  readonly length: number
  readonly width: number
  /** How far the tip's circle runs beside the middle of the work, mm. */
  readonly offset: number
  /** Kept between tip and work before the cut and after it, mm, at least 0. */
  readonly gap: number
  /** Of the table, mm/s, above 0. */
  readonly tableSpeed: number
}

/** Travel of the spindle axis along the work, mm, and the time it takes, s. */
export interface TableTravel {
  /** Axis before the work's near end when the table starts: the tip stands clear by the gap. */
  readonly approach: number
  /** Axis beyond the work's far end (negative: before it) when the leading arc has cut the whole face. */
  readonly overrunCut: number
  /** The same when the trailing arc has left the work too, by the gap. */
  readonly overrunClear: number
  readonly travelCut: number
  readonly travelClear: number
  readonly timeCut: number
  readonly timeClear: number
}

/**
 * How far the table goes. The leading arc stands √(R² − y²) ahead of the axis at y beside it: it meets the work where
 * |y| is least and leaves it where |y| is largest; the trailing arc leaves it last where |y| is least. Exact.
 *
 * Problems: a figure outside the ranges of the input, work that the tip's circle does not cover in one pass.
 */
export function tableTravel(input: TableTravelInput): Result<TableTravel> {
  const { radius, length, width, offset, gap, tableSpeed } = input
  const problems = outOfRange([
    ['radius', 'length', radius, { above: 0 }],
    ['length', 'length', length, { above: 0 }],
    ['offset', 'length', offset, {}],
    ['width', 'length', width, { above: 0, max: widestCovered(radius, offset) }],
    ['gap', 'length', gap, { min: 0 }],
    ['tableSpeed', 'cutting-speed', tableSpeed, { above: 0 }],
  ])
  if (problems.length > 0) return { ok: false, problems }
  const { from, to } = arcInCut(radius, width, offset)
  const first = from <= 0 && to >= 0 ? radius : radius * Math.cos(Math.min(Math.abs(from), Math.abs(to)))
  const last = radius * Math.cos(Math.max(Math.abs(from), Math.abs(to)))
  const approach = first + gap
  const overrunCut = -last
  const overrunClear = first + gap
  const travelCut = length + approach + overrunCut
  const travelClear = length + approach + overrunClear
  return {
    ok: true,
    value: {
      approach,
      overrunCut,
      overrunClear,
      travelCut,
      travelClear,
      timeCut: travelCut / tableSpeed,
      timeClear: travelClear / tableSpeed,
    },
  }
}
