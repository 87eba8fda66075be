import { formatNumber } from '../quantity/format-number.ts'
import { readoutDecimals } from '../route/set-up-csv.ts'
import { amountText } from './amount-text.ts'
import { cutWords } from './html/route.ts'
import { markdownTable, plain } from './markdown-table.ts'
import type { Report } from './report-schema.ts'

/** Route and set-ups as Markdown, each clamping before the first step in it. */
export function markdownRoute({ route, setUps }: Report): string[] {
  const shown = new Set<string>()
  const amount = (a: { value: number; unit: string } | undefined) =>
    a === undefined ? '' : amountText(a.value, a.unit)
  return route.flatMap((step) => {
    const setUp = setUps.find((s) => s.id === step.setUp)!
    const isFirst = !shown.has(setUp.id)
    shown.add(setUp.id)
    const number = (value: number | undefined, decimals: number) =>
      value === undefined ? '' : formatNumber(value, decimals)
    return [
      ...(isFirst
        ? [
            `### Set-up: ${plain(setUp.title)}`,
            '',
            `Held: ${plain(setUp.held)}.`,
            '',
            `Datum: ${plain(setUp.datum)}`,
            '',
            ...bullets(setUp.notes),
            ...(setUp.figures.length === 0
              ? []
              : [
                  ...markdownTable(
                    ['size', 'is', 'wanted'],
                    setUp.figures.map((f) => [
                      plain(f.label),
                      amountText(f.value, f.unit),
                      f.limit === undefined ? '' : `at ${f.limitIs} ${amountText(f.limit, f.unit)}`,
                    ]),
                  ),
                  '',
                ]),
          ]
        : []),
      `#### ${step.number}. ${plain(step.title)}`,
      '',
      ...(isFirst ? [] : [`Set-up as before: ${plain(setUp.title)}.`, '']),
      plain(cutWords(step)),
      '',
      ...step.steps.map((words, i) => `${i + 1}. ${plain(words)}`),
      '',
      ...bullets(step.cautions.map((words) => `Mind: ${words}`)),
      ...(step.places.length === 0
        ? []
        : [
            ...markdownTable(
              ['place', 'X mm', 'Y mm', 'Z mm', 'X in', 'Y in', 'Z in'],
              step.places.map(({ name, mm, in: inches }) => [
                plain(name),
                ...[mm.x, mm.y, mm.z].map((value) => number(value, readoutDecimals.mm)),
                ...[inches.x, inches.y, inches.z].map((value) => number(value, readoutDecimals.in)),
              ]),
            ),
            '',
          ]),
      ...(step.measure.length === 0
        ? []
        : [
            ...markdownTable(
              ['measure', 'how', 'from', 'to'],
              step.measure.map((m) => [
                plain(m.label),
                plain(m.reading === undefined ? m.how : `${m.how}: ${m.reading}`),
                m.thread === undefined ? amount(m.from) : plain(m.thread),
                amount(m.to),
              ]),
            ),
            '',
          ]),
      `Why here: ${plain(step.why)}`,
      '',
    ]
  })
}

const bullets = (items: readonly string[]): string[] =>
  items.length === 0 ? [] : [...items.map((item) => `- ${plain(item)}`), '']
