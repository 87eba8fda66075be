import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { systemProcesses } from '../../src/package/processes.ts'
import { failingDisk } from '../package/failing-disk.ts'
import { projectRoot } from '../package/spawned.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { typed } from './workshop.ts'

const folder = temporaryFolder()
const type = (...args: string[]) => typed(folder(), args)
const template = (name: string) => readFileSync(join(projectRoot, 'templates', 'fly-cutter-head', name), 'utf8')
const written = (name: string) => readFileSync(join(folder(), name), 'utf8')

describe('a new parameter set', () => {
  it('is the template of the family, by the name of the family unless another is given', async () => {
    expect(await type('new', 'fly-cutter-head')).toEqual({
      exit: 0,
      out: 'Wrote fly-cutter-head.yaml. Change it to suit, then: cutterwright check fly-cutter-head.yaml\n',
      err: '',
    })
    expect(written('fly-cutter-head.yaml')).toBe(template('parameters.yaml'))
    expect((await type('new', 'fly-cutter-head', 'covers.yaml', '--units=mm')).exit).toBe(0)
    expect(written('covers.yaml')).toBe(template('parameters.yaml'))
  })

  it('in inches is the inch template', async () => {
    expect((await type('new', '--units', 'in', 'fly-cutter-head')).exit).toBe(0)
    expect(written('fly-cutter-head.yaml')).toBe(template('parameters-inch.yaml'))
  })

  it.each(['mm', 'in'])('in %s passes check as it stands, without a stop or anything to guess', async (units) => {
    await type('new', 'fly-cutter-head', 'head.yaml', '--units', units)
    const check = await type('check', 'head.yaml', '--json')
    expect(check).toMatchObject({ exit: 0, err: '' })
    expect(JSON.parse(check.out)).toMatchObject({ units, stops: 0 })
  })
})

describe('what is there already', () => {
  it('is never written over, whatever it is', async () => {
    writeFileSync(join(folder(), 'mine.yaml'), 'mine')
    mkdirSync(join(folder(), 'folder.yaml'))
    symlinkSync(join(folder(), 'nowhere'), join(folder(), 'link.yaml'))
    for (const name of ['mine.yaml', 'folder.yaml', 'link.yaml']) {
      expect(await type('new', 'fly-cutter-head', name)).toEqual({
        exit: 2,
        out: '',
        err: `${name}: found something that is there already; allowed: a new file. Choose another name, or remove it first.\n`,
      })
    }
    expect(written('mine.yaml')).toBe('mine')
    expect(readdirSync(folder()).toSorted()).toEqual(['folder.yaml', 'link.yaml', 'mine.yaml'])
  })
})

describe('a name', () => {
  it.each(['-', 'a\nb.yaml', 'a\u001b[2Jb.yaml', 'aux.yaml', 'head .yaml', 'a:b.yaml', 'head.yaml '])(
    'that make does not take, %j, is refused before anything is written',
    async (name) => {
      const { exit, out, err } = await type('new', 'fly-cutter-head', name)
      expect({ exit, out }).toEqual({ exit: 2, out: '' })
      expect(err).toContain('allowed: a name that every computer of the shop takes. Choose another name.')
      expect(err).not.toContain('\u001b')
      expect(readdirSync(folder())).toEqual([])
    },
  )

  it('with spaces, dots and letters of all kinds within it is fine', async () => {
    for (const name of ['Fräskopf 2.1.yaml', '.head', 'head', 'a&b.yaml']) {
      expect(await type('new', 'fly-cutter-head', name)).toMatchObject({ exit: 0, err: '' })
    }
  })
})

it('a folder that is missing and a disk that is full are told, and nothing is left', async () => {
  const missing = await type('new', 'fly-cutter-head', 'nowhere/head.yaml')
  expect(missing).toMatchObject({ exit: 2, out: '' })
  expect(missing.err).toBe(
    'nowhere/head.yaml: found no folder to write it in; allowed: a new file. Make its folder first, or choose another place.\n',
  )
  const { disk } = failingDisk(1, 'refused', 'ENOSPC')
  const full = await typed(folder(), ['new', 'fly-cutter-head'], { machine: { disk, processes: systemProcesses } })
  expect(full.err).toContain('found a full disk')
  expect(readdirSync(folder())).toEqual([])
})
