import type { BarStockRow } from '../../tables/bar-stock.ts'
import { arborTop } from './assembly-dimensions.ts'
import type { HeadDesign } from './design.ts'

/** Round bar that the arbor is turned from, mm. */
export interface ArborStock {
  /** Thickest place of the finished arbor. */
  readonly largest: number
  /** Thinnest round bar of the table that is no thinner, of the sizes of the file's own unit; undefined: the table has none. */
  readonly bar: BarStockRow | undefined
  /** To saw, both ends to be faced. */
  readonly length: number
}

export function arborStock(design: HeadDesign): ArborStock {
  const { parameters: p, layout: l, tables, units } = design
  const largest = Math.max(
    l.fit?.spigot.largest ?? p.bore.diameter,
    p.arbor.kind === 'shank' ? p.arbor['shoulder-diameter'] : 0,
    ...(p.arbor.kind === 'shank' ? l.shank!.profile.map((piece) => piece.from) : []),
  )
  const bars = tables.barStock.filter((row) => row.shape === 'round' && row.size >= largest - 1e-9)
  const own = bars.filter((row) => isEven(row.size, units))
  const thinnest = (rows: readonly BarStockRow[]) =>
    rows.reduce<BarStockRow | undefined>((a, b) => (a && a.size <= b.size ? a : b), undefined)
  const mark = units === 'in' ? 25.4 / 16 : 1
  const long = arborTop(design) + p.arbor['spigot-length'] + 2 * p.settings.facing
  return { largest, bar: thinnest(own) ?? thinnest(bars), length: mark * Math.ceil(long / mark - 1e-9) }
}

/** Half millimetres, or 64ths of an inch: how dealers of either system size their bars. */
function isEven(size: number, units: 'mm' | 'in'): boolean {
  const steps = units === 'mm' ? size * 2 : (size / 25.4) * 64
  return Math.abs(steps - Math.round(steps)) < 1e-6
}
