import type { Where } from '../input/problem.ts'

/** A size that a sheet asks for: what the measuring tool should show, and within what. */
export interface AskedSize {
  readonly part: string
  /** Named dimension of the part. */
  readonly id: string
  readonly label: string
  readonly kind: 'length' | 'angle'
  /** What the tool shows on a part of nominal size, mm or rad. */
  readonly nominal: number
}

/** What a tool showed, mm or rad, and where that is written. */
export interface MeasuredValue {
  readonly part: string
  readonly id: string
  readonly value: number
  readonly where: Where
}

export const sizeName = ({ part, id }: { readonly part: string; readonly id: string }): string => `${part} ${id}`
