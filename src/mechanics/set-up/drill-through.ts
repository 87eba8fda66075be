import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'
import { pointLength } from '../measuring/drill-point.ts'

export interface DrillThroughInput {
  readonly diameter: number
  /** rad, above 0, up to π. */
  readonly pointAngle: number
  /** Metal to go through, mm, above 0. */
  readonly thickness: number
  /** How far the full diameter goes beyond it, mm, 0 or more. */
  readonly beyond: number
  /** Free height below the far side of the metal, mm, 0 or more: parallels, or a slot. */
  readonly below: number
}

export interface DrillThrough {
  /** Depth of the tip below the near side, mm. */
  readonly tipDepth: number
  /** How far the tip stands out on the far side, mm. */
  readonly out: number
  /** Left below the tip, mm; negative: it is drilled into. */
  readonly clear: number
}

/**
 * A hole drilled through: the tip goes as deep as the metal, the point and what the full diameter is to come out. Problems: figures outside
 * their ranges.
 */
export function drillThrough(input: DrillThroughInput): Result<DrillThrough> {
  const { thickness, beyond, below } = input
  const point = pointLength(input)
  const faults = new InputFaults()
  if (!point.ok) faults.problems.push(...point.problems)
  faults.keeps('thickness', thickness, 'length', { above: 0 })
  faults.keeps('beyond', beyond, 'length', { min: 0 })
  faults.keeps('below', below, 'length', { min: 0 })
  if (!point.ok || faults.problems.length > 0) return { ok: false, problems: faults.problems }
  const out = point.value + beyond
  return { ok: true, value: { tipDepth: thickness + out, out, clear: below - out } }
}
