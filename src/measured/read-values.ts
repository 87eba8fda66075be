import { nearest } from '../input/nearest.ts'
import type { Problem, Result, Where } from '../input/problem.ts'
import { readDocument } from '../input/read-document.ts'
import { formatQuantity } from '../quantity/format-quantity.ts'
import type { Units } from '../quantity/kind.ts'
import { parseQuantity } from '../quantity/parse-quantity.ts'
import { type AskedSize, type MeasuredValue, sizeName } from './measured-value.ts'
import { readSheetRows } from './sheet-rows.ts'

export interface ValuesWanted {
  /** Every size that may be given. */
  readonly sizes: readonly AskedSize[]
  /** Unit of a bare number where the sheet names none. */
  readonly units: Units
  /** Revision mark that the sheet must have been made for. */
  readonly revision: string
  /** Take a sheet of another revision all the same. */
  readonly anyRevision: boolean
}

/** One value as written, before it is read. */
export interface WrittenValue {
  readonly part: string
  readonly id: string
  readonly text: string
  /** Unit that the sheet names for it; a text may name its own. */
  readonly unit?: string
  /** Whether a comma in it can only be a decimal one. */
  readonly decimalComma: boolean
  readonly where: Where
  /** Where its names stand, and the unit that the sheet names. */
  readonly partAt: Where
  readonly sizeAt: Where
  readonly unitAt: Where
}

/** A sheet before its values are read. */
export interface WrittenSheet {
  readonly revisions: readonly { readonly mark: string; readonly where: Where }[]
  readonly values: readonly WrittenValue[]
}

/**
 * The measured values of a filled-in sheet: CSV as spreadsheets save it, or YAML (`revision`, then a map of sizes under
 * each part). Problems: a missing column, a size that nobody asked for, no number, a unit of another kind, a value that looks
 * like a slip of the unit, two values for one size, a sheet of another revision or without one, a sheet without values.
 */
export function readValues(text: string, file: string, wanted: ValuesWanted): Result<MeasuredValue[]> {
  const sheet = isYaml(file) ? fromYaml(text, file) : readSheetRows(text, file)
  if (!sheet.ok) return sheet
  const problems: Problem[] = []
  if (!wanted.anyRevision) problems.push(...revisionProblems(sheet.value, file, wanted.revision))
  const values: MeasuredValue[] = []
  const seen = new Map<string, WrittenValue>()
  for (const written of sheet.value.values) {
    const asked = wanted.sizes.find((s) => s.part === written.part && s.id === written.id)
    if (!asked) {
      const problem = unknownSize(written, wanted.sizes)
      // A part of YAML has its name in one place for all of its sizes.
      if (!problems.some(({ where }) => isSamePlace(where, problem.where))) problems.push(problem)
      continue
    }
    const before = seen.get(sizeName(asked))
    if (before) {
      const allowed = `one value for each size; line ${before.where.line} has one`
      problems.push({
        code: 'duplicate-key',
        where: written.where,
        found: `a second value for ${sizeName(asked)}`,
        allowed,
      })
      continue
    }
    seen.set(sizeName(asked), written)
    const read = readValue(written, asked, wanted.units)
    if (read.ok) values.push(read.value)
    else problems.push(...read.problems)
  }
  if (problems.length === 0 && values.length === 0) {
    problems.push({ code: 'file-empty', where: { file }, found: 'no measured value', allowed: 'one value at least' })
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: values }
}

const isYaml = (file: string): boolean => /\.ya?ml$/i.test(file)

function fromYaml(text: string, file: string): Result<WrittenSheet> {
  const read = readDocument(text, file)
  if (!read.ok) return read
  const { raw, locate, writtenAt } = read.value
  const values: WrittenValue[] = []
  const problems: Problem[] = []
  const revisions: WrittenSheet['revisions'][number][] = []
  for (const [part, sizes] of Object.entries(raw as Record<string, unknown>)) {
    if (part === 'revision') {
      // As it is written: 01234567 is a mark, whatever number it makes.
      const mark = typeof sizes === 'string' ? sizes : writtenAt(['revision'])
      revisions.push({ mark, where: { file, path: 'revision', ...locate(['revision'], 'value') } })
      continue
    }
    if (typeof sizes !== 'object' || sizes === null || Array.isArray(sizes)) {
      const where = { file, path: part, ...locate([part], 'value') }
      problems.push({
        code: 'wrong-kind',
        where,
        found: writtenAt([part]),
        allowed: 'sizes of that part, each with its value',
      })
      continue
    }
    for (const [id, value] of Object.entries(sizes)) {
      if (value === null) continue
      const path = `${part}.${id}`
      const where = { file, path, ...locate([part, id], 'value') }
      if (typeof value === 'string' || typeof value === 'number') {
        // As it is written: 20.10 is not the same reading as 20.1.
        const text = typeof value === 'string' ? value : writtenAt([part, id])
        const partAt = { file, path: part, ...locate([part], 'key') }
        const sizeAt = { file, path, ...locate([part, id], 'key') }
        values.push({ part, id, text, decimalComma: false, where, partAt, sizeAt, unitAt: where })
      } else problems.push({ code: 'wrong-kind', where, found: writtenAt([part, id]), allowed: 'a length or an angle' })
    }
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: { revisions, values } }
}

