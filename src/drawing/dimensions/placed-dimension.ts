import type { Entity, Point } from '../entity.ts'
import type { LayerName } from '../style.ts'
import type { DimensionRequest } from './request.ts'

/** A dimension in its place. `graphics` and points named `paper` are mm on paper from the view's origin. */
export interface PlacedDimension {
  readonly request: DimensionRequest
  readonly graphics: readonly Entity<LayerName>[]
  /** A point of the dimension line, of the angle's arc, or the end of an ordinate's line: paper. */
  readonly linePoint: Point
  /** Middle of the text: paper. */
  readonly textPoint: Point
  /** Direction of a leader from its feature, rad; only where there is one. */
  readonly leader?: number
  /** What the text at the end of a leader stands on: paper. */
  readonly shelf?: readonly [Point, Point]
}
