import { readFileSync } from 'node:fs'

/** Rows of a reference table in this folder by column name; lines that begin with # name its sources. */
export function readReference(name: string): ReadonlyArray<Readonly<Record<string, string>>> {
  const lines = readFileSync(new URL(`${name}.csv`, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
  const columns = cells(lines[0] ?? '')
  return lines.slice(1).map((line) => Object.fromEntries(cells(line).map((cell, at) => [columns[at] ?? '', cell])))
}

/** Figure in a column. Throws where there is none, so that a check cannot pass by comparing nothing. */
export function figure(row: Readonly<Record<string, string>>, column: string): number {
  const value = row[column]
  if (value === undefined || value === '' || Number.isNaN(Number(value))) throw new RangeError(`${column}: ${value}`)
  return Number(value)
}

/** Text in a column; throws where the table has no such column. */
export function cell(row: Readonly<Record<string, string>>, column: string): string {
  const value = row[column]
  if (value === undefined) throw new RangeError(`no column ${column}`)
  return value
}

function cells(line: string): string[] {
  return [...line.matchAll(/("([^"]*)"|[^,]*)(?:,|$)/g)]
    .slice(0, line.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/).length)
    .map((match) => match[2] ?? match[1] ?? '')
}
