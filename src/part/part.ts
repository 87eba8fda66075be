import type { Solid } from '../geometry/solid.ts'
import type { Feature } from './feature.ts'

/** One piece of metal: features that add, features that take away. */
export interface Part {
  readonly id: string
  readonly label: string
  /** Key of the materials table. */
  readonly material: string
  readonly stock: readonly Feature[]
  readonly cuts: readonly Feature[]
}

export const solidOf = (part: Part): Solid => ({
  stock: part.stock.flatMap((f) => f.cells),
  cuts: part.cuts.flatMap((f) => f.cells),
})

export const featuresOf = (part: Part): readonly Feature[] => [...part.stock, ...part.cuts]
