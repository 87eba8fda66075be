import type { QuantityKind } from '../quantity/kind.ts'

/** One value that a parameter takes in a sweep. */
export interface AxisPoint {
  /** Internal unit, as the parameter set holds it. */
  readonly value: number | string | boolean
  /** As a file would have it: a number in the file's unit, to nine significant digits, or the word. */
  readonly shown: number | string
}

/** A parameter that is varied, and the values that it takes. */
export interface Axis {
  readonly path: string
  /** One sentence for the user. */
  readonly says: string
  readonly kind: QuantityKind | 'count' | 'choice' | 'text' | 'flag'
  /** Symbol of the unit in this file, `''` where there is none. */
  readonly unit: string
  /** In the order of the command; all different, at least one. */
  readonly points: readonly AxisPoint[]
  /** What the file itself has, given or filled in; absent where it has none. */
  readonly own?: AxisPoint
}

/** Most values of one parameter: finer than this is finer than anybody can cut, and the pictures have no room for it. */
export const mostPoints = 10_000

/** Most sets of one sweep: some twenty seconds on two cores, and a table of ten megabytes. */
export const mostSets = 20_000

/** True where the values lie on a scale, false where they are names. */
export const isScale = ({ kind }: Pick<Axis, 'kind'>): boolean =>
  kind !== 'choice' && kind !== 'text' && kind !== 'flag'
