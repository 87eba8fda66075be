import { join, relative, resolve } from 'node:path'
import type { Problem } from '../input/problem.ts'
import { loadTables } from '../package/load-tables.ts'
import { readTextFile } from '../package/read-file.ts'
import type { Tables } from '../tables/read-tables.ts'
import type { Option, Unable } from './command.ts'

export const tablesOption: Option = {
  name: '--tables',
  value: 'DIR',
  says: 'folder with your own tables, each in place of ours of the same name',
}

/** The seed tables, and the shop's own where a folder is named. Problems name files as the user would. */
export function shopTables(
  named: string | undefined,
  cwd: string,
): { readonly ok: true; readonly value: Tables } | Required<Unable> {
  const folder = named === undefined ? undefined : resolve(cwd, named)
  const tables = loadTables(folder)
  if (tables.ok) return tables
  const texts = new Map<string, string>()
  const problems = tables.problems.map((problem): Problem => {
    const { file } = problem.where
    if (named === undefined || folder === undefined || !file.startsWith(folder)) return problem
    const shown = join(named, relative(folder, file))
    const text = problem.where.line === undefined ? undefined : readTextFile(file, shown)
    const source = text?.ok ? text.value : text?.text
    if (source !== undefined) texts.set(shown, source)
    return { ...problem, where: { ...problem.where, file: shown } }
  })
  return { ok: false, problems, texts }
}
