/** A point of a drawing: x to the right, y up, mm (of the view's model or of the paper, as the place says). */
export type Point = readonly [number, number]

/**
 * Line work and text, plain data. Angles in rad, anticlockwise from +x; lengths in mm. `L` is the set of layer names,
 * so that a layer that does not exist cannot be written down.
 */
export type Entity<L extends string> = Curve<L> | Polyline<L> | Hatch<L> | Text<L> | Arrow<L>

/** What an exact edge of a view can be, and an edge of a hatched face. */
export type Curve<L extends string> = Line<L> | Circle<L> | Arc<L> | Ellipse<L>

export interface Line<L extends string> {
  readonly kind: 'line'
  readonly layer: L
  readonly from: Point
  readonly to: Point
}

export interface Circle<L extends string> {
  readonly kind: 'circle'
  readonly layer: L
  readonly center: Point
  readonly radius: number
}

/** Anticlockwise from `start` to `end`. */
export interface Arc<L extends string> {
  readonly kind: 'arc'
  readonly layer: L
  readonly center: Point
  readonly radius: number
  readonly start: number
  readonly end: number
}

/**
 * center + cos t · major + ratio · sin t · (major turned a quarter anticlockwise), t from `start` to `end`; a whole
 * ellipse runs from 0 to 2π.
 */
export interface Ellipse<L extends string> {
  readonly kind: 'ellipse'
  readonly layer: L
  readonly center: Point
  /** From the centre to the end of the longer axis. */
  readonly major: Point
  /** Shorter axis over longer one, above 0 and at most 1. */
  readonly ratio: number
  readonly start: number
  readonly end: number
}

/** Straight pieces: a curve that is none of the others, fitted by whoever made it. */
export interface Polyline<L extends string> {
  readonly kind: 'polyline'
  readonly layer: L
  readonly points: readonly Point[]
  readonly closed: boolean
}

/** A cut face: closed loops, inside by the odd-even rule. Each loop's edges follow one another in either sense. */
export interface Hatch<L extends string> {
  readonly kind: 'hatch'
  readonly layer: L
  readonly loops: readonly (readonly Curve<L>[])[]
  /** Direction of the hatch lines, rad. */
  readonly angle: number
}

/** One line of text. Height is that of a capital, mm on paper. */
export interface Text<L extends string> {
  readonly kind: 'text'
  readonly layer: L
  readonly at: Point
  readonly text: string
  readonly height: number
  /** Where `at` lies: along the line of writing, and across it (baseline, half a capital, a whole capital). */
  readonly across: 'left' | 'center' | 'right'
  readonly up: 'baseline' | 'middle' | 'top'
  readonly rotation: number
}

/** A filled arrowhead. */
export interface Arrow<L extends string> {
  readonly kind: 'arrow'
  readonly layer: L
  readonly tip: Point
  /** Where it points, rad. */
  readonly direction: number
  readonly length: number
  readonly width: number
}
