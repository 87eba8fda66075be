import { amountText, numberText } from '../amount-text.ts'
import type { Report } from '../report-schema.ts'
import { groupedFigures } from './figure-groups.ts'
import { htmlTable } from './table.ts'

/** Figures, a table a group. */
export function figures({ figures }: Report): string[] {
  const columns = [{ head: 'figure' }, { head: 'value', isNumber: true }, { head: 'limit' }, { head: 'from' }]
  return groupedFigures(figures).map(({ title, figures }) =>
    htmlTable(
      'figures',
      title,
      columns,
      figures.map((f) => [
        f.label,
        amountText(f.value, f.unit),
        f.limit === undefined ? '' : `at ${f.limitIs} ${amountText(f.limit, f.unit)}`,
        f.source,
      ]),
    ),
  )
}

export function listed({ title, columns, rows }: Report['tables'][number]): string {
  const isNumber = (at: number) => rows.some((row) => typeof row[at] === 'number')
  const cell = (value: number | string, unit: string) => (typeof value === 'number' ? numberText(value, unit) : value)
  return htmlTable(
    'listed',
    title,
    columns.map(({ label, unit }, at) => ({
      head: unit === '' ? label : `${label}, ${unit}`,
      isNumber: isNumber(at),
    })),
    rows.map((row) => row.map((value, at) => cell(value, columns[at]!.unit))),
  )
}

export const walls = ({ walls }: Report): string[] => [
  htmlTable(
    'walls',
    'Least metal between two cuts, measured inside the metal',
    [{ head: 'between' }, { head: 'metal', isNumber: true }, { head: 'wanted', isNumber: true }],
    walls.map((w) => [
      w.between.join(' – '),
      amountText(w.distance, w.unit),
      w.minimum === null ? 'open on purpose' : amountText(w.minimum, w.unit),
    ]),
  ),
]

export function dimensions({ dimensions, parts }: Report): string[] {
  const labelOf = (id: string) => parts.find((part) => part.id === id)?.label ?? id
  return [
    htmlTable(
      'dimensions',
      'In brackets: follows from others, not to be machined to',
      [{ head: 'dimension' }, { head: 'part' }, { head: 'size', isNumber: true }, { head: 'tolerance' }],
      dimensions.map((d) => {
        const sign = d.kind === 'diameter' ? '⌀ ' : d.kind === 'radius' ? 'R ' : ''
        const size = `${sign}${d.thread ?? amountText(d.value, d.unit)}`
        const general = d.reference ? '' : 'general'
        const tolerance =
          d.lower === undefined || d.upper === undefined
            ? general
            : `${signed(d.lower, d.unit)} / ${signed(d.upper, d.unit)} ${d.unit}`
        return [d.label, labelOf(d.part), d.reference ? `(${size})` : size, tolerance]
      }),
    ),
  ]
}

const signed = (value: number, unit: string): string => `${value > 0 ? '+' : ''}${numberText(value, unit)}`

export const parts = ({ parts, units }: Report): string[] => [
  htmlTable(
    'parts',
    `Centroid in the body frame, ${units}: from the mounting face on the spindle axis, X to the bit side, Z into the spindle`,
    [
      { head: 'part' },
      { head: 'material' },
      { head: 'volume', isNumber: true },
      { head: 'mass', isNumber: true },
      { head: 'centroid X, Y, Z', isNumber: true },
    ],
    parts.map((p) => [
      p.label,
      p.material,
      amountText(p.volume.value, p.volume.unit),
      amountText(p.mass.value, p.mass.unit),
      p.centroid.map((x) => numberText(x, units)).join(', '),
    ]),
  ),
]

export const parameters = ({ parameters }: Report): string[] => [
  htmlTable(
    'parameters',
    'Where each value came from: given in the file, a default, a rule of thumb, or derived from others',
    [{ head: 'parameter' }, { head: 'value' }, { head: 'origin' }, { head: 'what it is' }],
    parameters.map(({ path, value, unit, origin, says }) => {
      const one = (v: number | string | boolean) => (typeof v === 'number' ? numberText(v, unit) : String(v))
      const text = Array.isArray(value) ? value.map(one).join(', ') : one(value)
      return [path, unit === '' ? text : `${text}${unit === '°' ? '' : ' '}${unit}`, origin, says]
    }),
  ),
]
