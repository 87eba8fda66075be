import { readFileSync } from 'node:fs'
import type { Problem } from '../../src/input/problem.ts'
import { readTables, type TableText } from '../../src/tables/read-tables.ts'
import { type TableName, tableNames } from '../../src/tables/table-name.ts'

/** Text of a table as shipped. */
export function shippedText(name: TableName): string {
  return readFileSync(new URL(`../../seeds/${name}.json`, import.meta.url), 'utf8')
}

/** All tables as shipped, with some texts replaced. */
export function textsWith(changed: Partial<Record<TableName, string>>): Record<TableName, TableText> {
  const texts = tableNames.map((name) => [name, { file: `${name}.json`, text: changed[name] ?? shippedText(name) }])
  return Object.fromEntries(texts)
}

/** Problems of the shipped tables with some replaced; none where they are good. */
export function problemsOf(changed: Partial<Record<TableName, string>>): readonly Problem[] {
  const result = readTables(textsWith(changed))
  return result.ok ? [] : result.problems
}

/** The shipped text with its one occurrence of `from` replaced; throws where that is not exactly one. */
export function edited(name: TableName, from: string, to: string): string {
  const text = shippedText(name)
  const parts = text.split(from)
  if (parts.length !== 2) throw new Error(`${from} stands ${parts.length - 1} times in ${name}.json`)
  return parts.join(to)
}

/** Line, from 1, and column, from 1, at which `mark` begins within the first line of `text` that holds `line`. */
export function positionOf(text: string, line: string, mark: string): { line: number; column: number } {
  const lines = text.split('\n')
  const at = lines.findIndex((candidate) => candidate.includes(line))
  const column = lines[at]?.indexOf(mark) ?? -1
  if (at < 0 || column < 0) throw new Error(`no ${mark} in a line with ${line}`)
  return { line: at + 1, column: column + 1 }
}
