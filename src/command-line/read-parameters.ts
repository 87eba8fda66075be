import { resolve } from 'node:path'
import { families } from '../families/families.ts'
import type { CommonParameters, Design } from '../families/family.ts'
import { type ReadDesign, readAnyDesign } from '../families/read-design.ts'
import { readTextFile, readTextStream } from '../package/read-file.ts'
import type { Unable } from './command.ts'
import { shopTables } from './shop-tables.ts'
import type { World } from './world.ts'

export const fileOperand = { name: 'FILE', says: 'the parameter set, or - for standard input' }

export const standardInput = '-'

/** Reads a parameter set and the tables it draws on, and works out its design. */
export async function readParameters(
  file: string,
  tablesFolder: string | undefined,
  { cwd, stdin }: World,
): Promise<{ readonly ok: true; readonly value: ReadDesign<CommonParameters, Design> } | Unable> {
  const shown = file === standardInput ? '(standard input)' : file
  const text = file === standardInput ? await readTextStream(stdin, shown) : readTextFile(resolve(cwd, file), shown)
  const tables = shopTables(tablesFolder, cwd)
  const texts = new Map(tables.ok ? [] : tables.texts)
  const source = text.ok ? text.value : text.text
  if (source !== undefined) texts.set(shown, source)
  if (!text.ok || !tables.ok) {
    const problems = [...(text.ok ? [] : text.problems), ...(tables.ok ? [] : tables.problems)]
    return { ok: false, problems, texts }
  }
  const read = readAnyDesign(families, text.value, shown, tables.value)
  return read.ok ? read : { ...read, texts }
}
