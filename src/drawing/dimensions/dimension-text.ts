import type { Tolerance } from '../../part/dimension.ts'
import { formatAngle } from '../../quantity/format-angle.ts'
import { formatLength } from '../../quantity/format-length.ts'
import { formatNumber } from '../../quantity/format-number.ts'

/** A size to be written on a drawing. */
export interface Size {
  readonly kind: 'length' | 'diameter' | 'radius' | 'angle' | 'chamfer' | 'thread'
  /** mm, or rad for an angle; a chamfer's leg; a thread's major diameter. */
  readonly value: number
  readonly tolerance: Tolerance
  /** Whether a shop can measure it; otherwise it stands in brackets. */
  readonly measurable: boolean
  /** Code of a fit (`H7`), written with the limits that it means. */
  readonly fitCode?: string
  /** A chamfer's angle, rad; 45° where it is left out. */
  readonly chamferAngle?: number
  readonly thread?: ThreadWords
  /** How many features have this size; 1 where it is left out. */
  readonly count?: number
  /** Words after it: `across flats`. */
  readonly after?: string
}

export interface ThreadWords {
  /** As the trade writes it: `M6`, `1/4-20 LH`. */
  readonly designation: string
  /** mm of full thread; through where it is left out. */
  readonly depth?: number
  /** mm; a thread on a shank has none. */
  readonly drill?: number
  /** What the drill is called where that is not its size: `No.7`. */
  readonly drillName?: string
  /** mm of full diameter; through where it is left out. */
  readonly drillDepth?: number
}

export interface SizeUnits {
  /** Unit of a bare number on the sheet. */
  readonly units: 'mm' | 'in'
  /** The other unit as well, in square brackets. */
  readonly both?: boolean
  /** Whether an inch size without a tolerance of its own that is a 64th is written as a fraction. */
  readonly fractions?: boolean
}

type Unit = SizeUnits['units']
const finest: Readonly<Record<Unit, number>> = { mm: 3, in: 4 }
const signs = { diameter: '⌀', radius: 'R', length: '', angle: '', chamfer: '', thread: '' } as const

/**
 * The text of a dimension, one string a line, bare numbers in the sheet's unit (ISO 129-1, ISO 406 in their spirit):
 *
 * `40` general tolerance · `40 ±0.1` · `12.7 +0.06/+0.02` deviations, upper first · `⌀25 H7 (25.000–25.021)` fit and its
 * limits · `(12.34)` not to be machined to · `10° ±15'` · `1 × 45°` · `3 × M6, 12 deep` above `drill ⌀5, 15 deep` ·
 * `25.4 [1]` both units.
 *
 * Where limits do not come out even in the unit they are rounded into the zone, never out of it (ISO 370, method B,
 * from memory), with more digits where the zone would close. Throws RangeError on numbers that are not finite, an upper
 * deviation below the lower one, or a thread without its words.
 */
export function dimensionText(size: Size, sheet: SizeUnits): readonly string[] {
  const { tolerance } = size
  if (tolerance.kind === 'limits' && !(tolerance.upper >= tolerance.lower)) {
    throw new RangeError(`deviations ${tolerance.lower} and ${tolerance.upper}`)
  }
  if (size.kind === 'thread') return threadLines(size, sheet)
  const written = size.kind === 'angle' ? angleText(size) : lengthText(size, sheet)
  const bracketed = tolerance.kind === 'reference' || !size.measurable ? `(${written})` : written
  const count = size.count === undefined || size.count === 1 ? '' : `${size.count} × `
  const after = size.after === undefined ? '' : ` ${size.after}`
  return [`${count}${bracketed}${after}`]
}

function lengthText(size: Size, sheet: SizeUnits): string {
  const angle = size.kind === 'chamfer' ? ` × ${plainAngle(size.chamferAngle ?? Math.PI / 4)}` : ''
  const sign = signs[size.kind]
  const first = `${sign}${inUnit(size, sheet.units, sheet.fractions === true)}`
  if (sheet.both !== true) return `${first}${angle}`
  const other = sheet.units === 'mm' ? 'in' : 'mm'
  const second =
    size.tolerance.kind === 'limits' ? limitsText(size.value, size.tolerance, other) : bare(size.value, other)
  return `${first} [${second}]${angle}`
}

