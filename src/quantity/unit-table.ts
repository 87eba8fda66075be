import { dividedBy, type Fraction, fraction, fractionOfDecimal, negated, times } from './fraction.ts'
import type { QuantityKind, Units } from './kind.ts'

/** One unit of one kind: internal value = (number + offset) × scale, times π where `pi` is set. */
export interface Unit {
  /** As it is printed. */
  readonly symbol: string
  /** Other ways to write it; compared after `unitKey`. */
  readonly spellings: readonly string[]
  readonly scale: Fraction
  readonly pi?: boolean
  readonly offset?: Fraction
}

// Sources of the factors: all are exact by definition. International inch 25.4 mm and pound 0.45359237 kg, standard
// gravity 9.80665 m/s², mechanical horsepower 550 ft·lbf/s, metric horsepower 75 kgf·m/s: NIST SP 811, from memory.
const inch = fractionOfDecimal('25.4')
const foot = fractionOfDecimal('304.8')
const pound = fractionOfDecimal('0.45359237')
const gravity = fractionOfDecimal('9.80665')
const poundForce = times(pound, gravity)
const squareInch = times(inch, inch)
const per = (a: Fraction, whole: number) => dividedBy(a, fraction(whole))
const one = fraction(1)

const unit = (symbol: string, spellings: readonly string[], scale: Fraction): Unit => ({ symbol, spellings, scale })
const piUnit = (symbol: string, spellings: readonly string[], scale: Fraction): Unit => ({
  symbol,
  spellings,
  scale,
  pi: true,
})

/** The units of each kind that are understood; what a bare number means is in `fileUnit`. */
export const unitTable: Readonly<Record<QuantityKind, readonly Unit[]>> = {
  length: [
    unit('mm', ['millimeter', 'millimeters', 'millimetre', 'millimetres'], one),
    unit('in', ['inch', 'inches', '"', "''"], inch),
    unit('cm', [], fraction(10)),
    unit('m', [], fraction(1000)),
    unit('µm', ['um', 'micron', 'microns'], fraction(1, 1000)),
    unit('thou', ['thousandth', 'thousandths'], per(inch, 1000)),
    unit('µin', ['uin', 'microinch', 'microinches'], per(inch, 1_000_000)),
    unit('ft', ['foot', 'feet', "'"], foot),
  ],
  angle: [
    piUnit('°', ['deg', 'degree', 'degrees'], fraction(1, 180)),
    unit('rad', ['radian', 'radians'], one),
    piUnit("'", ['min', 'minute', 'minutes', 'arcmin'], fraction(1, 10_800)),
    piUnit('"', ['sec', 'second', 'seconds', 'arcsec', "''"], fraction(1, 648_000)),
  ],
  torque: [
    unit('N·m', ['nm', 'm·n'], fraction(1000)),
    unit('in·lbf', ['in·lb', 'lbf·in', 'lb·in', 'inlb', 'inlbf', 'in·lbs'], times(inch, poundForce)),
    unit('N·mm', ['nmm', 'mm·n'], one),
    unit('ft·lbf', ['ft·lb', 'lbf·ft', 'lb·ft', 'ftlb', 'ftlbf', 'ft·lbs'], times(foot, poundForce)),
  ],
  power: [
    unit('kW', [], fraction(1000)),
    unit('hp', [], per(times(times(fraction(550), foot), poundForce), 1000)),
    unit('W', [], one),
    unit('PS', [], per(times(fraction(75_000), gravity), 1000)),
  ],
  'rotation-speed': [
    piUnit('rev/min', ['rpm', 'r/min', '1/min', '/min', 'min-1', 'u/min'], fraction(1, 30)),
    piUnit('rev/s', ['rps', 'r/s', '1/s', '/s', 's-1', 'hz'], fraction(2)),
    unit('rad/s', [], one),
  ],
  'cutting-speed': [
    unit('m/min', [], fraction(1000, 60)),
    unit('ft/min', ['sfm', 'sfpm', 'fpm'], per(foot, 60)),
    unit('mm/s', [], one),
    unit('m/s', [], fraction(1000)),
    unit('mm/min', [], fraction(1, 60)),
    unit('ft/s', [], foot),
    unit('in/min', ['ipm'], per(inch, 60)),
  ],
  temperature: [
    unit('°C', ['c', 'degc'], one),
    { symbol: '°F', spellings: ['f', 'degf'], scale: fraction(5, 9), offset: fraction(-32) },
    { symbol: 'K', spellings: [], scale: one, offset: negated(fractionOfDecimal('273.15')) },
  ],
  'temperature-difference': [
    unit('°C', ['c', 'degc'], one),
    unit('°F', ['f', 'degf'], fraction(5, 9)),
    unit('K', [], one),
  ],
  mass: [
    unit('kg', [], one),
    unit('lb', ['lbs', 'lbm'], pound),
    unit('g', [], fraction(1, 1000)),
    unit('oz', [], per(pound, 16)),
  ],
  force: [
    unit('N', [], one),
    unit('lbf', ['lb', 'lbs'], poundForce),
    unit('kN', [], fraction(1000)),
    unit('kgf', [], gravity),
  ],
  pressure: [
    unit('MPa', ['n/mm2'], one),
    unit('psi', ['lbf/in2'], dividedBy(poundForce, squareInch)),
    unit('GPa', ['kn/mm2'], fraction(1000)),
    unit('ksi', [], dividedBy(times(fraction(1000), poundForce), squareInch)),
    unit('bar', [], fraction(1, 10)),
    unit('kPa', [], fraction(1, 1000)),
    unit('Pa', [], fraction(1, 1_000_000)),
  ],
  density: [
    unit('kg/m³', [], one),
    unit('lb/in³', [], dividedBy(times(pound, fraction(1_000_000_000)), times(squareInch, inch))),
    unit('g/cm³', ['g/cc', 'kg/dm3'], fraction(1000)),
    unit('lb/ft³', [], dividedBy(times(pound, fraction(1_000_000_000)), times(times(foot, foot), foot))),
  ],
  expansion: [
    unit('1/K', ['/k', '1/c', '/c', '1/degc', '/degc', 'k-1', 'mm/(mm·k)', 'mm/mm/k', 'mm/mm/c'], one),
    unit('1/°F', ['1/f', '/f', '1/degf', '/degf', 'in/(in·f)', 'in/in/f'], fraction(9, 5)),
    unit('µm/(m·K)', ['um/m/k', 'um/(m·c)', 'um/m/c', 'ppm/k', 'ppm/c'], fraction(1, 1_000_000)),
    unit('µin/(in·°F)', ['uin/in/f', 'ppm/f'], fraction(9, 5_000_000)),
  ],
  ratio: [unit('', [], one), unit('%', ['percent'], fraction(1, 100))],
}

