import Papa from 'papaparse'
import { nearest } from '../input/nearest.ts'
import { firstBadCharacter } from '../input/plain-text.ts'
import type { Problem, Result } from '../input/problem.ts'
import type { WrittenSheet, WrittenValue } from './read-values.ts'

/** Columns that a filled-in sheet must have; all others are for people. */
export const neededColumns = ['part', 'size', 'measured'] as const
export const otherColumns = ['revision', 'unit'] as const

/** Longest sheet that is read, in characters. */
const longest = 1_000_000

/**
 * The rows of a sheet in CSV (RFC 4180, or with semicolons or tabs as spreadsheets write it), each with the line it stands
 * on. Rows without a measured value are passed over. Columns are found by their names, in any order.
 */
export function readSheetRows(text: string, file: string): Result<WrittenSheet> {
  const refuse = (problem: Omit<Problem, 'where'>, line?: number): Result<never> => ({
    ok: false,
    problems: [{ ...problem, where: { file, ...(line !== undefined && { line, column: 1 }) } }],
  })
  const source = text.startsWith('\ufeff') ? text.slice(1) : text
  if (source.length > longest) {
    return refuse({ code: 'file-too-large', found: `${source.length} characters`, allowed: `at most ${longest}` })
  }
  const bad = firstBadCharacter(source)
  if (bad !== undefined) {
    return refuse(
      { code: 'not-text', found: bad.name, allowed: 'plain text' },
      source.slice(0, bad.at).split('\n').length,
    )
  }
  if (source.trim() === '')
    return refuse({ code: 'file-empty', found: 'nothing', allowed: 'a sheet with measured values' })
  const { data, meta, errors } = Papa.parse<string[]>(source, { delimitersToGuess: [',', ';', '\t'] })
  const open = errors.find((e) => e.type === 'Quotes')
  if (open) {
    return refuse(
      { code: 'not-text', found: 'a quotation mark that is not closed', allowed: 'CSV' },
      (open.row ?? 0) + 1,
    )
  }
  const lines = lineNumbers(data)
  const header = data.findIndex((row) => row.some((cell) => cell.trim() !== ''))
  const names = data[header]!.map((cell) => cell.trim().toLowerCase())
  const missing = neededColumns.filter((column) => !names.includes(column))
  if (missing.length > 0) {
    return {
      ok: false,
      problems: missing.map((column) => {
        const meant = nearest(column, names)
        return {
          code: 'missing-key' as const,
          where: { file, line: lines[header]!, column: 1, path: column },
          found: names.filter((n) => n !== '').join(', '),
          allowed: `a column ${column}`,
          ...(meant !== undefined && { remedy: `name the column ${meant} ${column}` }),
        }
      }),
    }
  }
  const at = (row: readonly string[], column: string): string => row[names.indexOf(column)]?.trim() ?? ''
  const revisions: WrittenSheet['revisions'][number][] = []
  const values: WrittenValue[] = []
  data.slice(header + 1).forEach((row, i) => {
    const line = lines[header + 1 + i]!
    const where = {
      file,
      line,
      column: 1 + names.indexOf('measured'),
      path: `${at(row, 'part')} ${at(row, 'size')}`.trim(),
    }
    const measured = at(row, 'measured')
    const mark = at(row, 'revision')
    if (mark !== '') revisions.push({ mark, where: { file, line, column: 1 + names.indexOf('revision') } })
    if (measured === '') return
    values.push({
      part: at(row, 'part'),
      id: at(row, 'size'),
      text: measured,
      unit: at(row, 'unit'),
      decimalComma: meta.delimiter !== ',' || /^[-+]?\d+,(\d{1,2}|\d{4,})(\D|$)/.test(measured),
      where,
    })
  })
  return { ok: true, value: { revisions, values } }
}

/** The line on which each row begins, from 1: a cell in quotation marks may hold line ends. */
function lineNumbers(rows: readonly (readonly string[])[]): number[] {
  let line = 1
  return rows.map((row) => {
    const begins = line
    line += 1 + row.join('').split('\n').length - 1
    return begins
  })
}
