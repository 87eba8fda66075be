import { wouldWords } from '../measured/repair.ts'
import { amountText } from './amount-text.ts'
import type { AsMadeReport } from './as-made.ts'
import { escaped } from './html/escape.ts'
import { style } from './html/style.ts'
import { htmlTable } from './html/table.ts'
import { markdownTable, plain } from './markdown-table.ts'

/** A piece of the page, for both forms of it. */
type Piece =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | {
      readonly kind: 'table'
      readonly title: string
      readonly head: readonly string[]
      readonly rows: readonly (readonly string[])[]
    }

const verdictWords = {
  good: 'good',
  'too large': 'TOO LARGE',
  'too small': 'TOO SMALL',
  'no limits': 'no limits',
} as const

function pieces(report: AsMadeReport): Piece[] {
  const { sizes, changed, findings, repairs, unmeasured } = report
  const bad = sizes.filter((s) => s.verdict === 'too large' || s.verdict === 'too small')
  const costs = changed.filter((c) => c.beyondLimit)
  const show = (value: number | null, unit: string) => (value === null ? '–' : amountText(value, unit))
  const told = (list: AsMadeReport['findings']['new']) => list.map((f) => `${f.level.toUpperCase()}: ${f.text}`)
  const findingPieces = (title: string, list: AsMadeReport['findings']['new']): Piece[] =>
    list.length === 0
      ? []
      : [
          { kind: 'heading', text: title },
          { kind: 'list', items: told(list) },
        ]
  return [
    {
      kind: 'text',
      text:
        bad.length === 0
          ? `${sizes.length} sizes measured, all of them within their limits.`
          : `${sizes.length} sizes measured, ${bad.length} outside ${bad.length === 1 ? 'its' : 'their'} limits: ${bad.map((s) => `${s.part} ${s.id}`).join(', ')}.`,
    },
    {
      kind: 'text',
      text:
        report.stops === 0
          ? 'As made, nothing stops the job.'
          : `As made, ${report.stops === 1 ? 'one finding stops' : `${report.stops} findings stop`} the job: do not run it as it is.`,
    },
    { kind: 'heading', text: 'What was measured' },
    {
      kind: 'table',
      title: 'Sizes as made',
      head: ['part', 'size', 'shown', 'from', 'to', 'size as made', 'nominal', 'verdict'],
      rows: sizes.map((s) => [
        s.part,
        s.label,
        amountText(s.reading, s.unit),
        show(s.from ?? null, s.unit),
        show(s.to ?? null, s.unit),
        amountText(s.size, s.unit),
        amountText(s.nominal, s.unit),
        `${verdictWords[s.verdict]}${s.beyond === undefined ? '' : ` by ${amountText(s.beyond, s.unit)}`}`,
      ]),
    },
    ...findingPieces('New findings', findings.new),
    ...findingPieces('Findings that are gone', findings.gone),
    ...findingPieces('Findings as designed', findings.stay),
    ...(costs.length === 0 && changed.length === 0
      ? []
      : ([
          { kind: 'heading', text: 'What it costs' },
          {
            kind: 'table',
            title: 'Figures that came out otherwise; first those beyond their limit',
            head: ['figure', 'designed', 'as made', 'limit'],
            rows: [...costs, ...changed.filter((c) => !c.beyondLimit)].map((c) => [
              c.label,
              show(c.designed, c.unit),
              show(c.made, c.unit),
              c.limit === undefined
                ? ''
                : `at ${c.limitIs} ${amountText(c.limit, c.unit)}${c.beyondLimit ? ', not kept' : ''}`,
            ]),
          },
        ] as const)),
    { kind: 'heading', text: 'What can still be done' },
    {
      kind: 'list',
      items: repairs.map((r) => `${r.title} (${wouldWords[r.would]}): ${[r.says, ...r.cautions].join(' ')}`),
    },
    ...(unmeasured.length === 0
      ? []
      : ([
          { kind: 'heading', text: 'Not measured' },
          {
            kind: 'text',
            text: `These keep their nominal size and tolerance: ${unmeasured.map((u) => `${u.part} ${u.id}`).join(', ')}.`,
          },
        ] as const)),
    { kind: 'heading', text: 'Cautions' },
    { kind: 'list', items: report.cautions },
  ]
}

const titleOf = (report: AsMadeReport): string => `${report.title}, as made`
const marksOf = ({ revision, asMade }: AsMadeReport): string => `designed as revision ${revision}, as made ${asMade}`

/** The report for people, as Markdown. */
export function asMadeMarkdown(report: AsMadeReport): string {
  const written = (p: Piece): string[] => {
    switch (p.kind) {
      case 'heading':
        return [`## ${p.text}`, '']
      case 'text':
        return [plain(p.text), '']
      case 'list':
        return [...p.items.map((i) => `- ${plain(i)}`), '']
      case 'table':
        return [
          ...markdownTable(
            p.head,
            p.rows.map((row) => row.map(plain)),
          ),
          '',
        ]
    }
  }
  const body = pieces(report).flatMap(written)
  return [`# ${plain(titleOf(report))}`, '', marksOf(report), '', ...body].join('\n')
}

/** The same as one page that needs nothing else. */
export function asMadeHtml(report: AsMadeReport): string {
  const written = (p: Piece): string[] => {
    switch (p.kind) {
      case 'heading':
        return [`<h2>${escaped(p.text)}</h2>`]
      case 'text':
        return [`<p>${escaped(p.text)}</p>`]
      case 'list':
        return ['<ul>', ...p.items.map((i) => `<li>${escaped(i)}</li>`), '</ul>']
      case 'table':
        return [
          htmlTable(
            'listed',
            p.title,
            p.head.map((head) => ({ head })),
            p.rows,
          ),
        ]
    }
  }
  const body = pieces(report).flatMap(written)
  return [
    '<!doctype html>',
    '<html xmlns="http://www.w3.org/1999/xhtml" lang="en">',
    '<head>',
    '<meta charset="utf-8"/>',
    '<meta name="viewport" content="width=device-width, initial-scale=1"/>',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"/>`,
    `<title>${escaped(`${report.stops > 0 ? 'STOP: ' : ''}${titleOf(report)}`)}</title>`,
    `<style>${style(report.stops > 0, report.asMade)}</style>`,
    '</head>',
    '<body>',
    `<h1>${escaped(titleOf(report))}</h1>`,
    `<p>${escaped(marksOf(report))}</p>`,
    ...body,
    '</body>',
    '</html>',
    '',
  ].join('\n')
}
