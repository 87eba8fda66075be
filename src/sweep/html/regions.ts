import type { SetLevel } from '../set-result.ts'
import { levelLooks } from './level-look.ts'
import { type Run, runsOf } from './runs.ts'
import { type Box, boxes, line, rect, text } from './svg.ts'

interface Band {
  readonly top: number
  readonly bottom: number
}

const box = ({ from, to }: Run<unknown>, borders: readonly number[], { top, bottom }: Band): Box => ({
  left: borders[from]!,
  right: borders[to + 1]!,
  top,
  bottom,
})

/** Behind a chart: shaded where nothing stops the job, hatched where something does. `borders`: of the cells, in order. */
export function regions(free: readonly boolean[], borders: readonly number[], band: Band): string[] {
  const runs = runsOf(free)
  const of = (isOn: boolean) => runs.filter((run) => run.of === isOn).map((run) => box(run, borders, band))
  return [
    rect('level-none', { left: borders[0]!, right: borders.at(-1)!, ...band }),
    boxes('free', of(true)),
    boxes('stopped-region', of(false)),
    ...runs.slice(1).map(({ from }) => line('border', [borders[from]!, band.top], [borders[from]!, band.bottom])),
  ]
}

/** The same in words where there is room, at whichever end the curve is further from. `heights`: of the curve. */
export function regionWords(
  levels: readonly SetLevel[],
  borders: readonly number[],
  heights: readonly (number | undefined)[],
  band: Band,
): string[] {
  const words = levels.map((level) =>
    level === 'stop' || level === 'impossible' ? levelLooks[level].words : 'no stop',
  )
  return runsOf(words).flatMap((run) => {
    const { left, right } = box(run, borders, band)
    if (right - left < 4 + 1.6 * run.of.length) return []
    const near = heights.slice(run.from, run.to + 1).filter((height) => height !== undefined)
    const room = near.length === 0 ? 0 : Math.min(...near) - band.top - (band.bottom - Math.max(...near))
    const y = room > 0 ? band.top + 3 : band.bottom - 1.4
    return [text([(left + right) / 2, y], run.of, { anchor: 'middle', size: 2.6, look: 'halo' })]
  })
}
