import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { commands } from '../../src/command-line/commands.ts'
import { systemDisk } from '../../src/package/disk.ts'
import { systemProcesses } from '../../src/package/processes.ts'
import { folderState } from '../package/folder-state.ts'
import { projectRoot } from '../package/spawned.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { headFile, typed } from './workshop.ts'

const folder = temporaryFolder()
const type = (...args: string[]) => typed(folder(), args)
/** What is said about a command line that is refused. */
async function refusal(...args: string[]): Promise<string> {
  const { exit, out, err } = await type(...args)
  expect({ exit, out }).toEqual({ exit: 2, out: '' })
  return err
}

describe('help', () => {
  it('lists every command with its operands and options, and every family', async () => {
    const { exit, out, err } = await type('--help')
    expect({ exit, err }).toEqual({ exit: 0, err: '' })
    expect(out).toContain('new FAMILY [FILE] [--units mm|in]')
    expect(out).toContain('check FILE [--json] [--tables DIR] [--no-remedies]')
    expect(out).toContain('make FILE [--out DIR] [--tables DIR] [--json]')
    expect(out).toContain('schema FAMILY [--units mm|in]')
    expect(out).toContain('\n  fly-cutter-head\n')
  })

  it.each(commands.map(({ name }) => name))(
    'of %s names its options and an example that is typed as it stands',
    async (name) => {
      const { exit, out } = await type(name, '--help')
      expect(exit).toBe(0)
      const command = commands.find((c) => c.name === name)
      for (const { name: option } of command?.options ?? []) expect(out).toContain(`  ${option}`)
      const example = /Example:\n {2}cutterwright (.*)\n/.exec(out)?.[1]?.replace(/ > .*/, '') ?? ''
      headFile(folder(), undefined, name === 'new' ? 'other.yaml' : 'head.yaml')
      systemDisk.makeFolder(join(folder(), 'out'))
      if (name === 'measured') {
        // Its example needs a package, and somebody who fills in its sheet.
        expect(await type('make', 'head.yaml')).toMatchObject({ exit: 0 })
        const sheet = join(folder(), 'head', 'inspection.csv')
        writeFileSync(sheet, readFileSync(sheet, 'utf8').replace(/(slot\.depth,.*,)\r\n/, '$19.55\r\n'))
      }
      expect(await type(...example.split(' '))).toMatchObject({ exit: 0, err: '' })
    },
  )

  it('is given whatever else is on the line, but not behind --', async () => {
    expect(await type('make', '--oot', 'x', '--help')).toMatchObject({ exit: 0, err: '' })
    expect(await refusal('check', '--', '--help')).toContain('--help: found nothing')
  })

  it('lines fit a terminal of 120 columns', async () => {
    for (const args of [['--help'], ...commands.map(({ name }) => [name, '--help'])]) {
      const { out } = await type(...args)
      expect(out.split('\n').filter((line) => [...line].length > 120)).toEqual([])
    }
  })
})

it('the version is the one of the package', async () => {
  const { version } = JSON.parse(readFileSync(join(projectRoot, 'package.json'), 'utf8'))
  expect(await type('--version')).toEqual({ exit: 0, out: `${version}\n`, err: '' })
})

describe('a command line that does not fit', () => {
  it('is told the nearest command, option, family or choice', async () => {
    expect(await refusal('chek', 'head.yaml')).toBe(
      '(command line): found chek; allowed: new, check, make, measured, sweep, schema, --help, --version. Did you mean check?\n',
    )
    expect(await refusal('make', 'head.yaml', '--oout', 'x')).toBe(
      '(command line): found --oout; allowed: --out, --tables, --json, --help. Did you mean --out?\n',
    )
    expect(await refusal('check', 'head.yaml', '--jason')).toContain('Did you mean --json?')
    expect(await refusal('--hlep')).toContain('Did you mean --help?')
    expect(await refusal('schema', 'flycutter-head')).toContain('Did you mean fly-cutter-head?')
    expect(await refusal('new', 'fly-cutter-head', '--units', 'IN')).toContain('Did you mean in?')
    expect(await refusal('new', 'fly-cutter-head', '--units', 'furlong')).toContain('allowed: --units mm, --units in.')
  })

  it('is told where the help is when nothing is near', async () => {
    expect(await refusal()).toContain('found no command')
    expect(await refusal('')).toContain('found an empty name')
    expect(await refusal('frobnicate')).toContain('See cutterwright --help')
    expect(await refusal('check', 'head.yaml', '-x')).toContain('See cutterwright check --help')
    expect(await refusal('check', 'head.yaml', '-out', 'x')).toContain('found -out;')
  })

  it('is told of everything in one go', async () => {
    const err = await refusal('make', '--jsn', '--tables', '--out=')
    expect(err.split('\n')).toEqual([
      expect.stringContaining('found --jsn;'),
      expect.stringContaining('found --tables with --out= behind it;'),
      expect.stringContaining('found no FILE; allowed: cutterwright make FILE.'),
      '',
    ])
  })

  it('has a value too many, too few, or twice', async () => {
    expect(await refusal('check', 'head.yaml', '--json=yes')).toContain('found --json=yes; allowed: --json alone')
    expect(await refusal('make', 'head.yaml', '--out')).toContain('found --out without a value')
    expect(await refusal('make', 'head.yaml', '--out=')).toContain('found --out without a value')
    expect(await refusal('make', 'head.yaml', '--out', '-x')).toContain('write --out=-x')
    expect(await refusal('make', 'head.yaml', '--out', 'a', '--out', 'b')).toContain('found --out twice')
    expect(await refusal('check', 'my', 'head.yaml')).toContain('Put a name with spaces in quotes')
    expect(await refusal('check', '')).toContain('found an empty name')
    expect(await refusal('make', '-')).toContain('found standard input, and no --out')
  })

  it('cannot steer a terminal through what is repeated of it', async () => {
    expect(await refusal('check', '\u001b[2Jx.yaml')).not.toContain('\u001b')
    expect(await refusal('\u001b[2Jx')).not.toContain('\u001b')
    expect(await refusal('make', 'head.yaml', '--out', '\u001b[2J/x')).not.toContain('\u001b')
  })

  it('writes nothing', async () => {
    headFile(folder())
    const before = folderState(folder())
    await refusal('make', 'head.yaml', '--ot', 'x')
    expect(folderState(folder())).toEqual(before)
  })
})

it('what should never happen is told in a line, without a trace of the stack, and leaves nothing half made', async () => {
  headFile(folder())
  const disk = {
    ...systemDisk,
    rename: () => {
      throw new TypeError('cannot read\nproperties of undefined')
    },
  }
  const run = await typed(folder(), ['make', 'head.yaml'], { machine: { disk, processes: systemProcesses } })
  expect(run).toEqual({
    exit: 2,
    out: '',
    err: 'this is a defect of cutterwright: TypeError: cannot read properties of undefined\nPlease report it, with the file that caused it.\n',
  })
  expect(Object.keys(folderState(folder()) ?? {})).toEqual(['.head.lock', 'head.yaml'])
})
