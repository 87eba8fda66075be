import type { Measuring } from '../figures/measuring.ts'
import { readingOf } from '../figures/measuring.ts'
import { deviationsOf } from '../part/general-tolerance.ts'
import { formatNumber } from '../quantity/format-number.ts'
import type { Units } from '../quantity/kind.ts'
import { toUnit } from '../quantity/to-unit.ts'
import { unitSymbol } from '../quantity/unit-table.ts'
import type { AskedSize } from './measured-value.ts'

/** A named size as it is asked for: what the tool should show, and within what, mm or rad. */
export interface AskedLine extends AskedSize {
  readonly measuring: Measuring
  /** Limits of the reading; absent for what is only looked at. */
  readonly from?: number
  readonly to?: number
}

/** False for a thread, which is looked at and has no number. */
export const hasNumber = ({ measuring }: AskedLine): boolean => measuring.dimension.kind !== 'thread'

/** What every size is asked for as, in the order given. A thread is looked at and has no number. */
export function askedLines(measuring: readonly Measuring[]): AskedLine[] {
  return measuring.map((m) => {
    const { dimension } = m
    const nominal = readingOf(m, dimension.value)
    const by = deviationsOf(dimension)
    const ends = by && [dimension.value + by.lower, dimension.value + by.upper].map((size) => readingOf(m, size))
    return {
      part: m.part,
      id: dimension.id,
      label: dimension.label,
      kind: dimension.kind === 'angle' ? 'angle' : 'length',
      nominal,
      measuring: m,
      ...(ends && { from: Math.min(...ends), to: Math.max(...ends) }),
    }
  })
}

const columns = [
  'revision',
  'part',
  'size',
  'what',
  'how to measure',
  'what the tool is put on',
  'nominal',
  'from',
  'to',
  'unit',
  'measured',
] as const

/**
 * `inspection.csv` (RFC 4180): one line a size, the last column empty for what the tool shows. Numbers with a point, angles in
 * degrees.
 */
export function inspectionSheet(lines: readonly AskedLine[], revision: string, units: Units): string {
  const number = (kind: AskedLine['kind'], value: number | undefined) =>
    value === undefined
      ? ''
      : formatNumber(toUnit(kind, value, units), kind === 'angle' ? 3 : units === 'mm' ? 4 : 5, { trim: true })
  const rows = lines.map(({ part, id, label, kind, nominal, from, to, measuring }) => {
    const { dimension, how, reading } = measuring
    const isThread = dimension.kind === 'thread'
    const unit = isThread ? '' : kind === 'angle' ? 'deg' : unitSymbol(kind, units)
    const what = isThread ? `${label} ${dimension.thread ?? ''}` : label
    return [
      revision,
      part,
      id,
      dimension.tolerance.kind === 'reference' ? `(${what})` : what,
      how,
      reading?.says ?? '',
      isThread ? '' : number(kind, nominal),
      number(kind, from),
      number(kind, to),
      unit,
      '',
    ]
  })
  return [columns, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('')
}

const cell = (text: string): string => (/[",;\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)
