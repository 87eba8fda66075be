import type { Point } from '../../geometry/polygon.ts'
import { amountText, labelText, numberText } from '../../report/amount-text.ts'
import { coordinate } from '../../report/html/coordinate.ts'
import { isFree, type Sweep, type SweptFigure } from '../sweep.ts'
import { frame, ownAcross, placesAcross, valuesBelow } from './line-frame.ts'
import { regions, regionWords } from './regions.ts'
import { runsOf } from './runs.ts'
import { figureElement, line, strokes, text, wrapped } from './svg.ts'
import { ticksIn } from './ticks.ts'

const top = 6
const bottom = 38

/** One figure over the values of one parameter; the region without stops is shaded, the rest hatched. */
export function lineChart({ axes: [axis], sets, own }: Sweep, figure: SweptFigure, index: number): string {
  const places = placesAcross(axis!)
  const ordered = places.order.map((at) => sets[at]!)
  const values = ordered.map((set) => set.figures[index] ?? null)
  const limits = ordered.map((set) => set.limits[index] ?? null)
  const known = values.filter((value) => value !== null)
  const range = rangeOf(
    known,
    limits.filter((limit) => limit !== null),
  )
  const up = (value: number) => bottom - ((value - range.low) / (range.high - range.low)) * (bottom - top)
  const path = (of: readonly (number | null)[]): Point[][] =>
    runsOf(of.map((value) => value !== null && value >= range.low && value <= range.high))
      .filter((run) => run.of)
      .map(({ from, to }) => of.slice(from, to + 1).map((value, k): Point => [places.centres[from + k]!, up(value!)]))
  const free = ordered.map(isFree)
  const heights = values.map((value) => (value === null ? undefined : up(value)))
  const marks = ordered.flatMap((set, at) => {
    const value = values[at]
    return value === null || value === undefined ? [] : [{ at: [places.centres[at]!, up(value)] as Point, set }]
  })
  const limitText = (limit: number) => `at ${figure.limitIs} ${labelText(limit, figure.unit)}`
  const limitRuns = figure.limitIs === undefined ? [] : path(limits)
  const lastLimit = limits.findLast((limit) => limit !== null)
  const limitWords = limitRuns.length === 0 || lastLimit === undefined ? undefined : limitText(lastLimit)
  const label = wrapped(figure.unit === '' ? figure.label : `${figure.label}, ${figure.unit}`, 30)
  const parts = [
    ...regions(free, places.borders, { top, bottom }),
    ...ticksIn(range.low, range.high, 4).flatMap((tick) => [
      line('faint', [frame.left, up(tick)], [frame.right, up(tick)]),
      text([frame.left - 1.5, up(tick) + 1], numberText(tick, figure.unit), { anchor: 'end', size: 2.6 }),
    ]),
    ...label.slice(0, 7).map((words, at) => text([0, top + 3 + at * 3.6], words, { size: 2.8, look: 'strong' })),
    text([0, top + 4 + Math.min(7, label.length) * 3.6], figure.id, { size: 2.4 }),
    line('grid', [frame.left, top], [frame.left, bottom]),
    strokes(
      'limit-line',
      limitRuns.map((run) => widened(run, places.isScale)),
    ),
    // Between names there is nothing to draw a line through.
    ...(places.isScale ? [strokes('curve', path(values))] : []),
    ...(marks.length <= 60 ? marks.map(({ at, set }) => (isFree(set) ? dot(at) : cross(at))) : []),
    ...(limitWords === undefined ? [] : [limitLabel(limitWords, limitRuns.flat(), heights)]),
    ...regionWords(
      ordered.map(({ level }) => level),
      places.borders,
      heights,
      { top, bottom },
    ),
    ...(known.length === 0
      ? [text([(frame.left + frame.right) / 2, 22], 'no set has this figure', { anchor: 'middle', look: 'halo' })]
      : []),
    ...ownAcross(axis!, places, top, bottom),
    ...valuesBelow(axis!, places, bottom),
  ]
  const atOwn = own.figures[index] ?? null
  const beyond =
    lastLimit !== undefined && limitWords === undefined && known.length > 0
      ? ` The limit, ${limitText(lastLimit)}, lies beyond the picture.`
      : ''
  const says = `${atOwn === null ? 'The file as it stands has none.' : `As in the file: ${amountText(atOwn, figure.unit)}.`}${beyond}`
  return figureElement(`figure-${index}`, figure.label, says, frame.width, bottom + 7, parts)
}

/** What the limit is, at whichever end of its line the curve is further from it. */
function limitLabel(words: string, limit: readonly Point[], curve: readonly (number | undefined)[]): string {
  const [first, last] = [limit[0]!, limit.at(-1)!]
  const away = (end: Point, at: number) => Math.abs(end[1] - (curve[at] ?? Number.NEGATIVE_INFINITY))
  const isLeft = away(first, 0) > away(last, curve.length - 1)
  const [x, y] = isLeft ? [frame.left + 1, first[1]] : [frame.right - 1, last[1]]
  const anchor = isLeft ? 'start' : 'end'
  return text([x, y + (y < top + 5 ? 3.2 : -1)], words, { anchor, size: 2.6, look: 'halo' })
}

/** From least to most with some air, and the limit too where it is not far off. */
function rangeOf(
  values: readonly number[],
  limits: readonly number[],
): { readonly low: number; readonly high: number } {
  if (values.length === 0) return { low: 0, high: 1 }
  const [least, most] = [Math.min(...values), Math.max(...values)]
  const span = most - least || Math.max(Math.abs(most) * 0.1, 1e-6)
  const near = limits.filter((limit) => limit > least - 0.8 * span && limit < most + 0.8 * span)
  const low = Math.min(least, ...near) - span * 0.12
  const high = Math.max(most, ...near) + span * 0.12
  // Air below zero would suggest that there are values there.
  return { low: least >= 0 && low < 0 ? 0 : low, high }
}

/** A limit at a single place, or between names, is drawn some way to both sides. */
const widened = (run: readonly Point[], isScale: boolean): readonly Point[] =>
  run.length === 1 || !isScale ? [[run[0]![0] - 4, run[0]![1]], ...run, [run.at(-1)![0] + 4, run.at(-1)![1]]] : run

const dot = ([x, y]: Point): string => `<circle class="dot" cx="${coordinate(x)}" cy="${coordinate(y)}" r="0.8"/>`
const cross = ([x, y]: Point): string =>
  strokes('cross', [
    [
      [x - 0.9, y - 0.9],
      [x + 0.9, y + 0.9],
    ],
    [
      [x - 0.9, y + 0.9],
      [x + 0.9, y - 0.9],
    ],
  ])
