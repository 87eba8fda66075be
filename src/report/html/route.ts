import { formatNumber } from '../../quantity/format-number.ts'
import { readoutDecimals } from '../../route/set-up-csv.ts'
import { amountText } from '../amount-text.ts'
import type { Report } from '../report-schema.ts'
import { escaped } from './escape.ts'
import { type HtmlColumn, htmlTable } from './table.ts'

type Step = Report['route'][number]
type SetUp = Report['setUps'][number]

/** Route and set-ups, to be read standing at the machine: a list of all steps, then step by step, each clamping before its first. */
export function routeSection({ route, setUps }: Report): string[] {
  const shown = new Set<string>()
  return [
    overview(route, setUps),
    ...route.flatMap((step) => {
      const setUp = setUps.find((s) => s.id === step.setUp)!
      const isFirst = !shown.has(setUp.id)
      shown.add(setUp.id)
      return [...(isFirst ? setUpCard(setUp) : []), ...stepCard(step, isFirst ? undefined : setUp.title)]
    }),
  ]
}

const paragraph = (words: string, kind?: string): string =>
  `<p${kind === undefined ? '' : ` class="${kind}"`}>${escaped(words)}</p>`

const list = (items: readonly string[], kind: string): string =>
  items.length === 0 ? '' : `<ul class="${kind}">${items.map((item) => `<li>${escaped(item)}</li>`).join('')}</ul>`

const turnsText = ({ turns, atMost }: NonNullable<Step['speed']>): string =>
  `${atMost ? 'at most ' : ''}${amountText(turns.value, turns.unit)}`

const overview = (route: Report['route'], setUps: Report['setUps']): string =>
  htmlTable(
    'steps',
    'In this order: each step needs what the ones before it leave',
    [{ head: 'step' }, { head: 'set-up' }, { head: 'machine' }, { head: 'tool' }, { head: 'turns', isNumber: true }],
    route.map((step) => [
      `${step.number}. ${step.title}`,
      setUps.find((s) => s.id === step.setUp)!.title,
      step.machine,
      step.tool?.name ?? '',
      step.speed ? turnsText(step.speed) : '',
    ]),
  )

function setUpCard({ title, held, datum, figures, notes }: SetUp): string[] {
  return [
    `<h3 class="set-up">${escaped(`Set-up: ${title}`)}</h3>`,
    paragraph(`Held: ${held}.`),
    paragraph(`Datum: ${datum}${datum.endsWith('.') ? '' : '.'}`),
    list(notes, 'notes'),
    ...(figures.length === 0
      ? []
      : [
          htmlTable(
            'set-up',
            `${title}: sizes`,
            [{ head: 'size' }, { head: 'is', isNumber: true }, { head: 'wanted', isNumber: true }],
            figures.map((f) => [
              f.label,
              amountText(f.value, f.unit),
              f.limit === undefined ? '' : `at ${f.limitIs} ${amountText(f.limit, f.unit)}`,
            ]),
          ),
        ]),
  ]
}

function stepCard(step: Step, setUp: string | undefined): string[] {
  return [
    `<div class="step" id="step-${escaped(step.id)}">`,
    `<h4>${escaped(`${step.number}. ${step.title}`)}</h4>`,
    ...(setUp === undefined ? [] : [paragraph(`Set-up as before: ${setUp}.`, 'as-before')]),
    paragraph(cutWords(step), 'cut'),
    `<ol>${step.steps.map((words) => `<li>${escaped(words)}</li>`).join('')}</ol>`,
    ...(step.cautions.length > 0 ? [list(step.cautions, 'mind')] : []),
    ...places(step),
    ...measures(step),
    paragraph(`Why here: ${step.why}`, 'why'),
    '</div>',
  ]
}

/** Machine, tool, speed, feed, depth and travel on one line. */
export function cutWords({ machine, tool, speed, depth, passes, travel }: Step): string {
  const sure = (amount: { value: number; unit: string }) => amountText(amount.value, amount.unit)
  const reach = tool?.reachNeeded
    ? `, reach ${sure(tool.reachNeeded)} or more${tool.reach ? ` (has ${sure(tool.reach)})` : ''}`
    : ''
  return [
    machineNames[machine],
    ...(tool ? [`${tool.name}${reach}`] : []),
    ...(speed ? [`${turnsText(speed)} (${sure(speed.surface)})`] : []),
    ...(speed?.feed ? [`feed ${sure(speed.feed)}`] : []),
    ...(speed?.feedPerTurn ? [`${sure(speed.feedPerTurn)} a turn`] : []),
    ...(depth
      ? [`${sure(depth)} deep${passes === undefined ? '' : ` in ${passes} ${passes === 1 ? 'pass' : 'passes'}`}`]
      : []),
    ...(travel
      ? [`travel ${sure(travel.approach)} approach + ${sure(travel.cut)} cut + ${sure(travel.overrun)} overrun`]
      : []),
  ].join(' · ')
}

const machineNames: Readonly<Record<Step['machine'], string>> = {
  saw: 'Saw',
  lathe: 'Lathe',
  mill: 'Mill',
  press: 'Press',
  bench: 'Bench',
  spindle: 'Spindle of the mill',
}

function places({ places, number }: Step): string[] {
  if (places.length === 0) return []
  const axes: HtmlColumn[] = ['X mm', 'Y mm', 'Z mm', 'X in', 'Y in', 'Z in'].map((head) => ({ head, isNumber: true }))
  const shown = (value: number | undefined, decimals: number) =>
    value === undefined ? '' : formatNumber(value, decimals)
  return [
    htmlTable(
      'places',
      `Readout, step ${number}`,
      [{ head: 'place' }, ...axes],
      places.map(({ name, mm, in: inches }) => [
        name,
        ...[mm.x, mm.y, mm.z].map((value) => shown(value, readoutDecimals.mm)),
        ...[inches.x, inches.y, inches.z].map((value) => shown(value, readoutDecimals.in)),
      ]),
    ),
  ]
}

function measures({ measure, number }: Step): string[] {
  if (measure.length === 0) return []
  const text = (amount: { value: number; unit: string } | undefined) =>
    amount === undefined ? '' : amountText(amount.value, amount.unit)
  return [
    htmlTable(
      'measured',
      `To measure, step ${number}`,
      [{ head: 'size' }, { head: 'how' }, { head: 'from', isNumber: true }, { head: 'to', isNumber: true }],
      measure.map((m) => [
        m.label,
        m.reading === undefined ? m.how : `${m.how}: ${m.reading}`,
        m.thread ?? text(m.from),
        text(m.to),
      ]),
    ),
  ]
}
