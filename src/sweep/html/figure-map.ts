import type { Point } from '../../geometry/polygon.ts'
import { amountText, numberText } from '../../report/amount-text.ts'
import { isFree, type Sweep, type SweptFigure } from '../sweep.ts'
import { contour } from './contours.ts'
import { alike, type MapGrid, mapGrid, mapSize, regionBorder, sides } from './map-grid.ts'
import { boxes, figureElement, rect, strokes, text, wrapped } from './svg.ts'
import { ticksIn } from './ticks.ts'

const height = 72
const legend = mapSize.right + 8

/** Shades from light to dark; the numbers in the cells or on the lines say the same without them. */
const shades = 7

/** One figure over two parameters: shaded cells with their numbers, or lines of equal value with theirs. */
export function figureMap(sweep: Sweep, figure: SweptFigure, index: number): string {
  const grid = mapGrid(sweep, height)
  const known = sweep.sets.map((set) => set.figures[index] ?? null).filter((value) => value !== null)
  const [least, most] = known.length === 0 ? [0, 0] : [Math.min(...known), Math.max(...known)]
  const steps = most > least ? ticksIn(least, most, shades - 1).filter((step) => step > least && step < most) : []
  const shadeOf = (value: number | null) => (value === null ? undefined : steps.filter((step) => step <= value).length)
  const areas = alike(grid, (set) => shadeOf(set.figures[index] ?? null))
  const notFree = alike(grid, isFree).get(false) ?? []
  const hasNumbers = grid.least.width >= 8.5 && grid.least.height >= 4
  const shade = (of: number) => `shade-${Math.round((of * (shades - 1)) / Math.max(1, steps.length))}`
  const parts = [
    ...[...areas].map(([of, all]) => boxes(of === undefined ? 'level-none' : shade(of), all)),
    boxes('stopped-region', notFree),
    regionBorder(grid),
    ...sides(sweep, grid),
    ...(hasNumbers ? numbers(grid, figure, index) : lines(grid, figure, index, steps)),
    ...key(figure, steps, known, shade),
  ]
  const atOwn = sweep.own.figures[index] ?? null
  const own = atOwn === null ? 'The file as it stands has none.' : `As in the file: ${amountText(atOwn, figure.unit)}.`
  const says = `${own} Hatched: stopped, or cannot be built.${hasNumbers || steps.length === 0 ? '' : ' Each line of equal value carries its number.'}`
  return figureElement(`figure-${index}`, figure.label, says, mapSize.width, mapSize.top + height + 12, parts)
}

const numbers = ({ cells, across, upward }: MapGrid, { unit }: SweptFigure, index: number): string[] =>
  cells.flatMap((column, i) =>
    column.flatMap((set, j) => {
      const value = set.figures[index] ?? null
      const at: Point = [across.centres[i]!, upward.centres[j]! + 0.9]
      return value === null ? [] : [text(at, shortNumber(value, unit), { anchor: 'middle', size: 2.5, look: 'halo' })]
    }),
  )

/** Four digits at most: more do not fit a cell, and the table has them. */
const shortNumber = (value: number, unit: string): string => numberText(Number(value.toPrecision(4)), unit)

function lines(
  { cells, across, upward, box }: MapGrid,
  { unit }: SweptFigure,
  index: number,
  steps: readonly number[],
): string[] {
  if (!across.isScale || !upward.isScale) return []
  const values = cells.map((column) => column.map((set) => set.figures[index] ?? null))
  return steps.flatMap((step, at) => {
    const pieces = contour(values, across.centres, upward.centres, step)
    // Words of neighbouring lines stand at different heights, so that they keep clear of each other.
    const wanted: Point = [
      box.left + (box.right - box.left) * (0.25 + 0.5 * ((at * 0.382) % 1)),
      box.bottom - (box.bottom - box.top) * (0.25 + 0.5 * ((at * 0.618) % 1)),
    ]
    const middle = ([[a, b], [c, d]]: readonly [Point, Point]): Point => [(a + c) / 2, (b + d) / 2]
    const away = ([x, y]: Point) => Math.hypot(x - wanted[0], y - wanted[1])
    const nearest = pieces
      .map(middle)
      .reduce<Point | undefined>(
        (best, point) => (best === undefined || away(point) < away(best) ? point : best),
        undefined,
      )
    return [
      strokes('contour', pieces),
      ...(nearest === undefined
        ? []
        : [
            text([nearest[0], nearest[1] + 0.9], numberText(step, unit), { anchor: 'middle', size: 2.7, look: 'halo' }),
          ]),
    ]
  })
}

function key(
  figure: SweptFigure,
  steps: readonly number[],
  known: readonly number[],
  shade: (of: number) => string,
): string[] {
  const label = wrapped(figure.unit === '' ? figure.label : `${figure.label}, ${figure.unit}`, 26).slice(0, 6)
  const top = mapSize.top + 9
  const words = label.map((part, at) => text([legend, top + at * 3.6], part, { size: 2.8, look: 'strong' }))
  if (known.length === 0)
    return [...words, text([legend, top + label.length * 3.6 + 2], 'no set has this figure', { size: 2.6 })]
  const number = (value: number) => numberText(Number(value.toPrecision(5)), figure.unit)
  const [least, most] = [Math.min(...known), Math.max(...known)]
  const ends = [least, ...steps, most]
  const swatches = ends
    .slice(1)
    .map((to, at) => ({ at, from: ends[at]!, to }))
    .reverse()
  const first = top + label.length * 3.6 + 1
  const all = least === most ? [{ at: 0, from: least, to: most }] : swatches
  return [
    ...words,
    ...all.flatMap(({ at, from, to }, row) => {
      const y = first + row * 5
      return [
        rect(`${shade(at)} key`, { left: legend, right: legend + 7, top: y, bottom: y + 4.2 }),
        text([legend + 9, y + 3.1], from === to ? number(from) : `${number(from)} to ${number(to)}`, { size: 2.7 }),
      ]
    }),
    rect('stopped-region key', {
      left: legend,
      right: legend + 7,
      top: first + all.length * 5 + 1,
      bottom: first + all.length * 5 + 5.2,
    }),
    text([legend + 9, first + all.length * 5 + 4.1], 'stopped', { size: 2.7 }),
  ]
}