const bareNumber: Readonly<Record<Units, Readonly<Record<QuantityKind, string>>>> = {
  mm: {
    length: 'mm',
    angle: '°',
    torque: 'N·m',
    power: 'kW',
    'rotation-speed': 'rev/min',
    'cutting-speed': 'm/min',
    temperature: '°C',
    'temperature-difference': '°C',
    mass: 'kg',
    force: 'N',
    pressure: 'MPa',
    density: 'kg/m³',
    expansion: '1/K',
    ratio: '',
  },
  in: {
    length: 'in',
    angle: '°',
    torque: 'in·lbf',
    power: 'hp',
    'rotation-speed': 'rev/min',
    'cutting-speed': 'ft/min',
    temperature: '°F',
    'temperature-difference': '°F',
    mass: 'lb',
    force: 'lbf',
    pressure: 'psi',
    density: 'lb/in³',
    expansion: '1/°F',
    ratio: '',
  },
}

/** The unit that a bare number of this kind has in a file with these units. */
export function fileUnit(kind: QuantityKind, units: Units): Unit {
  const symbol = bareNumber[units][kind]
  const found = unitTable[kind].find((candidate) => candidate.symbol === symbol)
  if (found === undefined) throw new RangeError(`no unit ${symbol} for ${kind}`)
  return found
}

/** Symbol of that unit as printed, `''` for a plain number. */
export function unitSymbol(kind: QuantityKind, units: Units): string {
  return fileUnit(kind, units).symbol
}

/**
 * A written unit brought to one form: no spaces, small letters, one multiplication sign, plain powers, `u` for micro.
 * `min-1` keeps its hyphen, because there it is a power; elsewhere hyphen, dot and space multiply.
 */
export function unitKey(written: string): string {
  return written
    .trim()
    .replaceAll('µ', 'u')
    .replaceAll('μ', 'u')
    .replaceAll('⁻¹', '-1')
    .replaceAll('²', '2')
    .replaceAll('³', '3')
    .replaceAll('^', '')
    .toLowerCase()
    .replace(/\s*\/\s*/g, '/')
    .replace(/(?<=[a-z])(?:\s*[·⋅∙*.]\s*|\s+|-)(?=[a-z])/g, '·')
    .replace(/°\s*/g, (_, at: number, all: string) => (/^°\s*[cf]/.test(all.slice(at)) ? '' : '°'))
    .replace(/deg·?(?=[cf]$)/g, '')
}

/** Finds a unit of this kind by what was written, `undefined` where there is none. */
export function findUnit(kind: QuantityKind, written: string): Unit | undefined {
  // Capitals carry meaning in one place only: a millipascal is no megapascal.
  if (kind === 'pressure' && /^m(?=pa)/i.test(written.trim()) && written.trim().startsWith('m')) return undefined
  const key = unitKey(written)
  return unitTable[kind].find(
    (candidate) => unitKey(candidate.symbol) === key || candidate.spellings.some((other) => unitKey(other) === key),
  )
}

/** Printed symbols of all units of a kind, for messages: `mm, in, cm, m, µm, thou, µin, ft`. */
export function unitSymbols(kind: QuantityKind): string[] {
  return unitTable[kind].map((candidate) => candidate.symbol).filter((symbol) => symbol !== '')
}
