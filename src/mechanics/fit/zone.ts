import { nearest } from '../../input/nearest.ts'
import type { Result } from '../../input/problem.ts'
import type { Deviations } from '../../tables/ansi-b4-1.ts'
import type { Iso286Row, ShaftLetter, ToleranceGrade } from '../../tables/iso-286.ts'
import { InputFaults } from './input-faults.ts'
import { type Limits, limitsFrom, toNanometre } from './limits.ts'
import { sizeStep } from './size-step-of.ts'

/** A tolerance zone of ISO 286: hole H7, shaft s6. */
export interface Zone {
  readonly of: 'hole' | 'shaft'
  /** Letter in small: a hole `H` is `h` here. */
  readonly letter: ShaftLetter | 'js'
  readonly grade: Grade
}

const grades = [5, 6, 7, 8, 9, 10, 11] as const
type Grade = (typeof grades)[number]

/** ISO 286-1 ends at IT18 (from memory): a number beyond it is a slip, and nothing is near it. */
const coarsest = 18
/** Grades of most interference fits: common practice, no source. */
const usual = { hole: 7, shaft: 6 } as const

const nearestGradeTo = (number: number) =>
  grades.reduce((a, b) => (Math.abs(b - number) < Math.abs(a - number) ? b : a))

/** Letters that the tables hold, in the order of ISO 286. */
const letters = ['f', 'g', 'h', 'js', 'k', 'm', 'n', 'p', 'r', 's', 't', 'u', 'x'] as const

/** All letters of ISO 286-1, from the loosest to the tightest; j and js lie together. */
const isoLetters = 'a b c cd d e ef f fg g h j js k m n p r s t u v x y z za zb zc'.split(' ')

/**
 * Reads one zone: `H7` for a hole, in capitals; `s6` for a shaft, in small letters. Problems name what is allowed and
 * the nearest zone: not a zone, wrong capitals, a letter or grade that ISO 286 or the tables do not have.
 */
export function readZone(text: string, of: Zone['of'], path = 'code'): Result<Zone> {
  const faults = new InputFaults()
  const written = text.trim()
  const [, rawLetter, rawGrade] = /^([A-Za-z]{1,2})([0-9]{1,2})$/.exec(written) ?? []
  if (rawLetter === undefined || rawGrade === undefined) {
    const near = nearest(written, allZones(of))
    const remedy = near === undefined ? undefined : `write ${near}`
    faults.add(
      path,
      'wrong-kind',
      written,
      `letter and grade of a ${of}, such as ${of === 'hole' ? 'H7' : 's6'}`,
      remedy,
    )
    return { ok: false, problems: faults.problems }
  }
  const small = rawLetter.toLowerCase()
  const letter = letters.find((held) => held === small)
  const number = Number(rawGrade)
  // `H07` is no way to write H7.
  const grade = rawGrade.startsWith('0') ? undefined : grades.find((held) => held === number)
  const nearestLetter = letter ?? nearestLetterTo(small)
  const nearestGrade = grade ?? (number > coarsest ? usual[of] : nearestGradeTo(number))
  const remedy = `write ${zoneName({ of, letter: nearestLetter, grade: nearestGrade })}`
  if (letter === undefined) {
    const code = isoLetters.includes(small) ? 'not-in-table' : 'unknown-choice'
    faults.add(path, code, written, `${of}s ${letters.map((held) => cased(held, of)).join(', ')}`, remedy)
  } else if (rawLetter !== cased(letter, of)) {
    const rule = of === 'hole' ? 'a hole in capitals' : 'a shaft in small letters'
    faults.add(path, 'unknown-choice', written, rule, remedy)
  }
  if (grade === undefined) faults.add(path, 'not-in-table', written, 'grades 5 to 11', remedy)
  return faults.result(() => ({ of, letter: letter!, grade: grade! }))
}

/** The zone as the trade writes it. */
export function zoneName({ of, letter, grade }: Zone): string {
  return `${cased(letter, of)}${grade}`
}

/**
 * Deviations from nominal, mm, of a zone at a nominal size, mm (over < size <= up to). Holes follow from the shafts by
 * the rules of ISO 286-1 (from memory): F, G, H mirror the shaft; JS is symmetric; K, M, N to IT8 and P to X to IT7 are
 * the mirrored shaft plus the difference to the next finer grade, over 3 mm. Problems: a size that the table does not
 * hold; t up to 24 mm; K above IT8; the finest grades of K to X, whose rule needs IT4.
 */
