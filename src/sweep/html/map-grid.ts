import type { Point } from '../../geometry/polygon.ts'
import type { Axis } from '../axis.ts'
import { isFree, type Sweep, type SweptSet } from '../sweep.ts'
import { type AxisPlace, axisPlace } from './axis-place.ts'
import { runsOf } from './runs.ts'
import { type Box, line, strokes, text } from './svg.ts'
import { ownWords } from './value-words.ts'

/** The cells of a map: the first parameter across, the second upwards. */
export interface MapGrid {
  readonly box: Box
  readonly across: AxisPlace
  readonly upward: AxisPlace
  /** By column, then row, as they stand in the picture: from the left, from below. */
  readonly cells: readonly (readonly SweptSet[])[]
  /** Width and height of the smallest cell. */
  readonly least: { readonly width: number; readonly height: number }
}

export const mapSize = { width: 186, left: 34, right: 134, top: 7 } as const

/** The grid with a plot of so much height, mm. */
export function mapGrid({ axes, sets }: Sweep, height: number): MapGrid {
  const [first, second] = axes as [Axis, Axis]
  const box = { left: mapSize.left, right: mapSize.right, top: mapSize.top, bottom: mapSize.top + height }
  const across = axisPlace(first, box.left, box.right, 6)
  const upward = axisPlace(second, box.bottom, box.top, 7)
  const cells = across.order.map((i) => upward.order.map((j) => sets[i * second.points.length + j]!))
  const gaps = ({ borders }: AxisPlace) => borders.slice(1).map((border, at) => Math.abs(border - borders[at]!))
  return { box, across, upward, cells, least: { width: Math.min(...gaps(across)), height: Math.min(...gaps(upward)) } }
}

/** The boxes of all cells that are alike, joined upwards, by what they are. */
export function alike<T>(grid: MapGrid, of: (set: SweptSet) => T): Map<T, Box[]> {
  const found = new Map<T, Box[]>()
  grid.cells.forEach((column, i) => {
    for (const run of runsOf(column.map(of))) {
      const box = {
        left: grid.across.borders[i]!,
        right: grid.across.borders[i + 1]!,
        top: grid.upward.borders[run.to + 1]!,
        bottom: grid.upward.borders[run.from]!,
      }
      found.set(run.of, [...(found.get(run.of) ?? []), box])
    }
  })
  return found
}

/** The border between the region without stops and the rest. */
export function regionBorder({ across, upward, cells }: MapGrid): string {
  const free = cells.map((column) => column.map(isFree))
  const [x, y] = [across.borders, upward.borders]
  const pieces: (readonly Point[])[] = []
  free.forEach((column, i) => {
    column.forEach((isOn, j) => {
      if (i > 0 && free[i - 1]![j] !== isOn) pieces.push([[x[i]!, y[j]!] as const, [x[i]!, y[j + 1]!] as const])
      if (j > 0 && column[j - 1] !== isOn) pieces.push([[x[i]!, y[j]!] as const, [x[i + 1]!, y[j]!] as const])
    })
  })
  return strokes('border', pieces)
}

/** Both sides with their values, and the place of the file. Takes 12 mm below the plot. */
export function sides({ axes }: Sweep, { box, across, upward }: MapGrid): string[] {
  const [first, second] = axes as [Axis, Axis]
  const name = ({ path, unit }: Axis) => (unit === '' ? path : `${path}, ${unit}`)
  const own =
    across.own !== undefined && upward.own !== undefined
      ? [
          line('own', [across.own, box.top - 1], [across.own, box.bottom]),
          line('own', [box.left, upward.own], [box.right + 1, upward.own]),
          text([across.own, box.top - 2], `file: ${ownWords(first)}`, { anchor: 'middle', size: 2.8, look: 'strong' }),
          text([0, upward.own + 1], `file: ${ownWords(second)}`, { size: 2.6, look: 'strong' }),
        ]
      : []
  return [
    strokes('frame', [
      [
        [box.left, box.top],
        [box.right, box.top],
        [box.right, box.bottom],
        [box.left, box.bottom],
        [box.left, box.top],
      ],
    ]),
    ...across.ticks.flatMap(({ at, words }) => [
      line('thin', [at, box.bottom], [at, box.bottom + 1.2]),
      text([at, box.bottom + 4.4], words, { anchor: 'middle', size: 2.8 }),
    ]),
    ...upward.ticks.flatMap(({ at, words }) => [
      line('thin', [box.left - 1.2, at], [box.left, at]),
      text([box.left - 2, at + 1], words, { anchor: 'end', size: 2.8 }),
    ]),
    text([(box.left + box.right) / 2, box.bottom + 9], name(first), { anchor: 'middle', look: 'strong' }),
    text([0, mapSize.top - 2.5], name(second), { look: 'strong' }),
    ...own,
  ]
}
