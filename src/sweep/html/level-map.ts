import { setLevels } from '../set-result.ts'
import type { Sweep } from '../sweep.ts'
import { levelLooks } from './level-look.ts'
import { alike, type MapGrid, mapGrid, mapSize, regionBorder, sides } from './map-grid.ts'
import { boxes, figureElement, rect, text } from './svg.ts'

const height = 92
const legend = mapSize.right + 8

/** The worst finding over two parameters, and the border of the region without stops. */
export function levelMap(sweep: Sweep): string {
  const grid = mapGrid(sweep, height)
  const areas = alike(grid, ({ level }) => level)
  const hasRoom = grid.least.width >= 5 && grid.least.height >= 5
  const signs = hasRoom
    ? grid.cells.flatMap((column, i) =>
        column.flatMap(({ level }, j) => {
          const { sign } = levelLooks[level]
          const at = [grid.across.centres[i]!, grid.upward.centres[j]! + 1.1] as const
          return sign === '' ? [] : [text(at, sign, { anchor: 'middle', size: 3.2, look: 'sign' })]
        }),
      )
    : []
  const present = setLevels.filter((level) => areas.has(level))
  let y = mapSize.top + 14
  const key = present.flatMap((level) => {
    const { words, sign, look } = levelLooks[level]
    const count = sweep.sets.filter((set) => set.level === level).length
    const box = { left: legend, right: legend + 7, top: y, bottom: y + 5 }
    const parts = [
      rect(`${look} key`, box),
      ...(sign === '' ? [] : [text([legend + 3.5, y + 3.6], sign, { anchor: 'middle', size: 3.2, look: 'sign' })]),
      text([legend + 9, y + 2.3], words, { size: 2.8, look: 'strong' }),
      text([legend + 9, y + 5.5], `${count} of ${sweep.sets.length} sets`, { size: 2.6 }),
    ]
    y += 8
    return parts
  })
  const parts = [
    ...present.map((level) => boxes(levelLooks[level].look, areas.get(level)!)),
    regionBorder(grid),
    ...sides(sweep, grid),
    ...signs,
    ...key,
  ]
  const says =
    'Worst finding of each set. The heavy line is the border of the region without stops; it runs half way between sets that were worked out.' +
    ` ${ownPlace(grid)}`
  return figureElement('levels', 'What stops where', says, mapSize.width, mapSize.top + height + 12, parts)
}

const ownPlace = ({ across, upward }: MapGrid): string =>
  across.own !== undefined && upward.own !== undefined
    ? 'The chain lines cross where the file stands.'
    : 'The file itself stands outside this map.'
