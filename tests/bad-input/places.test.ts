import { appendFileSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it, vi } from 'vitest'
import type { ProblemCode } from '../../src/input/problem.ts'
import { systemDisk } from '../../src/package/disk.ts'
import { takeLock } from '../../src/package/lock.ts'
import { systemProcesses } from '../../src/package/processes.ts'
import { writePackage } from '../../src/package/write-package.ts'
import { headFile, headText } from '../command-line/workshop.ts'
import { folderState } from '../package/folder-state.ts'
import { earlierFiles, placeAt } from '../package/small-packages.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { corpus } from './corpus.ts'
import { oddTexts } from './odd-texts.ts'
import { refused } from './refusal.ts'

// What the package holds does not matter here, only where it goes; to work it out would take seconds each time.
vi.mock('../../src/package/package-files.ts', async () => {
  const { newFiles } = await import('../package/small-packages.ts')
  return { packageFiles: () => ({ ok: true, value: newFiles }) }
})

const folder = temporaryFolder()
/** Codes that the tests here and in `parameters.test.ts` saw come out of a place or a name. */
const ofPlaces: readonly ProblemCode[] = [
  'file-missing',
  'file-not-readable',
  'not-a-file',
  'target-not-ours',
  'target-changed',
  'target-busy',
  'not-writable',
  'bad-command',
  'no-room',
]

describe('a package', () => {
  it.each([
    ...['CON', 'prn', 'Aux.yaml', 'nul.tar.gz', 'COM1', 'lpt9.x', 'com¹', 'con .txt'],
    ...['head.', 'head ', 'a:b', 'a*', 'what?', '"head"', '<head>', 'a|b', 'a\\b', 'a\nb', 'a\u0007b'],
  ])('does not get the name %j, which Windows does not take', async (name) => {
    headFile(folder())
    for (const args of [
      ['make', 'head.yaml', `--out=${name}`],
      ['measured', 'head.yaml', 'values.csv', `--out=${name}`],
    ]) {
      const { problems, err } = await refused(folder(), args)
      expect(problems).toMatchObject([{ code: 'not-writable', where: { file: name }, remedy: 'choose another --out' }])
      expect(err).toContain('which Windows does not take')
    }
  })

  it('does not get such a name from its parameter file either', async () => {
    for (const name of ['aux.yaml', 'head .yaml', 'a:b.yaml']) {
      headFile(folder(), headText(), name)
      expect((await refused(folder(), ['make', name])).problems).toMatchObject([{ code: 'not-writable' }])
    }
  })

  it('gets any other name, one that only looks like those included', async () => {
    headFile(folder(), headText(['count: 2', 'count: 7']))
    for (const name of ['console', 'com10', 'nul-head', '.head', 'Fräskopf 2', '刀', 'a&b;c$(d)']) {
      // The name is good; what is refused is what stands in the file, which comes after.
      const { problems } = await refused(folder(), ['make', 'head.yaml', '--out', name])
      expect(problems, name).toMatchObject([{ code: 'out-of-range', where: { path: 'screws.count' } }])
    }
  })

  it('does not take the place of what is there', async () => {
    headFile(folder())
    const put = (name: string) => writeFileSync(join(folder(), name), 'mine')
    mkdirSync(join(folder(), 'folder'))
    put('folder/mine.txt')
    for (const [out, code] of [
      ['folder', 'target-not-ours'],
      ['.', 'target-not-ours'],
      ['..', 'target-not-ours'],
      ['../../../../../../../../..', 'target-not-ours'],
      ['nowhere/head', 'not-writable'],
    ] as const) {
      expect((await refused(folder(), ['make', 'head.yaml', '--out', out])).problems, out).toMatchObject([{ code }])
    }
  })

  it('is left alone where it was changed by hand, and where another run is at it', async () => {
    headFile(folder())
    const machine = { disk: systemDisk, processes: systemProcesses }
    expect(writePackage(placeAt(folder()), earlierFiles, '00000001', machine).ok).toBe(true)
    appendFileSync(join(folder(), 'head', 'report.md'), 'mine')
    const before = folderState(join(folder(), 'head'))
    expect((await refused(folder(), ['make', 'head.yaml'])).problems).toMatchObject([{ code: 'target-changed' }])
    const lock = takeLock(placeAt(folder()), machine)
    if (!lock.ok) throw new Error('no lock')
    expect((await refused(folder(), ['make', 'head.yaml'])).problems).toMatchObject([{ code: 'target-busy' }])
    lock.value.release()
    expect(folderState(join(folder(), 'head'))).toEqual(before)
  })
})

it('a command line that does not fit is a problem of its own', async () => {
  headFile(folder())
  expect((await refused(folder(), ['make', '-'])).problems).toMatchObject([{ code: 'bad-command' }])
})

it('every code that input can cause is caused by some input here', () => {
  // Typed so that a new code has to be put on one side or the other.
  const all: Readonly<Record<ProblemCode, 'input' | 'our own defect'>> = {
    'file-missing': 'input',
    'file-not-readable': 'input',
    'not-a-file': 'input',
    'file-too-large': 'input',
    'file-empty': 'input',
    'not-text': 'input',
    'not-yaml': 'input',
    'duplicate-key': 'input',
    'alias-not-allowed': 'input',
    'too-deep': 'input',
    'unknown-key': 'input',
    'missing-key': 'input',
    'wrong-kind': 'input',
    'wrong-unit': 'input',
    'not-a-quantity': 'input',
    'out-of-range': 'input',
    'unknown-choice': 'input',
    'not-in-table': 'input',
    contradiction: 'input',
    'target-not-ours': 'input',
    'target-changed': 'input',
    'target-busy': 'input',
    'not-writable': 'input',
    'bad-command': 'input',
    // A mesh that does not close is never the fault of who wrote the file.
    'unsound-solid': 'our own defect',
    'no-room': 'input',
  }
  const entries = ['parameters', 'tables', 'measured'].flatMap((name) => corpus(name))
  const caused = new Set<string>([
    ...ofPlaces,
    ...entries.map(({ code }) => code),
    ...oddTexts(headText()).map(({ problem }) => problem?.code ?? ''),
  ])
  const wanted = Object.entries(all).flatMap(([code, by]) => (by === 'input' ? [code] : []))
  expect(wanted.filter((code) => !caused.has(code))).toEqual([])
  expect(entries.length).toBeGreaterThan(300)
})
