import type { PlacedDimension } from '../dimensions/placed-dimension.ts'
import type { Entity, Point } from '../entity.ts'
import { placed } from '../entity-shape.ts'
import type { LayerName } from '../style.ts'
import type { SheetSize } from './sheet-size.ts'

/** A view in its place. */
export interface View {
  /** Unique on the sheet. */
  readonly id: string
  /** Paper over model. */
  readonly scale: number
  /** Where the origin of the view's coordinates lies on the sheet, mm. */
  readonly at: Point
  /** Exact line work, model mm. */
  readonly lines: readonly Entity<LayerName>[]
  /** Letters, arrows and captions of the view: mm on paper from its origin. */
  readonly notes: readonly Entity<LayerName>[]
  readonly dimensions: readonly PlacedDimension[]
  /** For looking at only: it may be drawn smaller in DXF, where every other view is 1:1. */
  readonly pictorial?: boolean
}

/** One sheet of a drawing: plain data, from which DXF, PDF and SVG are written. */
export interface Sheet {
  readonly id: string
  readonly title: string
  readonly size: SheetSize
  /** Frame, title block, tables: mm on paper from the lower left corner. */
  readonly entities: readonly Entity<LayerName>[]
  readonly views: readonly View[]
}

/** Everything of a view, mm on paper from its origin. */
export function viewOnPaper(view: View): Entity<LayerName>[] {
  return [
    ...view.lines.map((e) => placed(e, view.scale, [0, 0])),
    ...view.notes,
    ...view.dimensions.flatMap((d) => d.graphics),
  ]
}

/** Everything on a sheet, mm on paper from the lower left corner. */
export function sheetOnPaper(sheet: Sheet): Entity<LayerName>[] {
  return [...sheet.entities, ...sheet.views.flatMap((v) => viewOnPaper(v).map((e) => placed(e, 1, v.at)))]
}
