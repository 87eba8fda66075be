import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { manifestOf } from '../../src/package/manifest.ts'
import { systemProcesses } from '../../src/package/processes.ts'
import { reportSchema } from '../../src/report/report-schema.ts'
import { failingDisk, quickDisk } from '../package/failing-disk.ts'
import { fakeProcess } from '../package/fake-processes.ts'
import { folderState, leftovers } from '../package/folder-state.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { deepBore, headFile, headText, typed } from './workshop.ts'

const folder = temporaryFolder()
const type = (...args: string[]) => typed(folder(), args)
const packageAt = (name: string) => folderState(join(folder(), name))

describe('make', () => {
  it('writes the package beside the file, lists what it wrote, and leaves nothing else', async () => {
    headFile(folder())
    const { exit, out, err } = await type('make', 'head.yaml')
    expect({ exit, err }).toEqual({ exit: 0, err: '' })
    const files = packageAt('head') ?? {}
    expect(Object.keys(files)).toEqual(
      expect.arrayContaining([
        'arbor.stl',
        'assembly.stl',
        'bit.stl',
        'body.stl',
        'contents.json',
        'profiles.dxf',
        'report.json',
        'report.md',
      ]),
    )
    const listed = out.slice(out.indexOf('Written to head\n')).trimEnd().split('\n').slice(1)
    expect(listed.map((line) => line.trim()).toSorted()).toEqual(Object.keys(files))
    const report = reportSchema.parse(JSON.parse(files['report.json'] ?? ''))
    expect(out).toContain(`Facing head for pump covers: fly-cutter-head, revision ${report.revision}`)
    expect(JSON.parse(files['contents.json'] ?? '').revision).toBe(report.revision)
    expect(readdirSync(folder()).toSorted()).toEqual(['head', 'head.yaml'])
  })

  it('twice gives the same bytes, wherever it goes', async () => {
    headFile(folder())
    mkdirSync(join(folder(), 'out'))
    await type('make', 'head.yaml')
    const first = packageAt('head')
    await type('make', 'head.yaml')
    await type('make', join(folder(), 'head.yaml'), '--out', join('out', 'again'))
    expect(packageAt('head')).toEqual(first)
    expect(packageAt('out/again')).toEqual(first)
  })

  it('says the same as check, and lists sizes and hashes, for programs', async () => {
    headFile(folder())
    const { exit, out, err } = await type('make', 'head.yaml', '--json')
    expect({ exit, err }).toEqual({ exit: 0, err: '' })
    const files = new Map(
      Object.entries(packageAt('head') ?? {}).map(([name, text]) => [name, Buffer.from(text, 'latin1')]),
    )
    files.delete('contents.json')
    const { revision } = JSON.parse((await type('check', 'head.yaml', '--json')).out)
    expect(JSON.parse(out)).toEqual({
      revision,
      folder: join(folder(), 'head'),
      stops: 0,
      files: manifestOf(files, revision).files,
    })
  })

  it('with a stop still writes the package, says so and ends with 1', async () => {
    headFile(folder(), headText(deepBore))
    const { exit, out, err } = await type('make', 'head.yaml')
    expect({ exit, err }).toEqual({ exit: 1, err: '' })
    expect(out).toContain('stop  Slot for the bit and bore break into each other')
    expect(out).toContain('The package is written all the same. Do not make this tool as it is.')
    expect(packageAt('head')?.['report.md']).toMatch(/stops? this job/)
    expect(JSON.parse((await type('make', 'head.yaml', '--json')).out).stops).toBeGreaterThan(0)
  })

  it('names the folder after the file, whatever its extension', async () => {
    headFile(folder(), undefined, 'head')
    expect((await type('make', 'head')).out).toContain('Written to head-package\n')
    headFile(folder(), undefined, 'head.v2.yml')
    expect((await type('make', 'head.v2.yml')).out).toContain('Written to head.v2\n')
  })

  it('reads standard input where a folder is named', async () => {
    headFile(folder())
    await type('make', 'head.yaml')
    const { exit } = await typed(folder(), ['make', '-', '--out', 'piped'], { input: headText() })
    expect(exit).toBe(0)
    expect(packageAt('piped')).toEqual(packageAt('head'))
  })
})

