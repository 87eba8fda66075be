import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { systemDisk } from '../../src/package/disk.ts'
import { replaceable } from '../../src/package/target.ts'
import { folderState, leftovers } from '../package/folder-state.ts'
import { placeAt } from '../package/small-packages.ts'
import { spawned, spawnedNode } from '../package/spawned.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { builtCommand } from './built.ts'
import { deepBore, headFile, headText, typed } from './workshop.ts'

const folder = temporaryFolder()
beforeEach(() => {
  headFile(folder())
})

const { main } = builtCommand()
const run = (...args: string[]) => spawnedNode([main, ...args], { cwd: folder() })
const packageAt = (name: string) => folderState(join(folder(), name))

describe('the command as a process', () => {
  it('gives the exit codes, and prints on the right stream', async () => {
    expect(await run('check', 'head.yaml').ended).toMatchObject({ exit: 0, err: '' })
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

  it('of two runs on one folder at the same time, each either writes it whole or is told of the other', async () => {
    const ends = await Promise.all([run('make', 'head.yaml').ended, run('make', 'head.yaml').ended])
    for (const { exit, err } of ends) {
      if (exit !== 0) expect({ exit, err }).toEqual({ exit: 2, err: expect.stringContaining('another run') })
    }
    expect(ends.map(({ exit }) => exit)).toContain(0)
    expect(Object.keys(packageAt('head') ?? {})).toContain('drawings.pdf')
    expect(replaceable(placeAt(folder()), systemDisk), 'every file as its own list says').toMatchObject({ ok: true })
    expect(leftovers(folder(), 'head')).toEqual([])
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
