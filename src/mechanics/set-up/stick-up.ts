import type { Result } from '../../input/problem.ts'
import { InputFaults } from '../fit/input-faults.ts'

/** A cut in one clamping: how deep below the finished face it goes, and what is kept between it and the jaws; mm, 0 or more. */
export interface ClampedCut<Id extends string = string> {
  readonly id: Id
  readonly depth: number
  readonly clearance: number
}

export interface StickUp<Id extends string = string> {
  /** For each cut by itself, in their order, mm. */
  readonly each: readonly { readonly id: Id; readonly needed: number }[]
  /** For all of them without clamping again, mm, and the cut that asks for it. */
  readonly all: number
  readonly by: Id
}

/**
 * How far the finished face must stand above the jaws. Only cuts that are open towards a jaw count: the caller leaves out holes that stay inside.
 * Problems: a negative depth or clearance. Throws RangeError without cuts.
 */
export function stickUpNeeded<Id extends string>(cuts: readonly ClampedCut<Id>[]): Result<StickUp<Id>> {
  if (cuts.length === 0) throw new RangeError('a clamping without cuts')
  const faults = new InputFaults()
  for (const { id, depth, clearance } of cuts) {
    faults.keeps(`${id}.depth`, depth, 'length', { min: 0 })
    faults.keeps(`${id}.clearance`, clearance, 'length', { min: 0 })
  }
  return faults.result(() => {
    const each = cuts.map(({ id, depth, clearance }) => ({ id, needed: depth + clearance }))
    const most = each.reduce((a, b) => (b.needed > a.needed ? b : a))
    return { each, all: most.needed, by: most.id }
  })
}
