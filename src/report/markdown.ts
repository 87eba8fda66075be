import { formatNumber } from '../quantity/format-number.ts'
import { markdownRoute } from './markdown-route.ts'
import { markdownTable, plain } from './markdown-table.ts'
import type { Report } from './report-schema.ts'

/** The report for people, as Markdown; remedies were looked for. */
export function markdownReport(report: Report): string {
  const mark = `revision ${report.revision}`
  const lines = [`# ${plain(report.title)}`, '', `${report.family}, ${mark}, units ${report.units}`, '']
  if (report.stops > 0) {
    lines.push(
      `**${report.stops === 1 ? 'One finding stops' : `${report.stops} findings stop`} this job. Do not make it as it is.**`,
      '',
    )
  }
  lines.push('## Findings', '', ...findings(report), '')
  lines.push('## Route', '', ...markdownRoute(report))
  lines.push('## Figures', '', ...markdownTable(['figure', 'value', 'limit', 'from'], figures(report)), '')
  for (const { title, columns, rows } of report.tables) {
    const head = columns.map(({ label, unit }) => (unit === '' ? label : `${label}, ${unit}`))
    lines.push(
      `## ${title}`,
      '',
      ...markdownTable(
        head,
        rows.map((row) => row.map(cell)),
      ),
      '',
    )
  }
  lines.push('## Walls', '', 'Least metal between two cuts, measured inside the metal.', '')
  lines.push(...markdownTable(['between', 'metal', 'wanted'], walls(report)), '')
  lines.push('## Dimensions', '', 'In brackets: follows from others, not to be machined to.', '')
  lines.push(...markdownTable(['part', 'dimension', 'size', 'tolerance'], dimensions(report)), '')
  lines.push('## Parts', '')
  lines.push(
    ...markdownTable(
      ['part', 'material', 'volume', 'mass'],
      report.parts.map((p) => [
        p.label,
        p.material,
        amount(p.volume.value, p.volume.unit),
        amount(p.mass.value, p.mass.unit),
      ]),
    ),
    '',
  )
  lines.push(
    '## Parameters',
    '',
    'Where each value came from: given in the file, a default, a rule of thumb, or derived from others.',
    '',
  )
  lines.push(...markdownTable(['parameter', 'value', 'origin'], parameters(report)), '')
  lines.push('## Cautions', '', ...report.cautions.map((c) => `- ${c}`), '', `${mark}`, '')
  return lines.join('\n')
}

function findings(report: Report): string[] {
  if (report.findings.length === 0) return ['Nothing to report.']
  return report.findings.map(({ level, text, figure, limit, remedy }) => {
    const held =
      figure && limit
        ? ` (${amount(figure.value, figure.unit)}; wanted ${amount(limit.value, limit.unit)}: ${limit.reason})`
        : ''
    const clears = remedy ? ` To clear it, ${remedy.text}.` : level === 'note' ? '' : ' No single change clears it.'
    return `- **${level}** ${plain(text)}${held}${clears}`
  })
}

const figures = (report: Report) =>
  report.figures.map((f) => [
    f.label,
    amount(f.value, f.unit),
    f.limit === undefined ? '' : `at ${f.limitIs} ${amount(f.limit, f.unit)}`,
    f.source,
  ])

const walls = (report: Report) =>
  report.walls.map((w) => [
    w.between.join(' – '),
    amount(w.distance, w.unit),
    w.minimum === null ? 'open on purpose' : amount(w.minimum, w.unit),
  ])

const dimensions = (report: Report) =>
  report.dimensions.map((d) => {
    const size = `${d.kind === 'diameter' ? '⌀' : d.kind === 'radius' ? 'R' : ''}${d.thread ?? amount(d.value, d.unit)}`
    const tolerance =
      d.lower === undefined || d.upper === undefined
        ? d.reference
          ? ''
          : 'general'
        : `${signed(d.lower)} / ${signed(d.upper)} ${d.unit}`
    return [d.part, d.label, d.reference ? `(${size})` : size, tolerance]
  })

const parameters = (report: Report) =>
  report.parameters.map((p) => {
    const value = Array.isArray(p.value) ? p.value.map((v) => text(v)).join(', ') : text(p.value)
    return [p.path, `${value}${p.unit === '' ? '' : ` ${p.unit}`}`, p.origin]
  })

const cell = (value: number | string): string =>
  typeof value === 'number' ? formatNumber(value, decimals(Math.abs(value)), { trim: true }) : plain(value)

/** Four or five digits in all: a row of figures is read at a glance. */
const decimals = (size: number): number => (size < 1 ? 4 : size < 10 ? 3 : size < 100 ? 2 : 1)

const text = (value: number | string | boolean): string =>
  typeof value === 'number' ? formatNumber(value, 6, { trim: true }) : plain(String(value))

const amount = (value: number, unit: string): string =>
  `${formatNumber(value, Math.abs(value) < 10 ? 4 : 3, { trim: true })}${unit === '' || unit === '°' ? unit : ` ${unit}`}`

const signed = (value: number): string => `${value > 0 ? '+' : ''}${formatNumber(value, 4, { trim: true })}`
