import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'

export interface CutterRunInput {
  /** Ends of the work along the feed, mm: the cutter comes in at `from`, and `to` is on the other side of it, up or down the axis. */
  readonly from: number
  readonly to: number
  /** Of the cutter, mm, above 0. */
  readonly radius: number
  /** Kept between cutter and work before the cut and after it, mm, 0 or more. */
  readonly gap: number
  /** Whether it runs out at `to`, or stops with its front there: a slot that ends in the metal. */
  readonly end: 'runs-out' | 'stops'
  /** How far the sides of the work lean outwards from the face to the depth of the cut, mm, 0 or more at each end: depth × tan of the tilt. */
  readonly leanFrom: number
  readonly leanTo: number
}

/** Travel of the cutter's axis, mm. */
export interface CutterRun {
  readonly start: number
  readonly stop: number
  readonly approach: number
  /** Length of metal along the feed, at its longest. */
  readonly cut: number
  /** Negative: the axis stops that far before the end. */
  readonly overrun: number
  readonly travel: number
}

/**
 * A cutter whose path is as wide as itself, so that it is clear of the work when its axis is radius + gap away from it. Facing with a circle
 * wider than the work needs less: `tableTravel`. Problems: figures outside their ranges, work
 * without a length.
 */
export function cutterRun({ from, to, radius, gap, end, leanFrom, leanTo }: CutterRunInput): Result<CutterRun> {
  const faults = new InputFaults()
  faults.keeps('from', from, 'length', {})
  faults.keeps('to', to, 'length', {})
  faults.keeps('radius', radius, 'length', { above: 0 })
  faults.keeps('gap', gap, 'length', { min: 0 })
  faults.keeps('leanFrom', leanFrom, 'length', { min: 0 })
  faults.keeps('leanTo', leanTo, 'length', { min: 0 })
  const outside = end === 'stops' ? 0 : leanTo
  const cut = Math.abs(to - from) + leanFrom + outside
  if (from === to) faults.add('to', 'contradiction', 'both ends at one place', 'work with a length')
  const way = Math.sign(to - from)
  return faults.result(() => {
    const approach = radius + gap
    const overrun = end === 'stops' ? -radius : radius + gap
    return {
      start: from - way * (leanFrom + approach),
      stop: to + way * (outside + overrun),
      approach,
      cut,
      overrun,
      travel: approach + cut + overrun,
    }
  })
}
