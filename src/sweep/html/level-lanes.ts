import { setLevels } from '../set-result.ts'
import type { Sweep } from '../sweep.ts'
import { levelLooks } from './level-look.ts'
import { frame, ownAcross, placesAcross, valuesBelow } from './line-frame.ts'
import { runsOf } from './runs.ts'
import { boxes, figureElement, line, text, wrapped } from './svg.ts'

const lane = 5.4
/** Most stops with a lane of their own; the list below the pictures has them all. */
const mostLanes = 14

/** Which values stop the job, and by what: a bar in the lane of the worst level, and one in that of each stop. */
export function levelLanes({ axes: [axis], sets, stops }: Sweep): string {
  const places = placesAcross(axis!)
  const ordered = places.order.map((at) => sets[at]!)
  const top = 6
  const parts: string[] = []
  let y = top
  const addLane = (words: string, look: string, isOn: readonly boolean[], strong: boolean) => {
    const bars = runsOf(isOn).filter((run) => run.of)
    const box = ({ from, to }: { from: number; to: number }) => ({
      left: places.borders[from]!,
      right: places.borders[to + 1]!,
      top: y + 0.8,
      bottom: y + lane - 0.8,
    })
    const fitted = wrapped(words, 30)
    parts.push(
      line('leader', [frame.left, y + lane], [frame.right, y + lane]),
      text([frame.left - 3, y + lane - 1.7], `${fitted[0]}${fitted.length > 1 ? ' …' : ''}`, {
        anchor: 'end',
        size: 2.8,
        ...(strong && { look: 'strong' }),
      }),
      boxes(look, bars.map(box)),
    )
    y += lane
  }
  for (const level of setLevels) {
    const isOn = ordered.map((set) => set.level === level)
    if (isOn.includes(true)) addLane(levelLooks[level].words, levelLooks[level].look, isOn, true)
  }
  const shown = stops.slice(0, mostLanes)
  if (shown.length > 0) {
    y += 2
    parts.push(text([frame.left - 3, y + 3.4], 'stopped by', { anchor: 'end', size: 2.8, look: 'strong' }))
    y += lane - 1
    for (const { id } of shown) {
      const isOn = ordered.map((set) => set.stops.includes(id))
      addLane(id, levelLooks.stop.look, isOn, false)
    }
  }
  parts.push(...ownAcross(axis!, places, top, y), ...valuesBelow(axis!, places, y))
  const says =
    'Worst finding at each value, and below it which finding stops where. A bar reaches half way to the next value that was worked out.' +
    (stops.length > shown.length ? ` ${stops.length - shown.length} more stops are in the list below.` : '')
  return figureElement('levels', 'What stops where', says, frame.width, y + 7, parts)
}
