import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { describe, expect, it } from 'vitest'
import { readParameters } from '../../src/command-line/read-parameters.ts'
import type { ProblemCode } from '../../src/input/problem.ts'
import { systemDisk } from '../../src/package/disk.ts'
import { systemProcesses } from '../../src/package/processes.ts'
import { folderState } from '../package/folder-state.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { headText, typed } from './workshop.ts'

const folder = temporaryFolder()

type Expected = readonly [code: ProblemCode, line: number | undefined, column: number | undefined, path?: string]
interface Bad {
  readonly what: string
  readonly content: string | Uint8Array
  readonly problems: readonly Expected[]
}

/** Line on which this text stands in the starting parameter set, and the column at which its value begins. */
function at(text: string): readonly [number, number] {
  const lines = headText().split('\n')
  const line = lines.findIndex((l) => l.trimStart().startsWith(text))
  return [line + 1, (lines[line] ?? '').indexOf(': ') + 3]
}
const edit = (what: string, from: string, to: string, ...problems: Expected[]): Bad => ({
  what,
  content: headText([from, to]),
  problems,
})
const bomb = [
  'a: &a [x, x, x, x, x, x, x, x, x]',
  ...[...'bcdefgh'].map((name, n) => `${name}: &${name} [${`*${'abcdefgh'[n]}, `.repeat(9)}]`),
].join('\n')

const bad: readonly Bad[] = [
  edit('a wrong unit', 'size: 46 ', 'size: 46 kg', ['wrong-unit', ...at('size: 46'), 'stock.size']),
  edit('an unknown unit', 'size: 46 ', 'size: 46 blobs', ['wrong-unit', ...at('size: 46'), 'stock.size']),
  edit('a word for a size', 'size: 46 ', 'size: middling', ['not-a-quantity', ...at('size: 46'), 'stock.size']),
  edit('a size of nothing', 'width: 10 ', 'width: 0 ', ['out-of-range', ...at('width: 10'), 'bit.width']),
  edit('a size below nothing', 'depth: 24', 'depth: -24', ['out-of-range', ...at('depth: 24'), 'bore.depth']),
  edit('no number', 'depth: 24', 'depth: .nan', ['not-a-quantity', ...at('depth: 24'), 'bore.depth']),
  edit('no end', 'depth: 24', 'depth: .inf', ['not-a-quantity', ...at('depth: 24'), 'bore.depth']),
  edit('NaN in words', 'depth: 24', 'depth: NaN', ['not-a-quantity', ...at('depth: 24'), 'bore.depth']),
  edit('a face at 95°', 'angle: 7 deg', 'angle: 95 deg', ['out-of-range', ...at('angle: 7 deg'), 'face.angle']),
  edit('an unknown thread', 'thread: M6', 'thread: M6.5', ['not-in-table', ...at('thread: M6'), 'screws.thread']),
  edit('a missing key', '  depth-on-axis: 41', '  #', ['missing-key', at('face:')[0], 1, 'face.depth-on-axis']),
  edit('an unknown key', 'parallels:', 'paralels:', ['unknown-key', at('parallels')[0], 3, 'shop.paralels']),
  edit('a key twice', 'count: 2', 'thread: M8', ['duplicate-key', at('count: 2')[0], 3, 'screws.thread']),
  edit('no family', 'family: fly-cutter-head', '#', ['missing-key', 5, 1, 'family']),
  edit('unknown units', 'units: mm', 'units: cm', ['unknown-choice', ...at('units: mm'), 'units']),
  edit('a tab', '  shape: hexagon', '\tshape: hexagon', ['not-yaml', at('shape')[0], 1]),
  { what: 'an empty file', content: '', problems: [['file-empty', undefined, undefined]] },
  { what: 'spaces', content: ' \n\n', problems: [['file-empty', undefined, undefined]] },
  { what: 'comments alone', content: '# later\n# more\n', problems: [['file-empty', undefined, undefined]] },
  { what: 'a list', content: '- 1\n- 2\n', problems: [['wrong-kind', 1, 1]] },
  { what: 'one word', content: 'fly-cutter-head\n', problems: [['wrong-kind', 1, 1]] },
  { what: 'no YAML', content: 'family: [fly\ntitle: "x\n', problems: [['not-yaml', 2, 1]] },
  { what: 'an alias bomb', content: bomb, problems: [['alias-not-allowed', 1, 4, 'a']] },
  { what: 'a deep nest', content: `a: ${'['.repeat(5000)}`, problems: [['too-deep', 1, 68]] },
  { what: 'a picture', content: Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10), problems: [['not-text', 1, 1]] },
  { what: 'text with zeros', content: 'title: a\0b\n', problems: [['not-text', 1, 9]] },
  { what: 'Latin-1', content: Buffer.from('title: Fräser\n', 'latin1'), problems: [['not-text', 1, 10]] },
  {
    what: 'UTF-16',
    content: Buffer.from('\ufefftitle: x\n', 'utf16le'),
    problems: [['not-text', undefined, undefined]],
  },
  { what: '5 MB', content: '#'.repeat(5_000_000), problems: [['file-too-large', undefined, undefined]] },
  { what: '1 MB and a bit', content: '#'.repeat(1_000_001), problems: [['file-too-large', undefined, undefined]] },
]

