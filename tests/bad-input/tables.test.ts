import { mkdirSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { tableNames } from '../../src/tables/table-name.ts'
import { headFile, headText } from '../command-line/workshop.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { shippedText } from '../tables/shipped-texts.ts'
import { type Broken, broken, corpus } from './corpus.ts'
import { ran, refused } from './refusal.ts'
import { expectTold } from './told.ts'

const folder = temporaryFolder()
const all = corpus('tables')
const tableOf = ({ table }: Broken) => tableNames.find((name) => name === table) ?? 'threads'
const check = ['check', 'head.yaml', '--no-remedies', '--tables', 'tables']
const put = (name: string, content: string | Uint8Array) => writeFileSync(join(folder(), 'tables', name), content)

beforeEach(() => {
  headFile(folder())
  mkdirSync(join(folder(), 'tables'))
})

describe('a seed table with', () => {
  /** Needs the other tables to be good: a broken one is not held against those that name its rows. */
  const isAlone = ({ code, alone }: Broken) => alone === true || code === 'not-in-table'
  // One of each table at a time: they are read together.
  const together = all.filter((entry) => !isAlone(entry))
  const rounds = Array.from({ length: 20 }, (_, round) =>
    tableNames.flatMap((name) => together.filter(({ table }) => table === name).slice(round, round + 1)),
  ).filter((round) => round.length > 0)

  it.each(rounds.map((round) => ({ round, what: round.map(({ what }) => what).join('; ') })))(
    '$what is refused, each with code and place',
    async ({ round }) => {
      const texts = round.map((entry) => [entry, broken(shippedText(tableOf(entry)), entry)] as const)
      for (const [entry, { text }] of texts) put(`${tableOf(entry)}.json`, text)
      const run = await refused(folder(), check)
      for (const [entry, text] of texts) {
        const file = `tables/${tableOf(entry)}.json`
        expectTold({ ...run, problems: run.problems.filter(({ where }) => where.file === file) }, file, entry, text)
      }
    },
  )

  it('every entry of the corpus in its turn', () => {
    expect(rounds.flat()).toHaveLength(together.length)
  })

  it.each(all.filter(isAlone))('$what is refused, with code and place', async (entry) => {
    const text = broken(shippedText(tableOf(entry)), entry)
    put(`${tableOf(entry)}.json`, text.text)
    expectTold(await refused(folder(), check), `tables/${tableOf(entry)}.json`, entry, text)
  })

  it('something wrong is in the corpus four times at least for each of the tables', () => {
    for (const name of tableNames) expect(all.filter(({ table }) => table === name).length, name).toBeGreaterThan(3)
  })

  it('is refused by make, measured and sweep as well', async () => {
    put('threads.json', shippedText('threads').replace('"tapDrill": "5 mm"', '"tapDrill": "6 mm"'))
    const { err } = await refused(folder(), check)
    for (const args of [
      ['make', 'head.yaml'],
      ['measured', 'head.yaml', 'sheet.csv'],
      ['sweep', 'head.yaml', '--vary', 'slot.depth=9,10'],
    ]) {
      expect(await refused(folder(), [...args, '--tables', 'tables'])).toMatchObject({ err })
    }
  })
})

describe('a table file that is', () => {
  const threads = shippedText('threads')
  it.each([
    ['empty', '', 'file-empty', 'found nothing'],
    ['no JSON and no YAML', '{ "rows": [', 'not-yaml', 'tables/threads.json:1:'],
    ['a list', '[]', 'wrong-kind', 'found a list'],
    ['a sheet of a spreadsheet', 'name,series\nM6,metric coarse\n', 'wrong-kind', 'found name,series'],
    ['Latin-1', Buffer.from(threads.replace('ISO 261 and', 'Größe'), 'latin1'), 'not-text', 'the byte F6'],
    ['UTF-16', Buffer.from(`\ufeff${threads}`, 'utf16le'), 'not-text', 'found UTF-16 text'],
    ['cut off', threads.slice(0, 2000), 'not-yaml', 'the end of the file'],
    ['deep', `{"rows": ${'['.repeat(10_000)}${']'.repeat(10_000)}}`, 'too-deep', 'at most 32 levels'],
    ['deep in sections', `${'{"a":'.repeat(10_000)}1${'}'.repeat(10_000)}`, 'too-deep', 'at most 32 levels'],
    ['of a million letters and more', `{"title": "${'x'.repeat(1_000_000)}"}`, 'file-too-large', 'characters'],
    ['of ten thousand bad rows', `{"units":"mm","rows":[${'1,'.repeat(9999)}1]}`, 'wrong-kind', 'a section'],
  ] as const)('%s', async (_, content, code, said) => {
    put('threads.json', content)
    const { problems, err } = await refused(folder(), check)
    expect(problems.map((p) => p.code)).toContain(code)
    expect(err).toContain('tables/threads.json')
    expect(err).toContain(said)
    expect(err.length).toBeLessThan(20_000)
  })

  it('50 MB is refused without being read to its end', async () => {
    put('threads.json', '{}')
    truncateSync(join(folder(), 'tables', 'threads.json'), 50_000_000)
    const { problems, exit } = await ran(folder(), check)
    expect(exit).toBe(2)
    expect(problems).toMatchObject([{ code: 'file-too-large', found: 'more than 4000000 bytes' }])
  })

  it('with a byte order mark, lines as Windows ends them, or YAML is fine', async () => {
    for (const text of [`\ufeff${threads.replaceAll('\n', '\r\n')}`, `${threads}\n# ours\n`]) {
      put('threads.json', text)
      expect(await ran(folder(), check)).toMatchObject({ exit: 0, err: '' })
    }
  })
})

describe('a folder of tables', () => {
  it.each([
    ['a misspelled name', () => put('thread.json', '{}'), 'unknown-choice', 'Rename it to threads.json.'],
    ['a table of another program', () => put('prices.xlsx', 'PK'), 'unknown-choice', 'Move it out of this folder.'],
    ['a name in capitals', () => put('THREADS.JSON', '{}'), 'unknown-choice', 'Rename it to threads.json.'],
    ['a name that steers a terminal', () => put('\u001b[2J.json', '{}'), 'unknown-choice', '\\u{1b}[2J.json'],
    [
      'a folder in place of a table',
      () => mkdirSync(join(folder(), 'tables', 'threads.json')),
      'not-a-file',
      'a table file',
    ],
    [
      'a link that leads to itself',
      () => symlinkSync('threads.json', join(folder(), 'tables', 'threads.json')),
      'file-not-readable',
      'ELOOP',
    ],
  ] as const)('with %s is refused', async (_, make, code, said) => {
    make()
    const { problems, err } = await refused(folder(), check)
    expect(problems).toMatchObject([{ code }])
    expect(err).toContain(said)
  })

  it('that is not there, is a file, or lacks a row that the parameters name', async () => {
    const at = (name: string) => refused(folder(), [...check.slice(0, -1), name])
    expect((await at('nowhere')).problems).toMatchObject([{ code: 'file-missing', where: { file: 'nowhere' } }])
    expect((await at('head.yaml')).problems).toMatchObject([{ code: 'wrong-kind', found: 'a file' }])
    put('work-materials.json', shippedText('work-materials').replace('"name": "brass"', '"name": "messing"'))
    headFile(folder(), headText(['material: aluminium', 'material: brass']))
    const { problems, err } = await at('tables')
    expect(problems).toMatchObject([{ code: 'not-in-table', where: { file: 'head.yaml', path: 'work.material' } }])
    expect(err).toContain('messing')
  })
})
