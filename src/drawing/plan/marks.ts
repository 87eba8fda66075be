import { centreOverrun } from '../dimensions/datum-marks.ts'
import type { Entity, Point } from '../entity.ts'
import type { DrawingStyle, LayerName } from '../style.ts'

/** Entities of marks whose size is given on paper, at a scale (paper over model). */
export type Marks = (scale: number) => Entity<LayerName>[]

/** The same mark in several places, the best first: a letter must not stand where a dimension has to leave the view. */
export type MarkChoices = (scale: number) => Entity<LayerName>[][]

const line = (layer: LayerName, from: Point, to: Point): Entity<LayerName> => ({ kind: 'line', layer, from, to })

const towards = (from: Point, to: Point): Point => {
  const size = Math.hypot(to[0] - from[0], to[1] - from[1])
  return size === 0 ? [1, 0] : [(to[0] - from[0]) / size, (to[1] - from[1]) / size]
}
const beyond = (p: Point, d: Point, by: number): Point => [p[0] + by * d[0], p[1] + by * d[1]]

/** How far a centre line runs past what it is the centre of, mm on paper (common practice, no source). */
const overrun = centreOverrun

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

/** Several marks as one. */
export const allMarks =
  (...marks: readonly Marks[]): Marks =>
  (scale) =>
    marks.flatMap((m) => m(scale))

const lettered = (at: Point, letter: string, height: number): Entity<LayerName> => ({
  kind: 'text',
  layer: 'text',
  at,
  text: letter,
  height,
  across: 'center',
  up: 'middle',
  rotation: 0,
})

const arrowTo = (tip: Point, d: Point, style: DrawingStyle): Entity<LayerName> => ({
  kind: 'arrow',
  layer: 'text',
  tip,
  direction: Math.atan2(d[1], d[0]),
  length: style.arrowLength,
  width: style.arrowWidth,
})

const aside = (d: Point): Point => [-d[1], d[0]]
/** How far beside its arrow a letter may stand, over the nearest place. */
const asides: readonly number[] = [1, 2, 3.2, 5]
/** Further out step by step, mm on paper. */
const steps = Array.from({ length: 16 }, (_, i) => 4 * i)

/**
 * An axis of coordinates: a centre line from `from` on through `to`, carried on as an arrow with its name before or beside
 * its head; `over`: how far past `to` at least, mm on paper.
 */
export const coordinateChoices =
  (name: string, from: Point, to: Point, style: DrawingStyle, over = 8): MarkChoices =>
  (scale) => {
    const d = towards(from, to)
    const off = 1.4 * style.textHeight
    return steps.flatMap((more) => {
      const tip = beyond(to, d, (over + more) / scale)
      const back = beyond(tip, d, -style.arrowLength / 2 / scale)
      const stem = [
        line('centre', beyond(from, d, -overrun / scale), beyond(tip, d, -style.arrowLength / scale)),
        arrowTo(tip, d, style),
      ]
      const beside = asides.flatMap((k) => [k, -k]).map((k) => beyond(back, aside(d), (k * off) / scale))
      const places = [beyond(tip, d, style.textHeight / scale), ...beside]
      return places.map((at) => [...stem, lettered(at, name, style.textHeight)])
    })
  }

/**
 * Where a section is cut: the two ends of its plane outside the outline, thick, with arrows that show which way it is
 * looked (`look`, a unit vector) and the letter at each, wherever it is clear (ISO 128-3 in its spirit). `over`: how far
 * past the outline at least, mm on paper.
 */
export const cutChoices = (
  letter: string,
  from: Point,
  to: Point,
  look: Point,
  style: DrawingStyle,
  over = 9,
): MarkChoices[] => {
  const d = towards(from, to)
  const ends: [Point, Point][] = [
    [from, [-d[0], -d[1]]],
    [to, d],
  ]
  return ends.map(
    ([at, out]): MarkChoices =>
      (scale) =>
        steps.flatMap((more) => {
          const p = beyond(at, out, (over + more) / scale)
          const foot = beyond(p, look, -7 / scale)
          const mark = [
            line('centre', at, p),
            line('section', p, beyond(p, out, -6 / scale)),
            line('text', foot, p),
            arrowTo(p, look, style),
          ]
          const behind = beyond(foot, look, (-1.6 * style.titleHeight) / scale)
          const beside = [1, -1].map((k) => beyond(foot, out, (k * 1.3 * style.titleHeight) / scale))
          return [behind, ...beside].map((place) => [...mark, lettered(place, letter, style.titleHeight)])
        }),
  )
}

/** An arrow that points at a face which another view looks at, with the letter of that view, wherever it is clear. */
export const lookChoices =
  (letter: string, places: readonly Point[], look: Point, style: DrawingStyle): MarkChoices =>
  (scale) =>
    steps.flatMap((more) =>
      places.flatMap((at) => {
        const tip = beyond(at, look, (-3 - more) / scale)
        const foot = beyond(tip, look, -9 / scale)
        const behind = beyond(foot, look, (-1.3 * style.titleHeight) / scale)
        const beside = [1, -1].map((k) => beyond(foot, aside(look), (k * 1.3 * style.titleHeight) / scale))
        return [behind, ...beside].map((place) => [
          line('text', foot, tip),
          arrowTo(tip, look, style),
          lettered(place, letter, style.titleHeight),
        ])
      }),
    )
