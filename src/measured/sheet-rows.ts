import Papa from 'papaparse'
import { nearest } from '../input/nearest.ts'
import { firstBadCharacter } from '../input/plain-text.ts'
import type { Problem, Result } from '../input/problem.ts'
import { type CellPlace, cellPlaces } from './cell-places.ts'
import type { WrittenSheet, WrittenValue } from './read-values.ts'

/** Columns that a filled-in sheet must have; all others are for people. */
export const neededColumns = ['part', 'size', 'measured'] as const
export const otherColumns = ['revision', 'unit'] as const

/** Longest sheet that is read, in characters. */
const longest = 1_000_000

const isFilled = (cell: string): boolean => cell.trim() !== ''

/**
 * The rows of a sheet in CSV (RFC 4180, or with semicolons or tabs as spreadsheets write it), each cell with its place. Rows without a measured value are passed over. Columns are found by their names, in any order.
 */
export function readSheetRows(text: string, file: string): Result<WrittenSheet> {
  const refuse = (problem: Omit<Problem, 'where'>, place?: CellPlace): Result<never> => ({
    ok: false,
    problems: [{ ...problem, where: { file, ...place } }],
  })
  const source = text.startsWith('\ufeff') ? text.slice(1) : text
  if (source.length > longest) {
    return refuse({ code: 'file-too-large', found: `${source.length} characters`, allowed: `at most ${longest}` })
  }
  const bad = firstBadCharacter(source)
  if (bad !== undefined) {
    const before = source.slice(0, bad.at)
    return refuse(
      { code: 'not-text', found: bad.name, allowed: 'plain text' },
      { line: before.split('\n').length, column: bad.at - before.lastIndexOf('\n') },
    )
  }
  const { data, meta, errors } = Papa.parse<string[]>(source, { delimitersToGuess: [',', ';', '\t'] })
  const open = errors.find((e) => e.type === 'Quotes')
  const places = cellPlaces(source, meta.delimiter)
  if (open) {
    return refuse(
      {
        code: 'not-text',
        found: 'a quotation mark that is not closed',
        allowed: 'CSV',
        remedy: 'close it, or write two for one that belongs to the text',
      },
      places[open.row ?? 0]?.[0],
    )
  }
  const header = data.findIndex((row) => row.some(isFilled))
  if (header === -1) return refuse({ code: 'file-empty', found: 'nothing', allowed: 'a sheet with measured values' })
  const names = data[header]!.map((cell) => cell.trim().toLowerCase())
  const missing = neededColumns.filter((column) => !names.includes(column))
  if (missing.length > 0) {
    return {
      ok: false,
      problems: missing.map((column) => {
        const meant = nearest(column, names)
        return {
          code: 'missing-key' as const,
          where: { file, ...places[header]![0]!, path: column },
          found: names.filter((n) => n !== '').join(', '),
          allowed: `a column ${column}`,
          ...(meant !== undefined && { remedy: `name the column ${meant} ${column}` }),
        }
      }),
    }
  }
  const long = data.findIndex(
    (row, i) => i > header && row.length > names.length && row.slice(names.length).some(isFilled),
  )
  if (long !== -1) {
    return refuse(
      {
        code: 'wrong-kind',
        found: `${data[long]!.length} cells under ${names.length} columns`,
        allowed: 'a cell under each column',
        remedy: 'put a number with a decimal comma in quotation marks, or write it with a point',
      },
      places[long]![names.length],
    )
  }
  const at = (row: readonly string[], column: string): string => row[names.indexOf(column)]?.trim() ?? ''
  const revisions: WrittenSheet['revisions'][number][] = []
  const values: WrittenValue[] = []
  data.slice(header + 1).forEach((row, i) => {
    const placeOf = (column: string) => places[header + 1 + i]![names.indexOf(column)]
    const name = `${at(row, 'part')} ${at(row, 'size')}`.trim()
    const where = {
      file,
      ...placeOf('measured'),
      ...(name !== '' && { path: name }),
    }
    const measured = at(row, 'measured')
    const mark = at(row, 'revision')
    if (mark !== '') revisions.push({ mark, where: { file, ...placeOf('revision') } })
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
