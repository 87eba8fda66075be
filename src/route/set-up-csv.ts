import { formatNumber } from '../quantity/format-number.ts'
import type { Operation, Place, WorkSetUp } from './operation.ts'

/** The last digit that a readout shows. */
export const readoutDecimals = { mm: 3, in: 4 } as const

const columns = [
  'revision',
  'operation',
  'set-up',
  'place',
  'X mm',
  'Y mm',
  'Z mm',
  'X in',
  'Y in',
  'Z in',
  'zero and axes',
] as const

/**
 * `setup.csv` (RFC 4180: commas, lines end in CR LF, a head line): what the readout shows at every place of every operation, in
 * mm and in inches to its usual last digit, numbers with a point. Empty: that axis does not matter. Z counts down into the metal;
 * the first line of a set-up says where its zero is.
 */
export function setUpCsv(route: readonly Operation[], setUps: readonly WorkSetUp[], revision: string): string {
  const shown = new Set<string>()
  const rows = route.flatMap((operation, at) => {
    if (operation.places.length === 0) return []
    const setUp = setUps.find((s) => s.id === operation.setUp)
    if (!setUp) throw new Error(`operation ${operation.id}: no set-up ${operation.setUp}`)
    const line = (name: string, { x, y, z }: Omit<Place, 'name'>, note: string) => [
      revision,
      `${at + 1} ${operation.title}`,
      setUp.title,
      name,
      ...[x, y, z].map((value) => number(value, 1, readoutDecimals.mm)),
      ...[x, y, z].map((value) => number(value, 25.4, readoutDecimals.in)),
      note,
    ]
    const zero = shown.has(setUp.id) ? [] : [line('zero', { x: 0, y: 0, z: 0 }, setUp.datum)]
    shown.add(setUp.id)
    return [...zero, ...operation.places.map((place) => line(place.name, place, ''))]
  })
  return [columns, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('')
}

const number = (value: number | undefined, unit: number, decimals: number): string =>
  value === undefined ? '' : formatNumber(value / unit, decimals)

const cell = (text: string): string => (/[",;\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)
