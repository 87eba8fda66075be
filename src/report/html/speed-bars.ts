import type { SpeedBars } from '../../figures/pictures.ts'
import type { Point } from '../../geometry/polygon.ts'
import { type BarRow, barColumns, barPlace, barRows } from './bar-rows.ts'
import { Drawing, signWidth, textSize } from './drawing.ts'
import type { Picture } from './picture.ts'

/** Every limit of the spindle speed, the never-exceed speed, and apart from them the speed advised. */
export const speedBars: Picture<SpeedBars> = {
  title: 'Speeds',
  readings: ({ limits, neverExceed, advised }, make) => [
    ...limits.flatMap(({ id, label, counted }) =>
      counted === undefined ? [] : [make.of(id, label, 'rotation-speed', counted)],
    ),
    make.of('never-exceed', 'never-exceed speed', 'rotation-speed', neverExceed),
    ...('leftOut' in advised
      ? []
      : [
          make.of('advised-low', 'slow end of the advised range', 'rotation-speed', advised.low),
          make.of('advised-high', 'fast end of the advised range', 'rotation-speed', advised.high),
          ...(advised.runAt === undefined
            ? []
            : [make.of('run-at', 'speed of the spindle to run at', 'rotation-speed', advised.runAt)]),
        ]),
  ],
  draw({ limits, neverExceed, advised, spindle, isVariable }, show) {
    const counted = limits.flatMap((limit) => (limit.counted === undefined ? [] : [limit.counted]))
    const range = 'leftOut' in advised ? [] : [advised.high, advised.runAt ?? 0]
    const lowest = Math.min(...counted)
    const most = Math.max(...counted, ...range)
    const high = lowest > 0 ? Math.min(most, Math.max(2.2 * lowest, ...range)) : most
    const scale = { low: 0, high: high * 1.04 }
    const rows: BarRow[] = limits.map(({ id, label, counted: at, isCause }) => ({
      label: isCause ? `${label} (the lowest)` : label,
      ...(at !== undefined && { bar: { from: 0, to: at, look: isCause ? 'bar-main' : 'bar' } }),
      figures: at === undefined ? 'does not limit' : show(id),
    }))
    const drawing = new Drawing(180)
    const title = (y: number, words: string) => drawing.text([barColumns.labels, y], words, { strong: true })
    title(4, 'Safety limits')
    const end = barRows(drawing, scale, rows, 6)
    const never = barPlace(scale, neverExceed)
    drawing.line('limit', [never, 5], [never, end + 2])
    const words = `NEVER EXCEED ${show('never-exceed')}`
    const half = (words.length * signWidth * textSize) / 2
    const x = Math.min(barColumns.end - half - 1, Math.max(barColumns.left + half, never))
    drawing.text([x, end + 5.5], words, { anchor: 'middle', strong: true })

    const below = end + 14
    title(below, 'Advised for the life of the edge: not a safety limit')
    const advice: BarRow[] = [
      'leftOut' in advised
        ? { label: 'advised range', figures: 'none' }
        : {
            label: 'advised range',
            bar: { from: advised.low, to: advised.high, look: 'advice' },
            figures: `${show('advised-low')} to ${show('advised-high')}`,
          },
    ]
    if (!('leftOut' in advised)) {
      advice.push(
        advised.runAt === undefined
          ? { label: 'of the spindle’s speeds', figures: 'none is slow enough' }
          : {
              label: 'of the spindle’s speeds, run at',
              mark: { at: advised.runAt, look: 'mark' },
              figures: `${show('run-at')}${advised.runAt > neverExceed ? ': MORE THAN THE NEVER-EXCEED SPEED' : ''}`,
            },
      )
    }
    const last = barRows(drawing, scale, advice, below + 2)
    const axis = last + 2
    drawing.line('hidden', [never, below + 2], [never, axis])
    const at = (speed: number, down: number): Point => [barPlace(scale, speed), axis + down]
    drawing.line('grid', at(0, 0), at(scale.high, 0))
    const shown = spindle.filter((speed) => speed <= scale.high)
    if (isVariable) drawing.line('mark', at(spindle[0]!, 0), at(Math.min(spindle.at(-1)!, scale.high), 0))
    else for (const speed of shown) drawing.line('thin', at(speed, -1.2), at(speed, 1.2))
    drawing.text(
      [barColumns.left, axis + 5],
      `${isVariable ? 'heavy line: what the variable drive covers' : 'strokes: the speeds that the spindle has'}; dashed: never exceed`,
    )
    drawing.height = axis + 8
    const says =
      'Above, each limit as it counts; the never-exceed speed lies below the lowest of them and is a safety limit. Below, ' +
      ('leftOut' in advised ? advised.leftOut : 'the speed advised for the work material: it is no safety limit.')
    return { drawing, says }
  },
}
