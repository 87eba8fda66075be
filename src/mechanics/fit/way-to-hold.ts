import type { QuantityKind } from '../../quantity/kind.ts'

/** Ways to hold a head on its arbor, the cheapest to try first, the last resort last. */
export const waysToHold = [
  'fresh-arbor',
  'retaining-compound',
  'cross-pin',
  'screw-and-washer',
  'threaded',
  'keyed',
  'weld',
] as const

export type WayToHold = (typeof waysToHold)[number]

/** What a way of holding carries, and what must be so for that to be true. */
export interface Holding {
  readonly way: WayToHold
  /** Force along the axis, N, and torque, N·mm, at which it gives; 0: it does not hold that way at all. */
  readonly axial: number
  readonly torque: number
  /** What gives first under torque, or under axial force where it holds no torque. */
  readonly weakest: string
  /** Whether it keeps the head on after the fit has slipped. */
  readonly catchesHead: boolean
  readonly conditions: readonly Condition[]
  /** What to know and do in any case. */
  readonly cautions: readonly string[]
}

/** Something that must be so. */
export interface Condition {
  readonly id: string
  readonly met: boolean
  /** How bad it is when it is not met. */
  readonly level: 'stop' | 'caution' | 'note'
  readonly says: string
  /** Figure and its limits, where the condition is one of size; internal units. */
  readonly measure?: Measure
  readonly source: string
}

export interface Measure {
  readonly kind: QuantityKind
  readonly found: number
  readonly least?: number
  readonly most?: number
}

/** A condition on a figure: met within its limits, both included. */
export function sizeCondition(about: Pick<Condition, 'id' | 'level' | 'says' | 'source'>, measure: Measure): Condition {
  const { found, least = -Infinity, most = Infinity } = measure
  return { ...about, met: found >= least && found <= most, measure }
}

/** Whether everything that would be a stop is met. */
export function isAllowed(holding: Pick<Holding, 'conditions'>): boolean {
  return holding.conditions.every((condition) => condition.met || condition.level !== 'stop')
}
