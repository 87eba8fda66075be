import type { DimensionRequest } from '../dimensions/request.ts'
import type { Entity, Point } from '../entity.ts'
import type { LayerName } from '../style.ts'

/** A view before it has a scale and a place. */
export interface ViewPlan {
  /** Unique among the sheets of a design. */
  readonly id: string
  /** Below the view, one string a line: `A–A`, `from below`. */
  readonly caption: readonly string[]
  /** Times the scale of the sheet, for details; 1 where it is left out. */
  readonly enlarged?: number
  /** A size that must be readable, mm of the model: where it is too small at the scale of the sheet, so much is enlarged. */
  readonly smallest?: number
  /** Exact line work, model mm in the view's coordinates. */
  readonly lines: readonly Entity<LayerName>[]
  /** Axes, arrows and letters whose size is given on paper: model mm at a scale (paper over model). */
  readonly marks?: (scale: number) => readonly Entity<LayerName>[]
  /** Marks with letters, each in the first of its places that is clear: model mm at a scale. */
  readonly choices?: readonly ((scale: number) => readonly (readonly Entity<LayerName>[])[])[]
  readonly requests: readonly DimensionRequest[]
  /** Places that are drawn larger beside the view where they would be too small to read on it. */
  readonly details?: readonly Detail[]
  /** For looking at only: drawn at the scale of the sheet or, where that saves paper, the next smaller one. */
  readonly pictorial?: boolean
}

/** A place of a view: a circle with a letter on the view, and the same larger with its sizes, where it needs it. */
export interface Detail {
  readonly letter: string
  /** What it shows, below the letter. */
  readonly says: string
  /** mm of the model in the view's coordinates. */
  readonly center: Point
  readonly radius: number
  /** Where on the circle the letter stands, rad. */
  readonly toward: number
  /** The size that must be readable, mm of the model. */
  readonly smallest: number
  /** Its sizes: on the detail, or on the view where that is large enough. */
  readonly requests: readonly DimensionRequest[]
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
  /** How much of the shorter side of a sheet its largest view may take; the usual share where it is left out. */
  readonly share?: number
  /** In the order of their weight: the first ones come on the first sheet. */
  readonly groups: readonly ViewGroup[]
  readonly blocks: readonly Block[]
}
