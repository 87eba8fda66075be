/** A length as it stands in the file: a bare number takes the file's unit. */
export type RawLength = number | string

/**
 * A parameter set as the YAML parser leaves it, nothing read, nothing defaulted: only the part that makes metal, written
 * down here a second time so that the judge shares no line with the product.
 */
export interface RawSet {
  readonly family: 'fly-cutter-head'
  readonly title: string
  readonly units: 'mm' | 'in'
  readonly rotation: 'clockwise' | 'anticlockwise'
  readonly stock: {
    readonly shape: 'hexagon' | 'round' | 'square'
    readonly size: RawLength
    readonly 'slot-runs'?: 'point-to-point' | 'flat-to-flat'
    readonly length?: RawLength
    readonly material: string
  }
  readonly face: { readonly angle: string; readonly 'depth-on-axis': RawLength }
  readonly bit: {
    readonly width: RawLength
    readonly height: RawLength
    readonly length: RawLength
    readonly overhang?: RawLength
    readonly swing?: RawLength
    readonly 'ground-off'?: {
      readonly leading?: RawLength
      readonly end?: RawLength
      readonly underside?: RawLength
    }
    /** Angles as they are written: `7 deg`. */
    readonly facets?: {
      readonly 'rake-along'?: string
      readonly 'rake-across'?: string
      readonly 'end-edge-angle'?: string
      readonly 'end-relief'?: string
      readonly 'work-side-edge-angle'?: string
      readonly 'work-side-relief'?: string
      readonly length?: RawLength
    }
  }
  readonly slot: {
    readonly runs: 'through' | 'stopped'
    readonly 'ahead-of-centre': RawLength
    readonly depth: RawLength
    readonly clearance?: RawLength
    readonly 'beyond-axis'?: RawLength
    readonly 'cutter-diameter'?: RawLength
  }
  readonly step: {
    readonly 'wall-thickness': RawLength
    readonly depth: RawLength
    readonly side?: 'leading' | 'trailing'
  }
  readonly screws: {
    readonly thread: string
    readonly count: number
    readonly spacing?: RawLength
    readonly 'first-from-corner': RawLength
    readonly height: RawLength
    readonly length?: RawLength
  }
  readonly bore: {
    readonly kind: 'blind' | 'through'
    readonly diameter: RawLength
    readonly chamfer?: RawLength
    readonly depth?: RawLength
    readonly bottom?: 'flat' | 'drill-point'
    readonly 'point-angle'?: string
    readonly vent?: 'none' | 'hole' | 'flat'
    readonly 'vent-size'?: RawLength
  }
  readonly arbor: {
    readonly kind: 'shank' | 'straight'
    readonly shank?: string
    readonly material: string
    readonly 'spigot-length': RawLength
    readonly 'lead-in'?: RawLength
    readonly 'bore-through'?: RawLength
    readonly 'shoulder-diameter'?: RawLength
    readonly 'shoulder-thickness'?: RawLength
    readonly 'length-above'?: RawLength
  }
  readonly settings?: { readonly facing?: RawLength }
  /** Makes no metal, but a set is not complete without it. */
  readonly work: unknown
  readonly machine: unknown
}