function inUnit(size: Size, unit: Unit, fractions: boolean): string {
  const { value, tolerance, fitCode } = size
  if (tolerance.kind !== 'limits') {
    return fractions && unit === 'in'
      ? formatLength(value, 'in', { fractions: true }).replace(/ in$/, '')
      : `${bare(value, unit)}${fitCode === undefined ? '' : ` ${fitCode}`}`
  }
  if (fitCode !== undefined) return `${bare(value, unit)} ${fitCode} (${limitsText(value, tolerance, unit)})`
  const nominal = value / scaleOf(unit)
  const even = Math.abs(nominal - Number(formatNumber(nominal, finest[unit]))) < 1e-7
  return even ? deviationsText(value, tolerance, unit) : limitsText(value, tolerance, unit)
}

const scaleOf = (unit: Unit): number => (unit === 'mm' ? 1 : 25.4)
const bare = (value: number, unit: Unit): string =>
  signed(formatNumber(value / scaleOf(unit), finest[unit], { trim: true }))
/** A minus as long as the plus; the hyphen is too easily missed on paper. */
const signed = (text: string): string => text.replace('-', '−')

type Zone = { readonly lower: number; readonly upper: number }

/** Lower and upper number in the unit, rounded into the zone at as few digits as leave half of it. */
function roundedInward(lower: number, upper: number, unit: Unit): { low: number; high: number; decimals: number } {
  const [a, b] = [lower / scaleOf(unit), upper / scaleOf(unit)]
  for (let decimals = finest[unit]; ; decimals++) {
    const step = 10 ** decimals
    // A limit that is even in this unit carries binary dust and must not lose a whole digit to it.
    const low = Math.ceil(a * step - 1e-5) / step
    const high = Math.floor(b * step + 1e-5) / step
    if (high - low >= (b - a) / 2 || decimals === 8) return { low, high, decimals }
  }
}

function limitsText(value: number, zone: Zone, unit: Unit): string {
  const { low, high, decimals } = roundedInward(value + zone.lower, value + zone.upper, unit)
  return `${signed(formatNumber(low, decimals))}–${signed(formatNumber(high, decimals))}`
}

function deviationsText(value: number, zone: Zone, unit: Unit): string {
  const { low, high, decimals } = roundedInward(zone.lower, zone.upper, unit)
  const nominal = bare(value, unit)
  const deviation = (n: number) => {
    const text = formatNumber(Math.abs(n), decimals, { trim: true })
    return text === '0' ? '0' : `${n < 0 ? '−' : '+'}${text}`
  }
  if (high === -low && high > 0) return `${nominal} ±${formatNumber(high, decimals, { trim: true })}`
  return `${nominal} ${deviation(high)}/${deviation(low)}`
}

/** Degrees and whole minutes where that is the angle, else degrees with at most three decimals. */
function plainAngle(value: number): string {
  const minutes = (value * 180 * 60) / Math.PI
  if (Math.abs(minutes - Math.round(minutes)) > 1e-6) return signed(formatAngle(value))
  return signed(formatAngle(value, { minutes: true }).replace(/°0'$/, '°'))
}

function angleText({ value, tolerance }: Size): string {
  if (tolerance.kind !== 'limits') return plainAngle(value)
  const { lower, upper } = tolerance
  const small = (n: number) => plainAngle(Math.abs(n)).replace(/^0°(?=.)/, '')
  if (Math.abs(upper + lower) < 1e-12 && upper > 0) return `${plainAngle(value)} ±${small(upper)}`
  const deviation = (n: number) => (Math.abs(n) < 1e-12 ? '0' : `${n < 0 ? '−' : '+'}${small(n)}`)
  return `${plainAngle(value)} ${deviation(upper)}/${deviation(lower)}`
}

function threadLines(size: Size, sheet: SizeUnits): readonly string[] {
  const { thread } = size
  if (thread === undefined) throw new RangeError('a thread without its designation')
  const length = (value: number) => {
    const first = bare(value, sheet.units)
    return sheet.both === true ? `${first} [${bare(value, sheet.units === 'mm' ? 'in' : 'mm')}]` : first
  }
  const deep = (depth: number | undefined) => (depth === undefined ? ' through' : `, ${length(depth)} deep`)
  const count = size.count === undefined || size.count === 1 ? '' : `${size.count} × `
  const after = size.after === undefined ? '' : ` ${size.after}`
  if (thread.drill === undefined) {
    const long = thread.depth === undefined ? '' : `, ${length(thread.depth)} long`
    return [`${count}${thread.designation}${long}${after}`]
  }
  const name = thread.drillName === undefined ? '' : `${thread.drillName}: `
  return [
    `${count}${thread.designation}${deep(thread.depth)}${after}`,
    `drill ${name}⌀${length(thread.drill)}${deep(thread.drillDepth)}`,
  ]
}