export function zoneDeviations(
  zone: Zone,
  size: number,
  rows: readonly Iso286Row[],
  path = 'code',
): Result<Deviations> {
  const step = sizeStep(rows, size, 'nominal')
  if (!step.ok) return step
  const row = step.value
  const faults = new InputFaults()
  const width = row.grades[gradeName(zone.grade)]
  const refuse = (allowed: string, instead: Partial<Zone>) =>
    faults.add(path, 'not-in-table', zoneName(zone), allowed, `write ${zoneName({ ...zone, ...instead })}`)
  if (zone.letter === 'js') return { ok: true, value: between(-width / 2, width / 2) }
  const deviation = zone.letter === 't' ? row.shaft.t : row.shaft[zone.letter]
  if (deviation === undefined) {
    // ISO 286-1 has no t there and points to u.
    refuse(`${cased('t', zone.of)} over 24 mm only`, { letter: 'u' })
    return { ok: false, problems: faults.problems }
  }
  const { letter, grade } = zone
  if (letter === 'f' || letter === 'g' || letter === 'h') {
    return { ok: true, value: zone.of === 'shaft' ? below(deviation, width) : over(0 - deviation, width) }
  }
  if (zone.of === 'shaft') {
    // k: the tabulated deviation holds for IT4 to IT7, and is 0 for coarser grades.
    return { ok: true, value: over(letter === 'k' && grade > 7 ? 0 : deviation, width) }
  }
  if (row.upTo <= 3) return { ok: true, value: below(0 - deviation, width) }
  if (letter === 'k' && grade > 8) refuse('K up to grade 8', { grade: 8 })
  if (grade === 5) refuse(`${cased(letter, zone.of)} from grade 6: the rule for grade 5 needs IT4`, { grade: 6 })
  if (faults.problems.length > 0) return { ok: false, problems: faults.problems }
  if (letter === 'n' && grade > 8) return { ok: true, value: below(0, width) }
  const coarsestWithStep = letter === 'k' || letter === 'm' || letter === 'n' ? 8 : 7
  const finer = grades.find((candidate) => candidate === grade - 1)
  const toFiner = grade <= coarsestWithStep && finer !== undefined ? width - row.grades[gradeName(finer)] : 0
  return { ok: true, value: below(toFiner - deviation, width) }
}

/** Limits of one zone, mm at 20 °C: `H7` at 25 mm is 25.000 to 25.021. Problems as `readZone` and `zoneDeviations`. */
export function zoneLimits(
  code: string,
  of: Zone['of'],
  nominal: number,
  rows: readonly Iso286Row[],
  path = 'code',
): Result<Limits> {
  const zone = readZone(code, of, path)
  if (!zone.ok) return zone
  const deviations = zoneDeviations(zone.value, nominal, rows, path)
  return deviations.ok ? { ok: true, value: limitsFrom(nominal, deviations.value) } : deviations
}

function allZones(of: Zone['of']): string[] {
  return letters.flatMap((letter) => grades.map((grade) => zoneName({ of, letter, grade })))
}

function cased(letter: string, of: Zone['of']): string {
  return of === 'hole' ? letter.toUpperCase() : letter
}

function gradeName(grade: Grade): ToleranceGrade {
  return `IT${grade}`
}

/** The held letter that lies nearest in the order of the standard, the tighter of two; of no letter of it, by alphabet. */
function nearestLetterTo(small: string): (typeof letters)[number] {
  const at = isoLetters.indexOf(small)
  const place =
    at >= 0
      ? (letter: string) => isoLetters.indexOf(letter) - at
      : (letter: string) => letter.charCodeAt(0) - small.charCodeAt(0)
  return letters.reduce((a, b) => (Math.abs(place(b)) <= Math.abs(place(a)) ? b : a))
}

function over(lower: number, width: number): Deviations {
  return between(lower, lower + width)
}

function below(upper: number, width: number): Deviations {
  return between(upper - width, upper)
}

function between(lower: number, upper: number): Deviations {
  return { lower: toNanometre(lower), upper: toNanometre(upper) }
}
