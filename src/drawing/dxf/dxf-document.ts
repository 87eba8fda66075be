import type { Entity, Hatch, Point } from '../entity.ts'

/**
 * What a DXF file holds, as plain data in the file's own unit. Angles in rad. Layers are named by any text: a layer that
 * is not in `layers` is refused when the file is written.
 */
export interface DxfDocument {
  readonly units: 'mm' | 'in'
  /** Lines at the head of the file that every reader reads over. */
  readonly comments?: readonly string[]
  readonly lineTypes: readonly DxfLineType[]
  readonly layers: readonly DxfLayer[]
  readonly entities: readonly DxfEntity[]
  readonly dimensions: readonly DxfDimension[]
  readonly dimensionStyles: readonly DxfDimensionStyle[]
}

/** Sizes for a CAD that draws a dimension anew. */
export interface DxfDimensionStyle {
  readonly name: string
  readonly textHeight: number
  readonly arrowLength: number
  readonly extensionGap: number
  readonly extensionBeyond: number
  readonly textGap: number
}

export interface DxfLineType {
  readonly name: string
  /** Dash, gap, dash, gap …; empty for a continuous line. */
  readonly dashes: readonly number[]
}

export interface DxfLayer {
  readonly name: string
  readonly lineType: string
  /** mm, whatever the file's unit. */
  readonly width: number
  /** 1 to 255 */
  readonly colour: number
}

export type DxfEntity = Exclude<Entity<string>, { kind: 'hatch' }> | DxfHatch
export type DxfHatch = Hatch<string> & { readonly spacing: number }

/** A DIMENSION with the geometry that draws it. `measurement` is in the file's unit, or in rad for an angle. */
export interface DxfDimension {
  readonly layer: string
  /** What it measures, kept in the file as data of the application: `slot.depth`. */
  readonly name: string
  /** One of the document's dimension styles. */
  readonly style: string
  readonly measurement: number
  /** One string a line. */
  readonly text: readonly string[]
  readonly textPoint: Point
  readonly graphics: readonly DxfEntity[]
  readonly shape:
    | {
        readonly kind: 'linear'
        /** Direction in which it is measured, rad; absent for a straight one. */
        readonly angle?: number
        readonly from: Point
        readonly to: Point
        readonly linePoint: Point
      }
    /** Two opposite points of the circle. */
    | { readonly kind: 'diameter'; readonly from: Point; readonly to: Point }
    | { readonly kind: 'radius'; readonly center: Point; readonly on: Point }
    | {
        readonly kind: 'angle'
        readonly vertex: Point
        readonly from: Point
        readonly to: Point
        readonly linePoint: Point
      }
    | {
        readonly kind: 'ordinate'
        readonly axis: 'x' | 'y'
        readonly datum: Point
        readonly point: Point
        readonly linePoint: Point
      }
}
