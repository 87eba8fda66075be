import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { systemDisk } from '../../src/package/disk.ts'
import { manifestOf } from '../../src/package/manifest.ts'
import { kindOf, otherKind } from '../../src/package/target.ts'
import { headFile, typed } from '../command-line/workshop.ts'
import { folderState } from './folder-state.ts'
import { placeAt } from './small-packages.ts'
import { temporaryFolder } from './temporary-folder.ts'

const folder = temporaryFolder()

describe('a folder of ours', () => {
  it('is known by the file that only its command writes', () => {
    const kind = (...names: string[]) => kindOf(manifestOf(new Map(names.map((name) => [name, ''])), '1'))
    expect(kind('sweep.csv', 'sweep.html')).toBe('sweep')
    expect(kind('as-made.json', 'as-made.dxf')).toBe('as-made')
    expect(kind('report.json', 'body.stl')).toBe('package')
  })

  it('is replaced by the command that wrote it and by no other, before anything is worked out', async () => {
    headFile(folder())
    const type = (...args: string[]) => typed(folder(), args)
    const values = join(folder(), 'values.yaml')
    const revision = JSON.parse((await type('check', 'head.yaml', '--json')).out).revision as string
    systemDisk.createFile(values, new TextEncoder().encode(`revision: ${revision}\nbody:\n  slot.depth: 9.52\n`))
    const commands = {
      package: ['make', 'head.yaml'],
      'as-made': ['measured', 'head.yaml', 'values.yaml'],
      sweep: ['sweep', 'head.yaml', '--vary', 'slot.depth=8..9.5:2', '--figures', 'swing'],
    } as const
    const by = { package: 'make', 'as-made': 'measured', sweep: 'sweep' } as const
    const kinds = ['package', 'as-made', 'sweep'] as const
    for (const kind of kinds) expect(await type(...commands[kind], '--out', kind)).toMatchObject({ err: '' })
    for (const standing of kinds) {
      const before = folderState(join(folder(), standing))
      for (const kind of kinds.filter((k) => k !== standing)) {
        const refused = await type(...commands[kind], '--out', standing)
        expect(refused).toMatchObject({ exit: 2, out: '' })
        expect(refused.err).toContain(`that ${by[standing]} wrote; allowed: nothing there, an empty folder`)
        expect(folderState(join(folder(), standing))).toEqual(before)
        expect(otherKind(placeAt(folder(), standing), kind, systemDisk)?.code).toBe('target-not-ours')
      }
      expect(await type(...commands[standing], '--out', standing)).toMatchObject({ err: '' })
      expect(otherKind(placeAt(folder(), standing), standing, systemDisk)).toBeUndefined()
    }
    expect(otherKind(placeAt(folder(), 'nothing-yet'), 'sweep', systemDisk)).toBeUndefined()
  })

  it('that is somebody else’s is left to the check that knows every file', () => {
    systemDisk.makeFolder(join(folder(), 'mine'))
    expect(otherKind(placeAt(folder(), 'mine'), 'package', systemDisk)).toBeUndefined()
  })
})
