import { mkdirSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { ProgressLine } from '../../src/command-line/progress-line.ts'
import { headFile, headText, typed } from '../command-line/workshop.ts'
import { folderState } from '../package/folder-state.ts'
import { spawned } from '../package/spawned.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'

const folder = temporaryFolder()
beforeEach(() => {
  headFile(folder())
})
const type = (...args: string[]) => typed(folder(), args)
const at = (name: string) => folderState(join(folder(), name))
const small = ['--vary', 'slot.depth=8..9.5:2', '--figures', 'swing']

describe('sweep', () => {
  it('writes table and page beside the file, named after what was varied, and says how many sets are free', async () => {
    const { exit, out, err } = await type('sweep', 'head.yaml', ...small)
    expect({ exit, err }).toEqual({ exit: 0, err: '' })
    expect(out).toContain('1 set is without a stop.\n')
    expect(out).toContain('Written to head-sweep-slot-depth\n')
    expect(Object.keys(at('head-sweep-slot-depth') ?? {})).toEqual(['contents.json', 'sweep.csv', 'sweep.html'])
    expect(readdirSync(folder()).toSorted()).toEqual(['head-sweep-slot-depth', 'head.yaml'])
    const first = at('head-sweep-slot-depth')
    expect(await type('sweep', 'head.yaml', ...small)).toMatchObject({ exit: 0 })
    expect(at('head-sweep-slot-depth')).toEqual(first)
  })

  it('leaves alone what it did not write: a sweep that was changed, a package, a file', async () => {
    await type('sweep', 'head.yaml', ...small, '--out', 'mine')
    writeFileSync(join(folder(), 'mine', 'sweep.csv'), 'my notes')
    await type('sweep', 'head.yaml', ...small, '--out', 'package')
    const manifest = at('package')!['contents.json']!.replaceAll('sweep.csv', 'body.stl')
    writeFileSync(join(folder(), 'package', 'contents.json'), manifest)
    const before = [at('mine'), at('package')]
    expect(await type('sweep', 'head.yaml', ...small, '--out', 'mine')).toMatchObject({ exit: 2, out: '' })
    const other = await type('sweep', 'head.yaml', ...small, '--out', 'package')
    expect(other).toMatchObject({ exit: 2, err: expect.stringContaining('package: found a package that make wrote;') })
    expect(await type('sweep', 'head.yaml', ...small, '--out', 'head.yaml')).toMatchObject({ exit: 2, out: '' })
    expect([at('mine'), at('package')]).toEqual(before)
    mkdirSync(join(folder(), 'empty'))
    expect(await type('sweep', 'head.yaml', ...small, '--out', 'empty')).toMatchObject({ exit: 0 })
  })

  it('with --json prints the results and writes nothing, unless a folder is named', async () => {
    const { exit, out } = await type('sweep', 'head.yaml', ...small, '--json')
    expect(exit).toBe(0)
    expect(JSON.parse(out)).toMatchObject({
      withoutStops: 1,
      sets: [{ level: 'stop' }, { values: { 'slot.depth': 9.5 } }],
    })
    expect(readdirSync(folder())).toEqual(['head.yaml'])
    await type('sweep', 'head.yaml', ...small, '--json', '--out', 'both')
    expect(at('both')?.['sweep.csv']).toContain('slot.depth [mm]')
  })

  it('ends with 1 where every set has a stop', async () => {
    const { exit, out } = await type('sweep', 'head.yaml', '--vary', 'slot.depth=8..8.2:2', '--figures', 'swing')
    expect(exit).toBe(1)
    expect(out).toContain('No set is without a stop.')
  })

  it('writes nothing where no set can be built, and says why', async () => {
    const { exit, out, err } = await type('sweep', 'head.yaml', '--vary', 'bit.swing=100..110:3')
    expect({ exit, out }).toEqual({ exit: 2, out: '' })
    expect(err).toBe(
      'head.yaml, with any value of --vary: bit.swing: found overhang and swing; allowed: one of the two: the other follows. Leave one out.\n',
    )
    expect(readdirSync(folder())).toEqual(['head.yaml'])
  })

  it('needs a place for what comes from standard input', async () => {
    const run = await typed(folder(), ['sweep', '-', ...small], { input: headText() })
    expect(run).toMatchObject({ exit: 2, err: expect.stringContaining('standard input, and no --out') })
    const json = await typed(folder(), ['sweep', '-', ...small, '--json'], { input: headText() })
    expect(json.exit).toBe(0)
  })

  it.each([
    [['--cores', '0'], '--cores 0'],
    [['--cores', 'two'], '--cores two'],
    [['--cores', '-1'], '--cores -1'],
    [['--cores', '--json'], '--cores with --json behind it'],
    [['--vary', 'a=1,2,3', '--vary', 'a=1,2,3', '--vary', 'a=1,2,3'], '3 times --vary'],
    [['--figures', 'swing'], 'no --vary'],
    [['--vary'], '--vary without a value'],
    [['--figures', 'swing', '--figures', 'grip'], '--figures twice'],
  ])('refuses %j', async (args, found) => {
    const { exit, out, err } = await type('sweep', 'head.yaml', ...args)
    expect({ exit, out }).toEqual({ exit: 2, out: '' })
    expect(err).toContain(`found ${found};`)
    // What is advised has to be taken.
    expect(err).not.toContain('--cores=')
  })

  it('tells its own exit status in its help', async () => {
    const { out } = await type('sweep', '--help')
    expect(out).toContain('Exit status: 0 at least one set without a stop, 1 none, 2')
    expect(out).toContain('cutterwright sweep head.yaml --vary slot.depth=8..12:41')
  })
})

describe('sweep as a process', () => {
  it('gives the same bytes on one core and on all, and says nothing on stderr when that is no terminal', async () => {
    const vary = ['--vary', 'slot.depth=8..13:20', '--vary', 'bore.depth=20..34:11']
    const args = ['sweep', 'head.yaml', ...vary, '--figures', 'swing']
    const end = await spawned('src/command-line/main.ts', [...args, '--out', 'all'], { cwd: folder() }).ended
    expect(end).toMatchObject({ exit: 0, err: '' })
    await type(...args, '--cores', '1', '--out', 'one')
    expect(at('one')?.['sweep.csv']?.split('\r\n')).toHaveLength(222)
    expect(at('one')).toEqual(at('all'))
  })
})

describe('the line that tells how far it is', () => {
  const line = (isTTY?: boolean) => {
    const written: string[] = []
    const progress = new ProgressLine({ write: (text) => written.push(text), isTTY })
    progress.show('1 of 2')
    progress.show('2 of 2')
    progress.end()
    return written
  }

  it('is written over on a terminal, not more often than can be read, and cleared', () => {
    expect(line(true)).toEqual(['\r1 of 2\u001b[K', '\r\u001b[K'])
  })

  it('is nothing anywhere else', () => {
    expect(line(false)).toEqual([])
    expect(line()).toEqual([])
  })
})
