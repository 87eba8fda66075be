import { mkdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { systemDisk } from '../../src/package/disk.ts'
import { packagePlace } from '../../src/package/package-place.ts'
import { writePackage } from '../../src/package/write-package.ts'
import { failingDisk } from './failing-disk.ts'
import { fakeProcess } from './fake-processes.ts'
import { folderState, leftovers } from './folder-state.ts'
import { earlierFiles, newFiles, placeAt, problemsOf, stateOf } from './small-packages.ts'
import { temporaryFolder } from './temporary-folder.ts'

const parent = temporaryFolder()
const target = () => join(parent(), 'head')
const machine = { disk: systemDisk, processes: fakeProcess(1) }
const write = (files = newFiles, revision = '00000002') => writePackage(placeAt(parent()), files, revision, machine)

describe('a package', () => {
  it('is written with a list of its files and their hashes, and nothing is left beside it', () => {
    const result = write()
    expect(result.ok && result.value.notes).toEqual([])
    expect(folderState(target())).toEqual(stateOf(newFiles, '00000002'))
    expect(leftovers(parent(), 'head')).toEqual([])
    const list = JSON.parse(readFileSync(join(target(), 'contents.json'), 'utf8'))
    expect(list.revision).toBe('00000002')
    // SHA-256 of `# newer report\n`, as sha256sum prints it.
    expect(list.files[2]).toEqual({
      name: 'report.md',
      size: 15,
      sha256: '12b6f339ef1f198e8f580ccdbd6dcf5ea0899fc3a25a0d4088a24b8d0d7c3ee2',
    })
  })

  it('replaces an earlier one wholly: files that are no longer part of it go', () => {
    write(earlierFiles, '00000001')
    expect(write().ok).toBe(true)
    expect(folderState(target())).toEqual(stateOf(newFiles, '00000002'))
    expect(leftovers(parent(), 'head')).toEqual([])
  })

  it('comes out the same twice', () => {
    write()
    const first = folderState(target())
    rmSync(target(), { recursive: true })
    write(new Map([...newFiles].reverse()))
    expect(folderState(target())).toEqual(first)
  })

  it('takes the place of an empty folder, and of one in which a file browser left its mark', () => {
    mkdirSync(target())
    expect(write().ok).toBe(true)
    writeFileSync(join(target(), '.DS_Store'), 'x')
    expect(write().ok).toBe(true)
    expect(folderState(target())).toEqual(stateOf(newFiles, '00000002'))
  })

  it('is written anew where the user removed one of its files', () => {
    write()
    rmSync(join(target(), 'body.stl'))
    expect(write().ok).toBe(true)
    expect(folderState(target())).toEqual(stateOf(newFiles, '00000002'))
  })

  it('never carries a file by a name that leads elsewhere, nor one that would hide its list', () => {
    expect(() => write(new Map([['../body.stl', 'x']]))).toThrow(RangeError)
    expect(() => write(new Map([['contents.json', 'x']]))).toThrow(RangeError)
    expect(folderState(target())).toBeUndefined()
  })
})

describe("somebody's own work", () => {
  const refused = (code: string, found: RegExp | string) => {
    const before = folderState(target())
    const [problem] = problemsOf(write())
    expect(problem).toMatchObject({ code, where: { file: 'head' } })
    expect(problem?.found).toMatch(found)
    expect(folderState(target())).toEqual(before)
    expect(leftovers(parent(), 'head')).toEqual([])
    return problem
  }

  it('a folder that cutterwright did not write is left alone', () => {
    mkdirSync(target())
    writeFileSync(join(target(), 'notes.txt'), 'mine')
    refused('target-not-ours', 'notes.txt')
  })

  it('a folder with a contents.json of some other make is left alone', () => {
    mkdirSync(target())
    for (const text of ['{}', '[1, 2', '{"format":"cutterwright package 9","revision":"1","files":[]}']) {
      writeFileSync(join(target(), 'contents.json'), text)
      refused('target-not-ours', 'contents.json')
    }
    rmSync(join(target(), 'contents.json'))
    mkdirSync(join(target(), 'contents.json'))
    refused('target-not-ours', 'contents.json')
  })

  it('files that were changed or added by hand are named, with what to do', () => {
    write(earlierFiles, '00000001')
    writeFileSync(join(target(), 'old-sheet.csv'), 'x,y\n1,2.02\n')
    writeFileSync(join(target(), 'photo.jpg'), 'x')
    mkdirSync(join(target(), 'offcuts'))
    const problem = refused('target-changed', /: offcuts, old-sheet\.csv, photo\.jpg$/)
    expect(problem?.remedy).toBe('move them elsewhere, or choose another --out')
  })

  it('a change that keeps the size is seen, and so is one of the list itself', () => {
    write()
    writeFileSync(join(target(), 'report.md'), '# Newer report\n')
    refused('target-changed', /: report\.md$/)
    writeFileSync(join(target(), 'report.md'), '# newer report\n')
    const list = join(target(), 'contents.json')
    writeFileSync(list, readFileSync(list, 'utf8').trimEnd())
    refused('target-changed', /: contents\.json$/)
  })

  it('a link is not followed, whether it is the folder or in it, and a file is not replaced', () => {
    writeFileSync(join(parent(), 'elsewhere.md'), '# newer report\n')
    mkdirSync(join(parent(), 'elsewhere'))
    symlinkSync(join(parent(), 'elsewhere'), target())
    refused('target-not-ours', 'a link')
    rmSync(target())
    symlinkSync(join(parent(), 'nowhere'), target())
    expect(problemsOf(write())[0]).toMatchObject({ code: 'target-not-ours', found: 'a link to somewhere else' })
    rmSync(target())
    write()
    rmSync(join(target(), 'report.md'))
    symlinkSync(join(parent(), 'elsewhere.md'), join(target(), 'report.md'))
    refused('target-changed', /: report\.md$/)
    rmSync(target(), { recursive: true })
    writeFileSync(target(), 'mine')
    expect(problemsOf(write())[0]).toMatchObject({ code: 'target-not-ours', found: 'a file' })
    expect(readFileSync(target(), 'utf8')).toBe('mine')
  })

  it('things beside the target by the names of our own are left alone where no run of ours left them', () => {
    mkdirSync(join(parent(), '.head.writing'))
    mkdirSync(join(parent(), '.head.before'))
    writeFileSync(join(parent(), '.head.before', 'body.stl'), 'x')
    const problems = problemsOf(write())
    expect(problems.map(({ where, code }) => [where.file, code])).toEqual([
      ['.head.before', 'target-not-ours'],
      ['.head.writing', 'target-not-ours'],
    ])
    expect(problems[0]?.remedy).toContain('rename it to head')
    // And asking again does not make them ours.
    expect(problemsOf(write())).toEqual(problems)
    expect(leftovers(parent(), 'head')).toEqual(['.head.before', '.head.writing'])
    expect(folderState(join(parent(), '.head.before'))).toEqual({ 'body.stl': 'x' })
  })
})

describe('a disk that refuses', () => {
  const refusal = (code: string) => {
    const { disk } = failingDisk(4, 'refused', code)
    return problemsOf(writePackage(placeAt(parent()), newFiles, '1', { disk, processes: fakeProcess(1) }))[0]
  }

  it('is told in words, with what to do', () => {
    expect(refusal('ENOSPC')).toEqual({
      code: 'not-writable',
      where: { file: 'head' },
      found: 'a full disk',
      allowed: 'a place that can be written',
      remedy: 'free some room, or choose another disk',
    })
    expect(refusal('EROFS')?.found).toBe('a disk that can only be read')
    expect(refusal('EACCES')?.found).toContain('no permission')
    expect(refusal('EBUSY')?.remedy).toContain('close what has it open')
    expect(refusal('EWHATEVER')?.found).toBe("the system's answer EWHATEVER")
  })

  it('an error that is not the system’s is ours: it is thrown on, and nothing is half written', () => {
    const disk = {
      ...systemDisk,
      syncFolder: (path: string) => {
        if (path.endsWith('writing')) throw new TypeError('ours')
      },
    }
    const broken = { disk, processes: fakeProcess(1) }
    expect(() => writePackage(placeAt(parent()), newFiles, '1', broken)).toThrow('ours')
    expect(folderState(target())).toBeUndefined()
    expect(leftovers(parent(), 'head')).toEqual(['.head.lock'])
    expect(write().ok).toBe(true)
    expect(leftovers(parent(), 'head')).toEqual([])
  })

  it('a parent that is missing or a file, and a name no disk takes', () => {
    writeFileSync(join(parent(), 'file'), '')
    const at = (named: string) => problemsOf(writePackage(placeAt(parent(), named), newFiles, '1', machine))[0]
    expect(at('nowhere/head')).toMatchObject({
      code: 'not-writable',
      where: { file: 'nowhere/head' },
      found: 'no folder to write it in',
      remedy: 'make its folder first, or choose another place',
    })
    expect(at('file/head')?.found).toBe('a file where its folder should be')
    expect(at('x'.repeat(300))?.found).toBe('a name that is too long for this disk')
    // A name with a control character is refused before anything is written.
    expect(packagePlace(parent(), 'a\0b').ok).toBe(false)
    expect(folderState(parent())).toEqual({ file: '' })
  })

  it('an earlier package that cannot be removed is left to the next run, which removes it', () => {
    write(earlierFiles, '00000001')
    const disk = {
      ...systemDisk,
      removeFolder: () => {
        throw Object.assign(new Error('open elsewhere'), { code: 'EBUSY', syscall: 'rmdir' })
      },
    }
    const processes = fakeProcess(1, [1])
    const result = writePackage(placeAt(parent()), newFiles, '00000002', { disk, processes })
    expect(result.ok && result.value.notes).toEqual([
      '.head.before could not be removed yet; the next run will try again',
    ])
    expect(folderState(target())).toEqual(stateOf(newFiles, '00000002'))
    // The same process, still running, is not taken for a run at work.
    const again = writePackage(placeAt(parent()), newFiles, '00000002', { disk: systemDisk, processes })
    expect(again.ok && again.value.notes).toEqual([
      'head: an earlier run ended before it had tidied up; its package is whole',
    ])
    expect(leftovers(parent(), 'head')).toEqual([])
  })
})

it('the folder and its files can be read by others, as the shop’s other files can', () => {
  const mask = process.umask(0o022)
  try {
    write()
  } finally {
    process.umask(mask)
  }
  expect(statSync(target()).mode & 0o777).toBe(0o755)
  expect(statSync(join(target(), 'report.md')).mode & 0o777).toBe(0o644)
})
