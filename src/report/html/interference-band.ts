import type { InterferenceBand } from '../../figures/pictures.ts'
import { type BarRow, barColumns, barPlace, barRows } from './bar-rows.ts'
import { Drawing } from './drawing.ts'
import type { Picture } from './picture.ts'

/** What a fit leaves between both limits of bore and spigot. */
export const interferenceBand: Picture<InterferenceBand> = {
  title: 'Interference',
  readings: ({ bore, spigot, interference, effective, needed, onset }, make) => [
    make.length('bore-smallest', 'smallest bore', bore.smallest),
    make.length('bore-largest', 'largest bore', bore.largest),
    make.length('spigot-smallest', 'smallest spigot', spigot.smallest),
    make.length('spigot-largest', 'largest spigot', spigot.largest),
    make.fine('least', 'least interference', interference.least),
    make.fine('most', 'most interference', interference.most),
    make.fine('effective-least', 'least interference after smoothing', effective.least),
    make.fine('effective-most', 'most interference after smoothing', effective.most),
    ...(needed === undefined ? [] : [make.fine('needed', 'interference that the load needs', needed)]),
    ...(onset === undefined ? [] : [make.fine('onset', `interference at which ${onset.says}`, onset.at)]),
  ],
  draw(band, show) {
    const { isMatched, nominal, bore, spigot, interference, effective, needed, onset } = band
    const zone = (limits: { smallest: number; largest: number }) => ({
      from: limits.smallest - nominal,
      to: limits.largest - nominal,
      look: 'bar' as const,
    })
    const range = (low: string, high: string) => `${show(low, 'exact')} to ${show(high, 'exact')}`
    const rows: BarRow[] = [
      isMatched
        ? {
            label: 'bore, drawn at its nominal size',
            mark: { at: 0, look: 'mark' },
            figures: range('bore-smallest', 'bore-largest'),
          }
        : { label: 'bore', bar: zone(bore), figures: range('bore-smallest', 'bore-largest') },
      {
        label: isMatched ? 'spigot, turned to a bore of that size' : 'spigot',
        bar: isMatched ? { from: interference.least, to: interference.most, look: 'bar' } : zone(spigot),
        figures: range('spigot-smallest', 'spigot-largest'),
      },
      {
        label: interference.least < 0 ? 'interference between them; negative: clearance' : 'interference between them',
        bar: { from: interference.least, to: interference.most, look: 'bar-main' },
        figures: range('least', 'most'),
      },
      {
        label: 'what smoothing leaves of it',
        bar: { from: effective.least, to: effective.most, look: 'bar-main' },
        figures: range('effective-least', 'effective-most'),
      },
      ...(needed === undefined
        ? []
        : [{ label: 'the load needs', mark: { at: needed, look: 'limit' as const }, figures: show('needed') }]),
      ...(onset === undefined
        ? []
        : [{ label: onset.says, mark: { at: onset.at, look: 'limit' as const }, figures: `from ${show('onset')}` }]),
    ]
    const bars = rows.flatMap(({ bar }) => (bar ? [bar.from, bar.to] : []))
    const most = Math.max(...bars, 0)
    const marks = [needed, onset?.at].filter((at) => at !== undefined && at <= 2.5 * most) as number[]
    const [low, high] = [Math.min(0, ...bars), Math.max(most, ...marks)]
    const room = Math.max(high - low, 1e-3) * 0.06
    const scale = { low: low - (low < 0 ? room : 0), high: high + room }

    const drawing = new Drawing(180)
    const zero = barPlace(scale, 0)
    const end = barRows(drawing, scale, rows, 2)
    drawing.line('grid', [zero, 1], [zero, end + 1])
    drawing.text([Math.max(zero, barColumns.left), end + 5], 'nominal size, line to line', {
      anchor: zero > 100 ? 'end' : 'start',
    })
    drawing.height = end + 8
    return {
      drawing,
      says:
        `${isMatched ? 'Spigot turned to the bore as measured' : `Fit ${band.name}`}, on the diameter, all rows on one scale. ` +
        'Grip counts at the least interference, stress and press force at the most.',
    }
  },
}