function revisionProblems({ revisions }: WrittenSheet, file: string, wanted: string): Problem[] {
  const remedy = 'measure against the package of this parameter file, or say --any-revision'
  const [first] = revisions
  if (!first) {
    return [
      { code: 'missing-key', where: { file, path: 'revision' }, found: 'no revision mark', allowed: wanted, remedy },
    ]
  }
  const other = revisions.find(({ mark }) => !isSameMark(mark, wanted))
  return other ? [{ code: 'contradiction', where: other.where, found: other.mark, allowed: wanted, remedy }] : []
}

/** A spreadsheet takes 00123456 and 12345e12 for numbers, and writes 123456 and 1,23E+16. */
function isSameMark(mark: string, wanted: string): boolean {
  if (mark === wanted) return true
  if (/^\d+$/.test(wanted)) return /^\d+$/.test(mark) && Number(mark) === Number(wanted)
  const shown = /^(\d)[.,](\d{1,15})e\+(\d+)$/i.exec(mark)
  if (!shown || !/^\d+e\d+$/.test(wanted)) return false
  const [, whole, decimals, exponent] = shown
  return Number(wanted).toExponential(decimals!.length) === `${whole}.${decimals}e+${exponent}`
}

const isSamePlace = (a: Where, b: Where): boolean => a.line === b.line && a.column === b.column

function unknownSize({ part, id, partAt, sizeAt }: WrittenValue, sizes: readonly AskedSize[]): Problem {
  const parts = [...new Set(sizes.map((s) => s.part))]
  const ids = sizes.flatMap((s) => (s.part === part ? [s.id] : []))
  const having = parts.filter((name) => sizes.some((s) => s.part === name && s.id === id))
  if (ids.length === 0) {
    const meant = nearest(part, parts) ?? having[0]
    const found = part !== '' ? `the part ${part}` : `a value without the name of its ${id === '' ? 'size' : 'part'}`
    return {
      code: 'unknown-key',
      where: partAt,
      found,
      allowed: parts.join(', '),
      ...(meant !== undefined && { remedy: `write ${meant}` }),
    }
  }
  const meant = nearest(id, ids)
  const remedy = meant !== undefined ? `write ${meant}` : having[0] && `that is a size of ${having.join(' and ')}`
  return {
    code: 'unknown-key',
    where: sizeAt,
    found: id === '' ? 'a value without the name of its size' : id,
    allowed: `a size of ${part}: ${ids.join(', ')}`,
    ...(remedy !== undefined && { remedy }),
  }
}

/** Factors by which a value is off when it was written in another unit, or its point has moved. */
const slips = [25.4, 10, 100, 1000, 39.37] as const

function readValue(written: WrittenValue, asked: AskedSize, units: Units): Result<MeasuredValue> {
  const { text, unit, where } = written
  const plain = written.decimalComma ? text.replace(/(\d),(\d)/, '$1.$2') : text
  const bare = /^[-+]?[\d.,/\s-]+$/.test(plain.trim())
  const read = parseQuantity(asked.kind, bare && unit !== undefined && unit !== '' ? `${plain} ${unit}` : plain, units)
  if (!read.ok) {
    const { code, allowed } = read
    if (bare && code === 'wrong-unit') {
      return { ok: false, problems: [{ code, where: written.unitAt, found: unit ?? '', allowed }] }
    }
    const remedy = numberRemedy(text) ?? read.remedy
    return { ok: false, problems: [{ code, where, found: text, allowed, ...(remedy !== undefined && { remedy }) }] }
  }
  const { value } = read
  const { part, id, nominal } = asked
  if (asked.kind === 'angle' && Math.abs(value) >= rightAngle && Math.abs(nominal) < rightAngle) {
    return { ok: false, problems: [{ code: 'out-of-range', where, found: text, allowed: 'less than 90 deg' }] }
  }
  const off = Math.abs(nominal) > 1e-3 ? Math.abs(value / nominal) : 1
  // A number with its unit beside it is meant as it stands.
  if (bare && slips.some((s) => Math.abs(off * s - 1) < 0.25 || Math.abs(off / s - 1) < 0.25)) {
    const shown = formatQuantity(asked.kind, value, units)
    return {
      ok: false,
      problems: [
        {
          code: 'out-of-range',
          where,
          found: `${text.trim()}, ${off > 1 ? `${off.toFixed(0)} times` : `one ${(1 / off).toFixed(0)}th of`} the nominal size`,
          allowed: `about ${formatQuantity(asked.kind, nominal, units)}`,
          remedy: `write the value in the unit of the sheet; if it is meant, write it with its unit: ${shown}`,
        },
      ],
    }
  }
  return { ok: true, value: { part, id, value, where } }
}

/** Beyond it no face or facet can be built that leans less by design. */
const rightAngle = Math.PI / 2

/** What to do about a cell that is no number, where that can be told from it. */
function numberRemedy(text: string): string | undefined {
  if (!/\d/.test(text)) return 'leave it empty where nothing was measured'
  const [, sign = '', whole = '', mark = '', decimals = ''] = grouped.exec(text) ?? []
  // 1.234 and 1,234 can be read either way.
  const isSure = decimals !== '' || whole.split(mark).length > 2 || !/[.,]/.test(mark)
  return whole !== '' && isSure
    ? `write ${sign}${whole.replace(/\D/g, '')}${decimals}, without a mark between thousands`
    : undefined
}

/** `1.234,5`, `1,234.5`, `1'234.5`: a mark between thousands, and another one before the decimals. */
const grouped = /^([-+]?)(\d{1,3}(?:([.,'’ ])\d{3})(?:\3\d{3})*)((?!\3)[.,]\d+)?(?=\D|$)/
