import type { Entity, Point } from '../entity.ts'
import type { DrawingStyle, LayerName } from '../style.ts'

/** Entities of marks whose size is given on paper, at a scale (paper over model). */
export type Marks = (scale: number) => Entity<LayerName>[]

const line = (layer: LayerName, from: Point, to: Point): Entity<LayerName> => ({ kind: 'line', layer, from, to })

const towards = (from: Point, to: Point): Point => {
  const size = Math.hypot(to[0] - from[0], to[1] - from[1])
  return size === 0 ? [1, 0] : [(to[0] - from[0]) / size, (to[1] - from[1]) / size]
}
const beyond = (p: Point, d: Point, by: number): Point => [p[0] + by * d[0], p[1] + by * d[1]]

/** How far a centre line runs past what it is the centre of, mm on paper (common practice, no source). */
const overrun = 3

/** A centre line from edge to edge, carried on past both. */
export const axisMark =
  (from: Point, to: Point): Marks =>
  (scale) => {
    const d = towards(from, to)
    return [line('centre', beyond(from, d, -overrun / scale), beyond(to, d, overrun / scale))]
  }

/** The two centre lines of a circle. */
export const crossMark =
  ([x, y]: Point, radius: number): Marks =>
  (scale) => {
    const r = radius + overrun / scale
    return [line('centre', [x - r, y], [x + r, y]), line('centre', [x, y - r], [x, y + r])]
  }

/** A small circle round a point that is no edge: the origin of a set-up. */
export const originMark =
  (at: Point, style: DrawingStyle): Marks =>
  (scale) => {
    const r = style.textHeight / 2 / scale
    return [
      { kind: 'circle', layer: 'datum', center: at, radius: r },
      line('datum', [at[0] - r, at[1]], [at[0] + r, at[1]]),
      line('datum', [at[0], at[1] - r], [at[0], at[1] + r]),
    ]
  }

/** Which way the tool turns: three quarters of a turn round `center`, arrow at the end. */
export const turningMark =
  (center: Point, radius: number, anticlockwise: boolean, style: DrawingStyle, start = 0.25): Marks =>
  (scale) => {
    const r = radius + 4 / scale
    const way = anticlockwise ? 1 : -1
    const from = start
    const sweep = Math.PI / 3
    const end = from + way * sweep
    const tip: Point = [center[0] + r * Math.cos(end), center[1] + r * Math.sin(end)]
    return [
      { kind: 'arc', layer: 'text', center, radius: r, start: Math.min(from, end), end: Math.max(from, end) },
      {
        kind: 'arrow',
        layer: 'text',
        tip,
        // Along the chord of the arrow, so that it sits on the arc.
        direction: end + (way * Math.PI) / 2 - (way * style.arrowLength) / (2 * r * scale),
        length: style.arrowLength,
        width: style.arrowWidth,
      },
    ]
  }

/**
 * Where a section is cut: from `from` to `to` across the view, thick at both ends, arrows that show which way it is looked
 * (`look`, a unit vector), the letter at each (ISO 128-3 in its spirit). `over`: how far past both ends, mm on paper.
 */
export const cutMark =
  (letter: string, from: Point, to: Point, look: Point, style: DrawingStyle, over = 5): Marks =>
  (scale) => {
    const d = towards(from, to)
    const [a, b] = [beyond(from, d, -over / scale), beyond(to, d, over / scale)]
    const thick = 6 / scale
    const stem = 7 / scale
    const ends: [Point, Point][] = [
      [a, d],
      [b, [-d[0], -d[1]]],
    ]
    return [
      line('centre', a, b),
      ...ends.flatMap(([p, inwards]): Entity<LayerName>[] => {
        const foot = beyond(p, look, -stem)
        const letterAt = beyond(foot, look, -1.6 * style.titleHeight * (1 / scale))
        return [
          line('section', p, beyond(p, inwards, thick)),
          line('text', foot, p),
          {
            kind: 'arrow',
            layer: 'text',
            tip: p,
            direction: Math.atan2(look[1], look[0]),
            length: style.arrowLength,
            width: style.arrowWidth,
          },
          {
            kind: 'text',
            layer: 'text',
            at: [letterAt[0], letterAt[1]],
            text: letter,
            height: style.titleHeight,
            across: 'center',
            up: 'middle',
            rotation: 0,
          },
        ]
      }),
    ]
  }

/** Which way another view looks: an arrow outside the outline that points at it, with the letter of that view. */
export const lookMark =
  (letter: string, at: Point, look: Point, style: DrawingStyle): Marks =>
  (scale) => {
    const tip = beyond(at, look, -3 / scale)
    const foot = beyond(tip, look, -9 / scale)
    const letterAt = beyond(foot, look, (-1.2 * style.titleHeight) / scale)
    return [
      line('text', foot, tip),
      {
        kind: 'arrow',
        layer: 'text',
        tip,
        direction: Math.atan2(look[1], look[0]),
        length: style.arrowLength,
        width: style.arrowWidth,
      },
      {
        kind: 'text',
        layer: 'text',
        at: letterAt,
        text: letter,
        height: style.titleHeight,
        across: 'center',
        up: 'middle',
        rotation: 0,
      },
    ]
  }

/** Several marks as one. */
export const allMarks =
  (...marks: readonly Marks[]): Marks =>
  (scale) =>
    marks.flatMap((m) => m(scale))
