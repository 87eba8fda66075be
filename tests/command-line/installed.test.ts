import { spawnSync } from 'node:child_process'
import { mkdirSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { folderState } from '../package/folder-state.ts'
import { projectRoot, spawnedProgram } from '../package/spawned.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { builtCommand } from './built.ts'
import { typed } from './workshop.ts'

const folder = temporaryFolder()
const { home } = builtCommand()

const npm = (...args: string[]) =>
  spawnSync('npm', [...args, '--loglevel=error'], {
    cwd: home,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  })

describe('the package for npm', () => {
  it('installs offline into an empty folder, with nothing but itself, and works there as in a clone', async () => {
    const { scripts } = JSON.parse(readFileSync(join(projectRoot, 'package.json'), 'utf8'))
    expect(scripts.prepack, 'what packing builds is what is packed here').toBe('npm run -s build')
    const packed = npm('pack', '--json', '--ignore-scripts', '--pack-destination', folder())
    expect(packed).toMatchObject({ status: 0, stderr: '' })
    const [{ files, size, filename }] = JSON.parse(packed.stdout)
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

    const shop = join(folder(), 'shop')
    mkdirSync(shop)
    const options = ['--prefix', shop, '--offline', '--no-audit', '--no-fund']
    expect(npm('install', join(folder(), filename), ...options)).toMatchObject({ status: 0, stderr: '' })
    const modules = join(shop, 'node_modules')
    expect(readdirSync(modules).toSorted()).toEqual(['.bin', '.package-lock.json', 'cutterwright'])
    const main = join(modules, 'cutterwright', 'dist', 'command-line', 'main.js')
    expect(readFileSync(main, 'utf8')).toMatch(/^#!\/usr\/bin\/env node\n/)

    const bench = join(shop, 'bench')
    mkdirSync(bench)
    const command = (...args: string[]) =>
      spawnedProgram(join(modules, '.bin', 'cutterwright'), args, { cwd: bench }).ended
    expect(await command('new', 'fly-cutter-head', 'head.yaml')).toMatchObject({ exit: 0, err: '' })
    expect(await command('check', 'head.yaml')).toEqual({
      ...(await typed(bench, ['check', 'head.yaml'])),
      signal: null,
    })
    expect(await command('make', 'head.yaml')).toMatchObject({ exit: 0, err: '' })
    expect(readdirSync(bench).toSorted()).toEqual(['head', 'head.yaml'])
    await typed(bench, ['make', 'head.yaml', '--out', 'from-source'])
    expect(folderState(join(bench, 'head'))).toEqual(folderState(join(bench, 'from-source')))
  })
})
