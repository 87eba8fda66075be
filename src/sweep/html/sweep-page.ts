import { cautions } from '../../report/cautions.ts'
import { escaped } from '../../report/html/escape.ts'
import { style } from '../../report/html/style.ts'
import { htmlTable } from '../../report/html/table.ts'
import { type Axis, isScale } from '../axis.ts'
import { setLevels } from '../set-result.ts'
import { isFree, type Sweep } from '../sweep.ts'
import { figureMap } from './figure-map.ts'
import { levelLanes } from './level-lanes.ts'
import { levelLooks } from './level-look.ts'
import { levelMap } from './level-map.ts'
import { lineChart } from './line-chart.ts'
import { runsOf } from './runs.ts'
import { setsTable } from './sets-table.ts'
import { hatches, sweepStyle } from './sweep-style.ts'
import { ownWords, valueWords } from './value-words.ts'

/** A sweep as one page that needs nothing else: no script, no file, no network. It is well-formed XML too. */
export function sweepPage(sweep: Sweep): string {
  const { title, family, revision, units, axes, figures } = sweep
  const isLine = axes.length === 1
  const sections: readonly (readonly [id: string, title: string, body: readonly string[]])[] = [
    ['what-stops', 'What stops where', [isLine ? levelLanes(sweep) : levelMap(sweep), ...stopList(sweep)]],
    [
      'figures',
      'Figures',
      [
        ...(isLine
          ? [
              paragraph(
                'Shaded: no stop. Hatched: something stops the job there, or it cannot be built. A cross is a stopped set.',
              ),
            ]
          : []),
        ...figures.map((figure, at) => (isLine ? lineChart(sweep, figure, at) : figureMap(sweep, figure, at))),
      ],
    ],
    ['sets', 'Sets', setsTable(sweep)],
    ['cautions', 'Cautions', [`<ul class="cautions">${cautions.map((c) => `<li>${escaped(c)}</li>`).join('')}</ul>`]],
  ]
  return [
    '<!doctype html>',
    '<html xmlns="http://www.w3.org/1999/xhtml" lang="en">',
    '<head>',
    '<meta charset="utf-8"/>',
    '<meta name="viewport" content="width=device-width, initial-scale=1"/>',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"/>`,
    `<title>${escaped(`Sweep of ${title}, revision ${revision}`)}</title>`,
    `<style>${style(false, revision)}${sweepStyle}</style>`,
    '</head>',
    '<body>',
    hatches,
    '<header>',
    `<h1>${escaped(`Sweep: ${title}`)}</h1>`,
    `<p>${escaped(family)}, revision <strong>${revision}</strong> of the file, sizes in ${units}</p>`,
    ...varied(axes),
    ...result(sweep),
    '</header>',
    '<main>',
    ...sections.flatMap(([id, heading, body]) => [
      `<section id="${id}">`,
      `<h2>${escaped(heading)}</h2>`,
      ...body,
      '</section>',
    ]),
    '</main>',
    '</body>',
    '</html>',
    '',
  ].join('\n')
}

const paragraph = (words: string): string => `<p>${escaped(words)}</p>`

function varied(axes: readonly Axis[]): string[] {
  const rows = axes.map((axis) => {
    const { path, points, says } = axis
    const [first, last] = [valueWords(axis, points[0]!), valueWords(axis, points.at(-1)!)]
    const few = points.length <= 6 ? points.map((point) => valueWords(axis, point)).join(', ') : `${first} to ${last}`
    return [path, few, String(points.length), ownWords(axis), says]
  })
  const columns = ['parameter', 'values', 'how many', 'in the file', 'what it is'].map((head) => ({ head }))
  return [htmlTable('varied', 'What is varied; all else is as in the file', columns, rows)]
}

/** What one wants to know first. */
function result({ axes, sets, own }: Sweep): string[] {
  const free = sets.filter(isFree).length
  const counts = setLevels.flatMap((level) => {
    const count = sets.filter((set) => set.level === level).length
    return count === 0 ? [] : [`${count} × ${levelLooks[level].words}`]
  })
  const [axis] = axes
  const where = axes.length === 1 && free > 0 && free < sets.length ? `: ${freeValues(axis!, sets)}` : ''
  const region =
    free === 0
      ? 'No set is without a stop.'
      : free === sets.length
        ? `All ${sets.length} sets are without stops.`
        : `Without stops: ${free} of ${sets.length} sets${where}.`
  return [
    '<div class="result">',
    `<p><strong>${escaped(region)}</strong></p>`,
    paragraph(`${counts.join(', ')}. The file as it stands: ${levelLooks[own.level].words}.`),
    '</div>',
  ]
}

function freeValues(axis: Axis, sets: Sweep['sets']): string {
  if (!isScale(axis)) {
    const names = sets.filter(isFree).map((set) => valueWords(axis, set.at[0]!))
    return `${axis.path} ${names.join(', ')}`
  }
  const order = sets.toSorted((a, b) => Number(a.at[0]!.shown) - Number(b.at[0]!.shown))
  const runs = runsOf(order.map(isFree)).filter((run) => run.of)
  const spans = runs.map(({ from, to }) => {
    const [low, high] = [order[from]!, order[to]!].map((set) => valueWords(axis, set.at[0]!))
    return from === to ? low : `from ${low} to ${high}`
  })
  return `${axis.path} ${spans.join('; ')}`
}

function stopList({ stops, sets }: Sweep): string[] {
  const rows = stops.map(({ id, text, sets: count }) => [id, `${count} of ${sets.length}`, text])
  const impossible = new Map<string, { count: number; words: string }>()
  for (const { problems } of sets) {
    for (const { code, where, found, allowed } of problems) {
      const id = where.path === undefined ? code : `${code} ${where.path}`
      const known = impossible.get(id)
      impossible.set(id, {
        count: (known?.count ?? 0) + 1,
        words: known?.words ?? `found ${found}; allowed: ${allowed}`,
      })
    }
  }
  const tables: string[] = []
  const columns = (head: string, words: string) => [{ head }, { head: 'sets' }, { head: words }]
  if (rows.length > 0) {
    tables.push(htmlTable('stops', 'What stops the job', columns('check', 'as it reads in the first of them'), rows))
  }
  if (impossible.size > 0) {
    const why = [...impossible].map(([id, { count, words }]) => [id, `${count} of ${sets.length}`, words])
    tables.push(
      htmlTable('stops', 'Why sets cannot be built', columns('problem', 'as it reads in the first of them'), why),
    )
  }
  return tables
}
