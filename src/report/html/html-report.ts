import type { Pictures } from '../../figures/pictures.ts'
import { amountText } from '../amount-text.ts'
import type { Report } from '../report-schema.ts'
import { sharedMarks } from './drawing.ts'
import { drawnPictures } from './drawn-pictures.ts'
import { escaped } from './escape.ts'
import { dimensions, figures, listed, parameters, parts, walls } from './report-tables.ts'
import { routeSection } from './route.ts'
import { style } from './style.ts'

/** The views of one drawing, each as SVG with its dimensions. */
export interface DrawnSheet {
  readonly title: string
  readonly views: readonly string[]
}

/**
 * The report for people as one page that needs nothing else: no script, no file, no network. It is well-formed XML too.
 * Every number in it stands in the report; the pictures add geometry only.
 */
export function htmlReport(report: Report, pictures: Pictures, drawings: readonly DrawnSheet[]): string {
  const sections: readonly (readonly [id: string, title: string, body: string[]])[] = [
    ['findings', 'Findings', findings(report)],
    [
      'cautions',
      'Cautions',
      [`<ul class="cautions">${report.cautions.map((c) => `<li>${escaped(c)}</li>`).join('')}</ul>`],
    ],
    ['pictures', 'Pictures', drawnPictures(report, pictures)],
    ['drawings', 'Drawings', drawings.flatMap(drawnSheet)],
    ['route', 'Route', routeSection(report)],
    ['figures', 'Figures', figures(report)],
    ...(report.tables.length > 0 ? [['tables', 'Tables', report.tables.map(listed)] as const] : []),
    ['walls', 'Walls', walls(report)],
    ['dimensions', 'Dimensions', dimensions(report)],
    ['parts', 'Parts', parts(report)],
    ['parameters', 'Parameters', parameters(report)],
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

/** Sheets of words only are in the PDF, and their words in the report. */
const drawnSheet = ({ title, views }: DrawnSheet): string[] =>
  views.length === 0
    ? []
    : [`<h3>${escaped(title)}</h3>`, ...views.map((svg) => `<figure class="view">${svg}</figure>`)]

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
      ...(remedy || level !== 'note'
        ? [`<p class="clear">${escaped(remedy ? `To clear it, ${remedy.text}.` : 'No single change clears it.')}</p>`]
        : []),
      '</li>',
    ].join('')
  })
  return ['<ul class="findings">', ...items, '</ul>']
}
