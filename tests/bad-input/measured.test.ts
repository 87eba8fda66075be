import { truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { families } from '../../src/families/families.ts'
import { readAnyDesign } from '../../src/families/read-design.ts'
import { askedLines, inspectionSheet } from '../../src/measured/inspection-sheet.ts'
import { loadTables } from '../../src/package/load-tables.ts'
import { revisionOf } from '../../src/package/revision.ts'
import { headFile, headText } from '../command-line/workshop.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { type Broken, broken, corpus } from './corpus.ts'
import { ran, refused } from './refusal.ts'
import { expectTold } from './told.ts'

const folder = temporaryFolder()
beforeEach(() => {
  headFile(folder())
})

const { sheet, revision } = startingSheet()
const yaml = `revision: ${revision}\nbody:\n  slot.depth: 9.55\n`
const put = (name: string, content: string | Uint8Array) => writeFileSync(join(folder(), name), content)
const values = (name: string) => ['measured', 'head.yaml', name]

describe('a measured sheet with', () => {
  it.each(corpus('measured'))('$what is refused, with code and place', async (entry) => {
    const change = entry.change.map(([from, to]) => [known(from), known(to)] as const)
    const text = broken(entry.sheet === 'yaml' ? yaml : sheet, { ...entry, change })
    const name = entry.sheet === 'yaml' ? 'values.yaml' : 'values.csv'
    put(name, entry.semicolons ? text.text.replaceAll(',', ';') : text.text)
    expectTold(await refused(folder(), values(name)), name, entry as Broken, text)
  })
})

describe('a sheet that is', () => {
  it.each([
    ['empty', '', 'file-empty', 'found nothing'],
    ['a byte order mark alone', '\ufeff', 'file-empty', 'found nothing'],
    ['line ends', '\r\n\r\n', 'file-empty', 'found nothing'],
    ['commas', ',,,\r\n,,,\r\n', 'file-empty', 'found nothing'],
    ['empty quotation marks', '"","",""\r\n', 'file-empty', 'found nothing'],
    ['a heading alone', `${sheet.split('\r\n')[0]}\r\n`, 'missing-key', 'no revision mark'],
    ['UTF-16', Buffer.from(`\ufeff${sheet}`, 'utf16le'), 'not-text', 'found UTF-16 text'],
    ['UTF-16 without its mark', Buffer.from(sheet, 'utf16le'), 'not-text', 'found UTF-16 text'],
    ['Latin-1', Buffer.from(sheet, 'latin1'), 'not-text', 'the byte B0'],
    ['lines as they ended on old computers', sheet.replaceAll('\r\n', '\r'), 'not-text', 'U+000D'],
    ['a spreadsheet itself', Uint8Array.of(0x50, 0x4b, 3, 4, 0x14, 0, 6, 0), 'not-text', 'U+0003'],
    ['a million letters and more', 'x'.repeat(1_000_001), 'file-too-large', 'characters'],
    ['a parameter set', headText(), 'missing-key', 'a column part'],
    ['a hundred thousand separators', `${','.repeat(100_000)}x\r\n`, 'missing-key', 'a column part'],
  ] as const)('%s is refused', async (_, content, code, said) => {
    put('values.csv', content)
    const { problems, err } = await refused(folder(), values('values.csv'))
    expect(problems[0]).toMatchObject({ code, where: { file: 'values.csv' } })
    expect(err).toContain(said)
    expect(err.length).toBeLessThan(5000)
  })

  it('50 MB is refused without being read to its end', async () => {
    put('values.csv', sheet)
    truncateSync(join(folder(), 'values.csv'), 50_000_000)
    const { problems, exit } = await ran(folder(), values('values.csv'))
    expect(exit).toBe(2)
    expect(problems).toMatchObject([{ code: 'file-too-large', allowed: 'a sheet with measured values' }])
  })

  it('not there is refused, and one of a near name is named', async () => {
    put('values.csv', sheet)
    const { err } = await refused(folder(), values('value.csv'))
    expect(err).toBe('value.csv: found nothing; allowed: a sheet with measured values. Did you mean values.csv?\n')
    expect((await refused(folder(), values('.'))).problems).toMatchObject([{ code: 'not-a-file' }])
  })
})

/** Signs of the corpus for what is not known beforehand. */
function known(text: string): string {
  return text.replaceAll('§', revision)
}

/** The sheet of the starting set, its slot measured. */
function startingSheet(): { sheet: string; revision: string } {
  const tables = loadTables()
  const read = tables.ok ? readAnyDesign(families, headText(), 'head.yaml', tables.value) : tables
  if (!read.ok) throw new Error(read.problems[0]?.found)
  const { family, design } = read.value
  const revision = revisionOf(read.value)
  const empty = inspectionSheet(askedLines(family.measuring(design)), revision, 'mm')
  return { sheet: empty.replace(/(slot\.depth,.*,)\r\n/, '$19.55\r\n'), revision }
}
