import { formatLength } from '../../quantity/format-length.ts'
import { arborStock } from './arbor-stock.ts'
import type { HeadDesign } from './design.ts'
import { pinDiameter } from './engineering/fit.ts'
import { washerCatch } from './engineering/ways-to-hold.ts'
import type { Parameters } from './parameters/parameters.ts'

/** One line of the parts list. */
export interface ListedPart {
  /** Number in the circle on the drawing, from 1. */
  readonly item: number
  readonly id: 'body' | 'arbor' | 'bit' | 'screws' | 'pin' | 'screw-and-washer'
  readonly name: string
  readonly count: number
  readonly material: string
  /** What is bought and sawn, in words. */
  readonly stock: string
}

/** Everything that the tool is put together from, in the order of the items. */
export function partsList(design: HeadDesign): ListedPart[] {
  const { parameters: p, layout: l } = design
  const { materials } = l
  const rows: Omit<ListedPart, 'item'>[] = [
    { id: 'body', name: 'Head', count: 1, material: materials.body.title, stock: headBar(design) },
    { id: 'arbor', name: 'Arbor', count: 1, material: materials.arbor.title, stock: arborBar(design) },
    { id: 'bit', name: 'Bit', count: 1, material: materials.bit.title, stock: blankOf(design) },
    {
      id: 'screws',
      name: 'Set screw',
      count: l.screws.xs.length,
      material: materials.screw.title,
      stock: screwOf(design),
    },
  ]
  if (p.fit.catch === 'pin') {
    const stock = `rod ⌀${size(design, pinDiameter(p))} × ${size(design, p.stock.size)}, staked`
    rows.push({ id: 'pin', name: 'Catch pin', count: 1, material: materials.arbor.title, stock })
  }
  if (p.fit.catch === 'screw-and-washer') {
    const stock = washerCatch(design) ?? 'none holds: see the report'
    rows.push({ id: 'screw-and-washer', name: 'Catch: screw and washer', count: 1, material: 'steel', stock })
  }
  return rows.map((row, i) => ({ item: i + 1, ...row }))
}

const size = ({ units }: HeadDesign, value: number): string => formatLength(value, units, { fractions: true })
const same = (a: number, b: number): boolean => Math.abs(a - b) < 1e-3

function headBar(design: HeadDesign): string {
  const { parameters: p, layout: l } = design
  return `${p.stock.shape} bar ${size(design, p.stock.size)} × ${size(design, l.stockLength)}`
}

function arborBar(design: HeadDesign): string {
  const { bar, largest, length } = arborStock(design)
  const round = bar ? `round bar ⌀${size(design, bar.size)}` : `round bar, at least ⌀${size(design, largest)}`
  return `${round} × ${size(design, length)}`
}

/** The blank as it is bought and, where it is longer, what it is cut down to. */
function blankOf(design: HeadDesign): string {
  const { parameters: p, tables } = design
  const { width, height, length, material } = p.bit
  const [small, large] = [Math.min(width, height), Math.max(width, height)]
  const section = `${size(design, small)} × ${size(design, large)}`
  const blank = tables.bitBlanks.find(
    (row) => row.material === material && same(row.width, small) && same(row.height, large),
  )
  const bought = blank?.lengths.find((standard) => standard >= length - 1e-3)
  if (bought === undefined) return `blank ${section} × ${size(design, length)}`
  const cut = same(bought, length) ? '' : `, cut to ${size(design, length)}`
  return `blank ${section} × ${size(design, bought)}${cut}`
}

/** Hexagon socket set screws by their points, metric; a half-dog has none. Inch ones: ASME B18.3 (from memory). */
const metricStandards: Readonly<Record<Parameters['screws']['point'], string | undefined>> = {
  flat: 'ISO 4026',
  cone: 'ISO 4027',
  'half-dog': undefined,
  cup: 'ISO 4029',
}

function screwOf(design: HeadDesign): string {
  const { parameters: p, layout: l } = design
  const { screw, length } = l.screws
  const standard = screw.system === 'metric' ? metricStandards[p.screws.point] : 'ASME B18.3'
  const named = standard === undefined ? '' : `${standard} `
  return `${named}${screw.name} × ${size(design, length)}, ${p.screws.point} point, key ${size(design, screw.keySize)}`
}
