import type { DimensionRequest } from '../dimensions/request.ts'
import type { Entity } from '../entity.ts'
import type { LayerName } from '../style.ts'

/** A view before it has a scale and a place. */
export interface ViewPlan {
  /** Unique among the sheets of a design. */
  readonly id: string
  /** Below the view, one string a line: `A–A`, `from below`. */
  readonly caption: readonly string[]
  /** Times the scale of the sheet, for details; 1 where it is left out. */
  readonly enlarged?: number
  /** Exact line work, model mm in the view's coordinates. */
  readonly lines: readonly Entity<LayerName>[]
  /** Axes, arrows and letters whose size is given on paper: model mm at a scale (paper over model). */
  readonly marks?: (scale: number) => readonly Entity<LayerName>[]
  readonly requests: readonly DimensionRequest[]
  /** For looking at only. */
  readonly pictorial?: boolean
}

/** Views that stand in rows and columns, origins in line, so that one is folded out of the other. */
export interface ViewGroup {
  /** From the top down, each from left to right. */
  readonly rows: readonly (readonly (ViewPlan | undefined)[])[]
}

/** Words and numbers in columns. */
export interface DrawnTable {
  readonly kind: 'table'
  readonly title: string
  readonly columns: readonly string[]
  readonly rows: readonly (readonly string[])[]
}

/** Sentences, each wrapped and set off by itself. */
export interface DrawnNotes {
  readonly kind: 'notes'
  readonly title: string
  readonly lines: readonly string[]
}

export type Block = DrawnTable | DrawnNotes

/** What one drawing shows; it takes as many sheets of paper as it needs. */
export interface SheetPlan {
  readonly id: string
  /** Name of the part or set-up, for the title block. */
  readonly part: string
  readonly material: string
  readonly mass: string
  /** In the order of their weight: the first ones come on the first sheet. */
  readonly groups: readonly ViewGroup[]
  readonly blocks: readonly Block[]
}
