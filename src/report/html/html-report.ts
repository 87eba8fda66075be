import type { Pictures } from '../../figures/pictures.ts'
import { amountText, numberText } from '../amount-text.ts'
import type { Report } from '../report-schema.ts'
import { sharedMarks } from './drawing.ts'
import { drawnPictures } from './drawn-pictures.ts'
import { escaped } from './escape.ts'
import { groupedFigures } from './figure-groups.ts'
import { style } from './style.ts'
import { htmlTable } from './table.ts'

/**
 * The report for people as one page that needs nothing else: no script, no file, no network. It is well-formed XML too.
 * Every number in it stands in the report; the pictures add geometry only.
 */
export function htmlReport(report: Report, pictures: Pictures): string {
  const sections: readonly (readonly [id: string, title: string, body: string[]])[] = [
    ['findings', 'Findings', findings(report)],
    ['figures', 'Figures', figures(report)],
    ['pictures', 'Pictures', drawnPictures(report, pictures)],
    ...(report.tables.length > 0 ? [['tables', 'Tables', report.tables.map(listed)] as const] : []),
    ['walls', 'Walls', walls(report)],
    ['dimensions', 'Dimensions', dimensions(report)],
    ['parts', 'Parts', parts(report)],
    ['parameters', 'Parameters', parameters(report)],
    [
      'cautions',
      'Cautions',
      [`<ul class="cautions">${report.cautions.map((c) => `<li>${escaped(c)}</li>`).join('')}</ul>`],
    ],
  ]
  return [
    '<!doctype html>',
    '<html xmlns="http://www.w3.org/1999/xhtml" lang="en">',
    '<head>',
    '<meta charset="utf-8"/>',
    '<meta name="viewport" content="width=device-width, initial-scale=1"/>',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"/>`,
    `<title>${escaped(`${report.stops > 0 ? 'STOP: ' : ''}${report.title}, revision ${report.revision}`)}</title>`,
    `<style>${style(report.stops > 0, report.revision)}</style>`,
    '</head>',
    '<body>',
    sharedMarks,
    '<header>',
    ...(report.stops > 0 ? [`<p class="stopped" role="alert">${stopWords(report.stops)}</p>`] : []),
    `<h1>${escaped(report.title)}</h1>`,
    `<p>${escaped(report.family)}, revision <strong>${report.revision}</strong>, sizes in ${report.units}</p>`,
    `<nav aria-label="Contents"><ul>${sections.map(([id, title]) => `<li><a href="#${escaped(id)}">${escaped(title)}</a></li>`).join('')}</ul></nav>`,
    '</header>',
    '<main>',
    ...sections.flatMap(([id, title, body]) => [
      `<section id="${escaped(id)}">`,
      `<h2>${escaped(title)}</h2>`,
      ...body,
      '</section>',
    ]),
    '</main>',
    '</body>',
    '</html>',
    '',
  ].join('\n')
}

const stopWords = (stops: number): string =>
  `STOP. ${stops === 1 ? 'One finding stops' : `${stops} findings stop`} this job. Do not make this tool as it is.`

const paragraph = (words: string): string => `<p>${escaped(words)}</p>`

function findings({ findings }: Report): string[] {
  if (findings.length === 0) return [paragraph('Nothing to report.')]
  const items = findings.map(({ level, text, figure, limit, remedy }) => {
    const held = [
      ...(figure ? [amountText(figure.value, figure.unit)] : []),
      ...(limit ? [`wanted ${amountText(limit.value, limit.unit)}: ${limit.reason}`] : []),
    ].join('; ')
    return [
      `<li class="${level}">`,
      `<p><span class="level">${level.toUpperCase()}</span>${escaped(text)}</p>`,
      ...(held === '' ? [] : [`<p class="held">${escaped(held)}</p>`]),
      ...(remedy ? [`<p class="clear">${escaped(`To clear it, ${remedy.text}.`)}</p>`] : []),
      '</li>',
    ].join('')
  })
  return ['<ul class="findings">', ...items, '</ul>']
}

function figures({ figures }: Report): string[] {
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

function listed({ title, columns, rows }: Report['tables'][number]): string {
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

const walls = ({ walls }: Report): string[] => [
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

function dimensions({ dimensions, parts }: Report): string[] {
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

const parts = ({ parts, units }: Report): string[] => [
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

const parameters = ({ parameters }: Report): string[] => [
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
