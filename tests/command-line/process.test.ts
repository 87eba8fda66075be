import { spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { folderState, leftovers } from '../package/folder-state.ts'
import { projectRoot, spawned, spawnedNode } from '../package/spawned.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { deepBore, headFile, headText, typed } from './workshop.ts'

const folder = temporaryFolder()
beforeEach(() => {
  headFile(folder())
})

/** A folder elsewhere with the command as it is installed. */
const home = mkdtempSync(join(tmpdir(), 'installed-'))
const main = join(home, 'dist', 'command-line', 'main.js')
beforeAll(async () => {
  const built = await spawnedNode([join(projectRoot, '.setup', 'build.mjs'), join(home, 'dist')]).ended
  expect(built).toMatchObject({ exit: 0, err: '' })
  for (const name of ['seeds', 'templates', 'package.json', 'README.md', 'LICENSE']) {
    cpSync(join(projectRoot, name), join(home, name), { recursive: true })
  }
})
afterAll(() => rmSync(home, { recursive: true, force: true }))

const run = (...args: string[]) => spawnedNode([main, ...args], { cwd: folder() })
const packageAt = (name: string) => folderState(join(folder(), name))

describe('the command as a process', () => {
  it('gives the exit codes, and prints on the right stream', async () => {
    expect(await run('make', 'head.yaml').ended).toMatchObject({ exit: 0, err: '' })
    expect(Object.keys(packageAt('head') ?? {})).toContain('drawings.pdf')
    headFile(folder(), headText(deepBore))
    expect(await run('check', 'head.yaml').ended).toMatchObject({ exit: 1, err: '' })
    const bad = await run('check', 'nowhere.yaml').ended
    expect(bad).toMatchObject({ exit: 2, out: '', err: expect.stringMatching(/^nowhere\.yaml: found nothing;/) })
  })

  it('runs from the sources in a clone too, reads what is piped into it, and puts up with a reader that stops early', async () => {
    const options = { cwd: folder(), input: headText() }
    const piped = await spawned('src/command-line/main.ts', ['make', '-', '--out', 'piped', '--json'], options).ended
    expect(piped).toMatchObject({ exit: 0, err: '' })
    expect(JSON.parse(piped.out).stops).toBe(0)
    await typed(folder(), ['make', 'head.yaml', '--out', 'in-process'])
    expect(packageAt('piped')).toEqual(packageAt('in-process'))
    const script = `
      const child = require('node:child_process').spawn(process.execPath,
        [${JSON.stringify(main)}, 'schema', 'fly-cutter-head'],
        { stdio: ['ignore', 'pipe', 'inherit'] })
      child.stdout.destroy()
      child.on('close', (exit, signal) => process.stdout.write(JSON.stringify({ exit, signal })))`
    const early = await spawnedNode(['-e', script]).ended
    expect(early.err).toBe('')
    expect(JSON.parse(early.out)).toEqual({ exit: 0, signal: null })
  })
})

/** A shell line in which $1 is node and $2 the command. */
const shell = (line: string) =>
  spawnSync('bash', ['-c', line, 'bash', process.execPath, main], { cwd: folder(), encoding: 'utf8' })

describe.skipIf(!existsSync('/dev/full'))('what cannot be printed', () => {
  it.each(['check head.yaml', 'schema fly-cutter-head', '--help'])('of %s is told, and ends with 2', (args) => {
    expect(shell(`"$1" "$2" ${args} > /dev/full`)).toMatchObject({
      status: 2,
      stderr: expect.stringMatching(/^\(standard output\): found a full disk; [^\n]*\n$/),
    })
  })

  it('for lack of room for all of it is told as well', () => {
    const { status, stderr } = shell('ulimit -f 1; "$1" "$2" schema fly-cutter-head > schema.json')
    expect({ status, stderr }).toEqual({ status: 2, stderr: expect.stringMatching(/^\(standard output\): [^\n]*\n$/) })
  })

  it('because nobody reads on is no matter', () => {
    const { status, stdout, stderr } = shell('set -o pipefail; "$1" "$2" schema fly-cutter-head | head -1')
    expect({ status, stdout, stderr }).toEqual({ status: 0, stdout: '{\n', stderr: '' })
  })
})

describe('kill -9 while make writes', () => {
  it('leaves the earlier package or the new one whole, once the next make has started', async () => {
    await typed(folder(), ['make', 'head.yaml'])
    const earlier = packageAt('head')
    headFile(folder(), headText(['size: 46 ', 'size: 50 ']))
    await typed(folder(), ['make', 'head.yaml', '--out', 'expected'])
    const expected = packageAt('expected')
    expect(expected).not.toEqual(earlier)

    for (const sign of ['.head.lock', '.head.writing']) {
      const killed = run('make', 'head.yaml')
      const done = killed.ended.then(() => 'ended' as const)
      const tick = () => new Promise<'waiting'>((resolve) => setTimeout(() => resolve('waiting'), 2))
      while (!existsSync(join(folder(), sign)) && (await Promise.race([done, tick()])) === 'waiting');
      killed.kill()
      await done
      // Recovery is the first thing that a make does, before it reads a file that is not there.
      await typed(folder(), ['make', 'nowhere.yaml', '--out', 'head'])
      expect([earlier, expected]).toContainEqual(packageAt('head'))
      expect(leftovers(folder(), 'head')).toEqual([])
      expect(await run('make', 'head.yaml').ended).toMatchObject({ exit: 0, err: '' })
      expect(packageAt('head')).toEqual(expected)
    }
  })

  it('of two runs on one folder at the same time, each either writes it whole or is told of the other', async () => {
    await typed(folder(), ['make', 'head.yaml', '--out', 'expected'])
    const ends = await Promise.all([run('make', 'head.yaml').ended, run('make', 'head.yaml').ended])
    for (const { exit, err } of ends) {
      if (exit !== 0) expect({ exit, err }).toEqual({ exit: 2, err: expect.stringContaining('another run') })
    }
    expect(ends.map(({ exit }) => exit)).toContain(0)
    expect(packageAt('head')).toEqual(packageAt('expected'))
    expect(leftovers(folder(), 'head')).toEqual([])
  })
})

describe('the built command', () => {
  it('runs with node alone, and nothing else installed, from a folder elsewhere, with its tables and templates', async () => {
    expect(readFileSync(main, 'utf8')).toMatch(/^#!\/usr\/bin\/env node\n/)
    const { bin } = JSON.parse(readFileSync(join(projectRoot, 'package.json'), 'utf8'))
    expect(join(home, bin.cutterwright)).toBe(main)

    const bench = join(folder(), 'bench')
    mkdirSync(bench)
    const command = (...args: string[]) => spawnedNode([main, ...args], { cwd: bench }).ended
    expect(await command('new', 'fly-cutter-head', 'head.yaml')).toMatchObject({ exit: 0, err: '' })
    expect(await command('make', 'head.yaml')).toMatchObject({ exit: 0, err: '' })
    expect(readdirSync(bench)).toEqual(['head', 'head.yaml'])
    await typed(folder(), ['make', 'head.yaml', '--out', 'from-source'])
    expect(packageAt('bench/head')).toEqual(packageAt('from-source'))
  })
})

describe('the package for npm', () => {
  it('carries the command, its threads, tables, templates, font and licences, in less than two megabytes', () => {
    const options = ['pack', '--dry-run', '--json', '--ignore-scripts', '--loglevel=error']
    const packed = spawnSync('npm', options, { cwd: home, encoding: 'utf8', shell: process.platform === 'win32' })
    expect(packed).toMatchObject({ status: 0, stderr: '' })
    const [{ files, size }] = JSON.parse(packed.stdout)
    const names: string[] = files.map(({ path }: { path: string }) => path)
    expect(names).toEqual(
      expect.arrayContaining([
        'LICENSE',
        'README.md',
        'dist/DejaVuSansCondensed.ttf',
        'dist/command-line/beside-thread.js',
        'dist/command-line/main.js',
        'dist/command-line/sweep-thread.js',
        'dist/third-party-licences.txt',
        'seeds/materials.json',
        'templates/fly-cutter-head/parameters.yaml',
        'templates/fly-cutter-head/parameters-inch.yaml',
      ]),
    )
    expect(names.filter((name) => /^(src|tests|out|\.)/.test(name))).toEqual([])
    expect(size).toBeLessThan(2_000_000)
  })
})
