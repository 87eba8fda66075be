import type { Point } from '../entity.ts'

export type Side = 'above' | 'below' | 'left' | 'right'

/**
 * A dimension to be placed on a view: what it measures, in the view's own coordinates (model mm), and its text. `value`
 * (mm, or rad for an angle) must be what the points measure: `requestFault` says where it is not.
 */
export type DimensionRequest = Named & (Linear | Diametric | Radial | Angular | Ordinate | Called)

interface Named {
  /** Unique on the sheet; the named dimension of the part that it shows. */
  readonly id: string
  /** One string a line. */
  readonly text: readonly string[]
  readonly value: number
}

/** Distance of two points: along x, along y, or straight. A straight one lies to the `side` given, or where there is room. */
export interface Linear {
  readonly kind: 'linear'
  readonly direction: 'horizontal' | 'vertical' | 'aligned'
  readonly from: Point
  readonly to: Point
  readonly side?: Side
}

/** Diameter of a circle seen as one, by a leader that points at its centre. */
export interface Diametric {
  readonly kind: 'diameter'
  readonly center: Point
  readonly radius: number
  /** Preferred direction of the leader, rad. */
  readonly toward?: number
}

/** Radius of an arc, by a leader from between `start` and `end` (rad, anticlockwise). */
export interface Radial {
  readonly kind: 'radius'
  readonly center: Point
  readonly radius: number
  readonly start: number
  readonly end: number
  readonly toward?: number
}

/**
 * Angle at `vertex` from the ray to `from` anticlockwise to the ray to `to`, less than half a turn. `from` and `to` are the
 * far ends of the drawn edges: beyond them extension lines are drawn.
 */
export interface Angular {
  readonly kind: 'angle'
  readonly vertex: Point
  readonly from: Point
  readonly to: Point
}

/** Coordinate of `point` from `datum` along one axis (signed), written at the end of a line to one side. */
export interface Ordinate {
  readonly kind: 'ordinate'
  readonly axis: 'x' | 'y'
  readonly datum: Point
  readonly point: Point
  readonly side?: Side
}

/**
 * Text at a leader from the middle of two points that lie the value apart: `chamfer` along x or y, `thread` straight (the
 * major diameter; the leader starts at `to`). A `note` measures nothing and its value is 0.
 */
export type Called =
  | {
      readonly kind: 'chamfer' | 'thread'
      readonly from: Point
      readonly to: Point
      readonly toward?: number
    }
  | {
      readonly kind: 'note'
      readonly to: Point
      readonly toward?: number
      /** A box or circle round the text instead of a shelf below it. */
      readonly frame?: 'box' | 'circle'
      /**
       * What stands at `to`: an arrow where it is left out; a filled triangle on a datum; a dot on a face; a small
       * circle with its cross round the origin of a set-up.
       */
      readonly tip?: 'arrow' | 'triangle' | 'dot' | 'origin'
      /** A datum's triangle on a line through `to`, wherever on it there is room. */
      readonly base?: DatumBase
      /** A datum's triangle on the shelf of that dimension of the same view: the datum is what that size is of. */
      readonly on?: string
    }

/** The line that a datum's triangle stands on: an edge of the view, or what a centre line is carried on by. */
export interface DatumBase {
  /** Direction of the line from `to`, rad. */
  readonly along: number
  /** mm of the model; left out: the line is a centre line that ends at `to` and is carried on outward. */
  readonly length?: number
  /** Which side the letter stands on: 1 left of the direction, −1 right of it; either where it is left out. */
  readonly side?: 1 | -1
}

/** What the points of a request measure, mm or rad. */
export function measureOf(r: DimensionRequest): number {
  const across = (a: Point, b: Point) => Math.abs(b[0] - a[0])
  const up = (a: Point, b: Point) => Math.abs(b[1] - a[1])
  switch (r.kind) {
    case 'linear':
      if (r.direction === 'aligned') return Math.hypot(r.to[0] - r.from[0], r.to[1] - r.from[1])
      return r.direction === 'horizontal' ? across(r.from, r.to) : up(r.from, r.to)
    case 'diameter':
      return 2 * r.radius
    case 'radius':
      return r.radius
    case 'angle': {
      const ray = (p: Point) => Math.atan2(p[1] - r.vertex[1], p[0] - r.vertex[0])
      const turn = ray(r.to) - ray(r.from)
      return turn < 0 ? turn + 2 * Math.PI : turn
    }
    case 'ordinate':
      return r.axis === 'x' ? r.point[0] - r.datum[0] : r.point[1] - r.datum[1]
    case 'chamfer':
      return Math.max(across(r.from, r.to), up(r.from, r.to))
    case 'thread':
      return Math.hypot(r.to[0] - r.from[0], r.to[1] - r.from[1])
    case 'note':
      return 0
  }
}

/** What is wrong with a request, in words; undefined where nothing is. Values must agree within 1e-6 mm or rad. */
export function requestFault(r: DimensionRequest): string | undefined {
  const measured = measureOf(r)
  if (!Number.isFinite(measured) || !Number.isFinite(r.value)) return `${r.id}: not a finite size`
  if (Math.abs(measured - r.value) > 1e-6) return `${r.id}: says ${r.value}, its points measure ${measured}`
  if (r.text.length === 0 || r.text.some((line) => line.trim() === '')) return `${r.id}: without text`
  if (r.kind === 'linear' && measured === 0) return `${r.id}: no length`
  if (r.kind === 'linear' && r.direction === 'horizontal' && (r.side === 'left' || r.side === 'right')) {
    return `${r.id}: a horizontal dimension lies above or below`
  }
  if (r.kind === 'linear' && r.direction === 'vertical' && (r.side === 'above' || r.side === 'below')) {
    return `${r.id}: a vertical dimension lies left or right`
  }
  if (r.kind === 'angle' && !(measured > 0 && measured < Math.PI)) return `${r.id}: angle ${measured}`
  if ((r.kind === 'diameter' || r.kind === 'radius') && !(measured > 0)) return `${r.id}: radius ${measured}`
  if (r.kind === 'ordinate' && r.side !== undefined && (r.axis === 'x') === (r.side === 'left' || r.side === 'right')) {
    return `${r.id}: an x coordinate stands above or below, a y coordinate left or right`
  }
  return undefined
}