describe('make does not write', () => {
  it('over what is not a package of ours, or was changed by hand', async () => {
    headFile(folder())
    mkdirSync(join(folder(), 'head'))
    writeFileSync(join(folder(), 'head', 'photo.jpg'), 'mine')
    expect(await type('make', 'head.yaml')).toMatchObject({
      exit: 2,
      out: '',
      err: expect.stringMatching(/^head: found a folder that cutterwright did not write, with photo\.jpg in it;/),
    })
    await type('make', 'head.yaml', '--out', 'ours')
    writeFileSync(join(folder(), 'ours', 'report.md'), 'mine')
    const before = folderState(join(folder(), 'ours'))
    expect((await type('make', 'head.yaml', '--out', 'ours')).err).toMatch(/changed or added by hand: report\.md;/)
    expect(packageAt('ours')).toEqual(before)
    expect(packageAt('head')).toEqual({ 'photo.jpg': 'mine' })
  })

  it('where a folder is missing, a file is in the way, or one stands in it', async () => {
    headFile(folder())
    for (const [out, said] of [
      ['nowhere/head', 'nowhere/head: found no folder to write it in;'],
      ['head.yaml', 'head.yaml: found a file;'],
      ['head.yaml/head', 'head.yaml/head: found a file where its folder should be;'],
      ['.', '.: found the current folder;'],
      ['..', '..: found a folder above this one;'],
      ['x'.repeat(300), 'found a name that is too long for this disk;'],
    ] as const) {
      const { exit, err } = await type('make', 'head.yaml', '--out', out)
      expect(exit).toBe(2)
      expect(err).toContain(said)
    }
    expect(readdirSync(folder())).toEqual(['head.yaml'])
  })

  it('anything where the disk is full: the earlier package stays', async () => {
    headFile(folder())
    await type('make', 'head.yaml')
    const before = packageAt('head')
    headFile(folder(), headText(['size: 46 ', 'size: 50 ']))
    const { disk } = failingDisk(5, 'refused', 'ENOSPC')
    const run = await typed(folder(), ['make', 'head.yaml'], { machine: { disk, processes: systemProcesses } })
    expect(run).toMatchObject({ exit: 2, out: '', err: expect.stringContaining('head: found a full disk;') })
    expect(packageAt('head')).toEqual(before)
    expect(leftovers(folder(), 'head')).toEqual([])
  })

  it('while another run is at it, which it says before it works anything out', async () => {
    headFile(folder(), 'not: even\na: parameter set\n')
    const at = join(folder(), '.head.lock')
    writeFileSync(at, JSON.stringify(systemProcesses.self()))
    const { exit, err } = await type('make', 'head.yaml')
    expect(exit).toBe(2)
    expect(err).toMatch(/^head: found another run that is writing there \(process \d+ on .*\.head\.lock\.\n$/)
    expect(readdirSync(folder()).toSorted()).toEqual(['.head.lock', 'head.yaml'])
  })
})

describe('after a run that died', () => {
  const die = async (step: number) => {
    const { disk, steps } = failingDisk(step, 'dead before')
    await typed(folder(), ['make', 'head.yaml'], { machine: { disk, processes: fakeProcess(1) } })
    return steps.length
  }
  const machine = { disk: quickDisk, processes: fakeProcess(2) }

  it('the next make recovers first and says so on stderr, even if the parameter set is then no good', async () => {
    headFile(folder())
    await typed(folder(), ['make', 'head.yaml'], { machine })
    const before = packageAt('head')
    const { disk, steps } = failingDisk(Number.POSITIVE_INFINITY, 'refused')
    await typed(folder(), ['make', 'head.yaml'], { machine: { disk, processes: fakeProcess(1) } })
    const renames = steps.flatMap((step, index) => (step.startsWith('rename') ? [index + 1] : []))
    await die(renames[1] ?? 0)
    expect(packageAt('head')).toBeUndefined()

    headFile(folder(), 'family: fly-cutter-head\nunits: furlong\n')
    const bad = await typed(folder(), ['make', 'head.yaml'], { machine })
    expect(bad.exit).toBe(2)
    expect(bad.err).toMatch(
      /^head: an earlier run was cut short; the package from before it is back in place\nhead\.yaml/,
    )
    expect(packageAt('head')).toEqual(before)
    expect(leftovers(folder(), 'head')).toEqual([])

    headFile(folder())
    expect(await typed(folder(), ['make', 'head.yaml'], { machine })).toMatchObject({ exit: 0, err: '' })
    expect(packageAt('head')).toEqual(before)
  })

  it('a first package that was begun is cleared away', async () => {
    headFile(folder())
    await die(6)
    expect(leftovers(folder(), 'head')).toEqual(['.head.lock', '.head.writing'])
    const run = await typed(folder(), ['make', 'head.yaml'], { machine })
    expect(run).toMatchObject({
      exit: 0,
      err: 'head: an earlier run was cut short; what it had begun is removed\n',
    })
    expect(leftovers(folder(), 'head')).toEqual([])
    rmSync(join(folder(), 'head'), { recursive: true })
  })
})
