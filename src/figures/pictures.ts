import type { Point, Polygon, Segment } from '../geometry/polygon.ts'
import type { Vec3 } from '../geometry/vector.ts'

/**
 * What the report draws, as neutral geometry: mm, rad and rad/s, body frame unless said otherwise (+Z up the spindle axis,
 * +X the side to which the cutting edge reaches). A picture that a kind of tool does not know is left out silently; one
 * that this design lacks the data for says why.
 */
export interface Pictures {
  readonly 'plan-of-swing'?: Drawn<SwingPlan>
  readonly 'tip-views'?: Drawn<TipViews>
  readonly 'wall-section'?: Drawn<WallSection>
  readonly 'screw-section'?: Drawn<ScrewSection>
  readonly 'interference-band'?: Drawn<InterferenceBand>
  readonly 'speed-bars'?: Drawn<SpeedBars>
  readonly 'balance-sketch'?: Drawn<BalanceSketch>
}

/** `leftOut`: one sentence. */
export type Drawn<T> = T | { readonly leftOut: string }

/** Seen from the spindle looking down at the work. */
export type Rotation = 'clockwise' | 'anticlockwise'

/** The tool across the work, seen along the spindle axis: x and y of the body frame. */
export interface SwingPlan {
  readonly rotation: Rotation
  /** Outside of the head. */
  readonly head: Polygon
  /** Edges on the face that looks at the work. */
  readonly below: readonly Segment[]
  readonly bit: Polygon
  readonly screws: readonly Polygon[]
  readonly tip: Point
  /** Radius that everything that turns stays within. */
  readonly sweptRadius: number
  /** Width of the work that is to be cleared. */
  readonly workWidth: number
  /** Leading wall of the bit's seat ahead of centre; negative behind. */
  readonly ahead: number
}

/** The cutting end of the bit: what was ground, and the angles in use. */
export interface TipViews {
  readonly rotation: Rotation
  /** Convex pieces of the bit near its tip, inner ones first. */
  readonly pieces: readonly (readonly BitFace[])[]
  /** Corners of the same length of bit as bought. */
  readonly blank: readonly Vec3[]
  readonly tipRadius: number
  readonly noseRadius: number
  readonly angles: {
    readonly radialRake: number
    readonly axialRake: number
    readonly radialRelief: number
    readonly axialRelief: number
    readonly cuttingEdgeAngle: number
    readonly minorCuttingEdgeAngle: number
  }
  /** What is ground, in the order of grinding; empty for a bit as bought. */
  readonly ground: readonly { readonly id: string; readonly label: string; readonly angle: number }[]
}

/**
 * A flat face of the bit. Places and directions have their origin in the tip and the components outward from the spindle
 * axis, in the direction of motion, and up the spindle axis (left-handed for a clockwise tool).
 */
export interface BitFace {
  readonly corners: readonly Vec3[]
  readonly out: Vec3
}

/** Section along the spindle axis: body frame x to the right, z up. */
export interface WallSection {
  /** How far the plane of the section lies beside the axis, along y; 0: through the axis. */
  readonly beside: number
  readonly head: SectionedPart
  /** Edges of the head behind the plane. */
  readonly behind: readonly Segment[]
  readonly arbor: SectionedPart
  /** Outline of the bit. */
  readonly bit: readonly Polygon[]
  readonly walls: readonly {
    readonly id: string
    readonly label: string
    readonly from: Point
    readonly to: Point
    readonly distance: number
  }[]
  /** Where two cuts that should not open into each other do so in this section. */
  readonly openings: readonly { readonly label: string; readonly area: Polygon }[]
  /** The face of the head that looks at the work: where it meets the axis, its tilt, and the head's half width. */
  readonly face: { readonly depthOnAxis: number; readonly angle: number; readonly halfWidth: number }
  /** Depth of the seat below that face. */
  readonly seatDepth: number
  readonly bore: { readonly diameter: number; readonly depth: number | undefined }
  readonly spigotLength: number
  readonly tip: Point
}

export interface SectionedPart {
  readonly stock: readonly Polygon[]
  readonly cuts: readonly Polygon[]
  readonly edges: readonly Segment[]
}

/** Section square to the bit through a clamping screw: body frame y and z, seen from the bit side inwards (+y right). */
export interface ScrewSection {
  readonly rotation: Rotation
  readonly head: SectionedPart
  readonly bit: readonly Polygon[]
  readonly screw: readonly Polygon[]
  /** y of the seat's leading wall, and of both sides of the wall that the screw goes through. */
  readonly leadingWall: number
  readonly screwWall: { readonly from: number; readonly to: number }
  readonly wallThickness: number
  readonly ahead: number
  readonly thread: string
  /** z of the face in this section, and how high the screw's axis lies above it, square to the face. */
  readonly faceAt: number
  readonly screwHeight: number
}

/** A fit between two limits. Interference on the diameter, mm; negative is clearance. */
export interface InterferenceBand {
  /** As the trade writes it: `H7/s6`, `matched`. */
  readonly name: string
  /** Spigot turned to the bore as measured: bore and spigot limits are not free of each other. */
  readonly isMatched: boolean
  readonly nominal: number
  readonly bore: { readonly smallest: number; readonly largest: number }
  readonly spigot: { readonly smallest: number; readonly largest: number }
  readonly interference: { readonly least: number; readonly most: number }
  /** What smoothing of the surfaces leaves of it. */
  readonly effective: { readonly least: number; readonly most: number }
  /** Interference as measured that the load asks for; undefined where no interference does it. */
  readonly needed: number | undefined
  /** Interference at which a part begins to yield or break, and which. */
  readonly onset: { readonly at: number; readonly says: string } | undefined
}

/** Every speed that counts, rad/s. */
export interface SpeedBars {
  readonly limits: readonly {
    readonly id: string
    readonly label: string
    /** Undefined where it does not limit this tool. */
    readonly counted: number | undefined
    readonly isCause: boolean
  }[]
  readonly neverExceed: number
  /** For the life of the edge, no safety limit: range, and the speed the spindle has for it. */
  readonly advised:
    | { readonly low: number; readonly high: number; readonly runAt: number | undefined }
    | { readonly leftOut: string }
  /** Speeds of the spindle, slowest first; of a variable drive its two ends. */
  readonly spindle: readonly number[]
  readonly isVariable: boolean
}

/** Where the unbalance lies and what takes it out: x and y of the body frame, seen from the spindle. */
export interface BalanceSketch {
  readonly rotation: Rotation
  readonly head: Polygon
  readonly bit: Polygon
  /** Mass times centroid, kg·mm. */
  readonly unbalance: Point
  /** Angle of the heavy side from the bit side, towards +Y; rad. */
  readonly heavySide: number | undefined
  readonly forces: readonly { readonly id: string; readonly label: string; readonly force: number }[]
  readonly drilling:
    | {
        readonly holes: readonly Point[]
        readonly drill: number
        readonly circleRadius: number
        readonly depth: number
        /** kg·mm */
        readonly removes: number
        readonly remains: number
        /** Whether that is enough. */
        readonly does: boolean
      }
    | undefined
  /** What to do, in words. */
  readonly says: string
}