const world = (stdin: AsyncIterable<string> = Readable.from([])) => ({
  cwd: folder(),
  stdin,
  stdout: { write: () => undefined },
  stderr: { write: () => undefined },
  machine: { disk: systemDisk, processes: systemProcesses },
  threads: 1,
})

describe.each(bad)('$what', ({ content, problems }) => {
  it('is told with its code and its place', async () => {
    writeFileSync(join(folder(), 'head.yaml'), content)
    const read = await readParameters('head.yaml', undefined, world())
    const found = read.ok ? [] : read.problems
    for (const [code, line, column, path] of problems) {
      const where = { file: 'head.yaml', line, column, path }
      expect(
        found.map((p) => ({
          code: p.code,
          where: { path: undefined, line: undefined, column: undefined, ...p.where },
        })),
      ).toContainEqual({ code, where })
    }
  })

  it('ends check and make with 2, shows the line, and nothing is written', async () => {
    writeFileSync(join(folder(), 'head.yaml'), content)
    const before = folderState(folder())
    const [, line, column] = problems[0] ?? []
    for (const command of ['check', 'make']) {
      const { exit, out, err } = await typed(folder(), [command, 'head.yaml'])
      expect({ exit, out }).toEqual({ exit: 2, out: '' })
      const place = line === undefined ? 'head.yaml:' : `head.yaml:${line}:${column}:`
      expect(err).toContain(place)
      expect(err).not.toMatch(/\n\s+at |defect/)
    }
    expect(folderState(folder())).toEqual(before)
  })
})

describe('a FILE that is no file', () => {
  it.each([
    ['nowhere.yaml', 'nowhere.yaml: found nothing; allowed: a parameter file.\n'],
    ['drawer', 'drawer: found a folder; allowed: a parameter file.\n'],
    ['.', '.: found a folder; allowed: a parameter file.\n'],
  ])('%s', async (name, said) => {
    mkdirSync(join(folder(), 'drawer'))
    for (const args of [
      ['check', name],
      ['make', name, '--out', 'head'],
    ]) {
      expect(await typed(folder(), args)).toEqual({ exit: 2, out: '', err: said })
    }
    expect(folderState(folder())).toEqual({ drawer: '(no file)' })
  })
})

it('several problems of one file are told in one go, each with its line and a mark under the place', async () => {
  const text = headText(['size: 46 ', 'size: 46 kg'], ['angle: 7 deg', 'angle: 95 deg'], ['parallels:', 'paralels:'])
  writeFileSync(join(folder(), 'head.yaml'), text)
  const { err } = await typed(folder(), ['check', 'head.yaml'])
  const said = err.trimEnd().split('\n')
  expect(said).toHaveLength(9)
  expect(said[0]).toMatch(/^head\.yaml:12:9: stock\.size: found 46 kg; allowed: a length/)
  expect(said[1]).toMatch(/^ {4}size: 46 kg/)
  expect(said[2]).toBe(`${' '.repeat(10)}^`)
  expect(said[3]).toContain('face.angle: found 95 deg')
  expect(said[6]).toContain('Did you mean parallels?')
})
