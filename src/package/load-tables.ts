import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { nearest } from '../input/nearest.ts'
import type { Problem, Result } from '../input/problem.ts'
import { readTables, type Tables, type TableText } from '../tables/read-tables.ts'
import { type TableName, tableNames } from '../tables/table-name.ts'
import { systemCode } from './disk-problem.ts'
import { readTextFile } from './read-file.ts'

/** Our own tables; the same path from `src/package/` and from `dist/package/`. */
const ownFolder = new URL('../../seeds/', import.meta.url)

/**
 * Reads the seed tables. A table found in the shop's own folder replaces ours of the same name as a whole; the others
 * are ours. Files whose names begin with a dot are passed over; any other file that is no table is a problem, because a
 * misspelled table would otherwise be ignored without a word.
 */
export function loadTables(shopFolder?: string): Result<Tables> {
  if (shopFolder !== undefined) return readAll(shopFolder)
  own ??= readAll(undefined)
  return own
}

/** Ours do not change while the program runs: read once. */
let own: Result<Tables> | undefined

function readAll(shopFolder: string | undefined): Result<Tables> {
  const { tables: shopTables, problems } =
    shopFolder === undefined ? { tables: [], problems: [] } : tablesIn(shopFolder)
  const texts: Partial<Record<TableName, TableText>> = {}
  for (const name of tableNames) {
    const text =
      shopFolder !== undefined && shopTables.includes(name)
        ? readText(join(shopFolder, `${name}.json`), join(shopFolder, `${name}.json`))
        : readText(fileURLToPath(new URL(`${name}.json`, ownFolder)), `seeds/${name}.json`)
    if (text.ok) texts[name] = text.value
    else problems.push(...text.problems)
  }
  const tables = isComplete(texts) ? readTables(texts) : undefined
  if (tables !== undefined && !tables.ok) problems.push(...tables.problems)
  if (tables === undefined || !tables.ok || problems.length > 0) return { ok: false, problems }
  return tables
}

function isComplete(texts: Partial<Record<TableName, TableText>>): texts is Record<TableName, TableText> {
  return tableNames.every((name) => texts[name] !== undefined)
}

/** Names of the tables in a shop's folder, and a problem for each other file. */
function tablesIn(folder: string): { readonly tables: readonly TableName[]; readonly problems: Problem[] } {
  let files: string[]
  try {
    files = readdirSync(folder).toSorted()
  } catch (error) {
    return { tables: [], problems: [noFolder(error, folder)] }
  }
  const tables: TableName[] = []
  const problems: Problem[] = []
  for (const file of files) {
    if (file.startsWith('.')) continue
    const table = tableNames.find((name) => file === `${name}.json`)
    if (table !== undefined) tables.push(table)
    else problems.push(unknownFile(folder, file))
  }
  return { tables, problems }
}

function unknownFile(folder: string, file: string): Problem {
  const near = nearest(file.replace(/\.[^.]*$/, ''), tableNames)
  return {
    code: 'unknown-choice',
    where: { file: join(folder, file) },
    found: file,
    allowed: `the name of a table: ${tableNames.map((name) => `${name}.json`).join(', ')}`,
    remedy: near === undefined ? 'move it out of this folder' : `rename it to ${near}.json`,
  }
}

function readText(path: string, file: string): Result<TableText> {
  const read = readTextFile(path, file, 'a table file')
  return read.ok ? { ok: true, value: { file, text: read.value } } : read
}

function noFolder(error: unknown, file: string): Problem {
  const reason = systemCode(error)
  if (reason === undefined) throw error
  const allowed = 'a folder with table files'
  if (reason === 'ENOENT') return { code: 'file-missing', where: { file }, found: 'nothing', allowed }
  if (reason === 'ENOTDIR') return { code: 'wrong-kind', where: { file }, found: 'a file', allowed }
  return { code: 'file-not-readable', where: { file }, found: `the system's answer ${reason}`, allowed }
}
