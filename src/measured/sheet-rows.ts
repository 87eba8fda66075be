import Papa from 'papaparse'
import { nearest } from '../input/nearest.ts'
import { firstBadCharacter } from '../input/plain-text.ts'
import type { Problem, Result, Where } from '../input/problem.ts'
import { type CellPlace, cellPlaces } from './cell-places.ts'
import type { WrittenSheet, WrittenValue } from './read-values.ts'

/** Columns that a filled-in sheet must have; all others are for people. */
export const neededColumns = ['part', 'size', 'measured'] as const
const otherColumns = ['revision', 'unit'] as const

/** Longest sheet that is read, in characters. */
const longest = 1_000_000

const isFilled = (cell: string): boolean => cell.trim() !== ''

/** The line by which some spreadsheets say what stands between their cells. */
const separatorLine = /^"?sep=([,;\t|])"?(?=\r?\n|$)/i

/**
 * The rows of a sheet in CSV (RFC 4180, or with semicolons or tabs as spreadsheets write it), each cell with its place. Rows
 * without a measured value are passed over. Columns are found by their names, in any order.
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
  const said = separatorLine.exec(source)
  // Emptied and not taken out: the lines below keep their numbers.
  const table = source.slice(said?.[0].length ?? 0)
  const { data, meta, errors } = Papa.parse<string[]>(table, {
    delimiter: said?.[1] ?? '',
    delimitersToGuess: [',', ';', '\t'],
  })
  const open = errors.find((e) => e.type === 'Quotes')
  const places = cellPlaces(table, meta.delimiter)
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
  const first = data.findIndex((row) => row.some(isFilled))
  if (first === -1) return refuse({ code: 'file-empty', found: 'nothing', allowed: 'a sheet with measured values' })
  const header = headerOf(data, first)
  if (header > first) {
    const found = data[first]!.filter(isFilled).join(', ')
    const remedy = `they stand in line ${places[header]![0]!.line}: remove what is above them`
    return refuse(
      { code: 'wrong-kind', found, allowed: 'the names of the columns in the first line', remedy },
      places[first]![0],
    )
  }
  const names = namesIn(data[header]!)
  const faults = columnFaults(names, places[header]!, file)
  if (faults.length > 0) return { ok: false, problems: faults }
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
    const measured = at(row, 'measured')
    const mark = at(row, 'revision')
    const name = `${at(row, 'part')} ${at(row, 'size')}`.trim()
    const cells = places[header + 1 + i]!
    const place = (column: string): Where => ({
      file,
      // A row may be shorter than the heading.
      ...(cells[names.indexOf(column)] ?? cells[0]),
      ...(name !== '' && { path: name }),
    })
    if (mark !== '') revisions.push({ mark, where: { file, ...cells[names.indexOf('revision')] } })
    if (measured === '') return
    values.push({
      part: at(row, 'part'),
      id: at(row, 'size'),
      text: measured,
      unit: at(row, 'unit'),
      decimalComma: meta.delimiter !== ',' || /^[-+]?\d+,(\d{1,2}|\d{4,})(\D|$)/.test(measured),
      where: place('measured'),
      partAt: place('part'),
      sizeAt: place('size'),
      unitAt: place('unit'),
    })
  })
  return { ok: true, value: { revisions, values } }
}

const namesIn = (row: readonly string[]): string[] => row.map((cell) => cell.trim().toLowerCase())

const neededIn = (names: readonly string[]): string[] => neededColumns.filter((column) => names.includes(column))

/** The row that has the most of the columns needed: a title may stand above it. */
function headerOf(rows: readonly (readonly string[])[], first: number): number {
  const counts = rows.map((row) => neededIn(namesIn(row)).length)
  const most = Math.max(...counts.slice(0, mostAbove))
  return most === 0 ? first : counts.indexOf(most)
}

/** Further down nobody looks for a heading. */
const mostAbove = 50

function columnFaults(names: readonly string[], places: readonly CellPlace[], file: string): Problem[] {
  const found = names.filter((name) => name !== '').join(', ')
  const missing = neededColumns.filter((column) => !names.includes(column))
  if (missing.length === neededColumns.length) {
    const allowed = `a first line with ${neededColumns.map((column) => `a column ${column}`).join(', ')}`
    const remedy = 'put the heading of inspection.csv back in its first line'
    return [{ code: 'missing-key', where: { file, ...places[0] }, found, allowed, remedy }]
  }
  const twice = [...neededColumns, ...otherColumns].flatMap((column): Problem[] => {
    const second = names.indexOf(column, names.indexOf(column) + 1)
    if (second <= 0) return []
    const where = { file, ...places[second], path: column }
    const remedy = 'give the column that does not count another name'
    return [
      { code: 'duplicate-key', where, found: `a second column ${column}`, allowed: 'one column of each name', remedy },
    ]
  })
  return [
    ...twice,
    ...missing.map((column): Problem => {
      const meant = nearest(column, names)
      return {
        code: 'missing-key',
        where: { file, ...places[0], path: column },
        found,
        allowed: `a column ${column}`,
        ...(meant !== undefined && { remedy: `name the column ${meant} ${column}` }),
      }
    }),
  ]
}
