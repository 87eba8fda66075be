import { plainNumber } from './steady-number.ts'
import type { Sweep } from './sweep.ts'

/**
 * The sets as a table (RFC 4180: commas, lines end in CR LF, a head line): revision mark, the parameters, the worst level,
 * the stops, the figures; units in the head line, numbers with a point. Empty: this set has no such figure.
 */
export function sweepCsv({ revision, axes, figures, sets }: Sweep): string {
  const head = [
    'revision',
    ...axes.map(({ path, unit }) => withUnit(path, unit)),
    'level',
    'stops',
    'problems',
    ...figures.map(({ id, unit }) => withUnit(id, unit)),
  ]
  const rows = sets.map((set) => [
    revision,
    ...set.at.map(({ shown }) => (typeof shown === 'number' ? plainNumber(shown) : shown)),
    set.level,
    set.stops.join(' '),
    set.problems.map(({ code, where }) => (where.path === undefined ? code : `${code} ${where.path}`)).join('; '),
    ...set.figures.map((value) => (value === null ? '' : plainNumber(value))),
  ])
  return [head, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('')
}

const withUnit = (name: string, unit: string): string => (unit === '' ? name : `${name} [${unit}]`)

const cell = (text: string): string => (/[",;\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)
