import { rmSync, statfsSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { systemDisk } from '../../src/package/disk.ts'
import { systemProcesses } from '../../src/package/processes.ts'
import { writePackage } from '../../src/package/write-package.ts'
import { headFile, typed } from '../command-line/workshop.ts'
import { failingDisk } from './failing-disk.ts'
import { folderState, leftovers } from './folder-state.ts'
import { smallDisk } from './small-disk.ts'
import { earlierFiles, newFiles, placeAt, problemsOf, stateOf } from './small-packages.ts'
import { temporaryFolder } from './temporary-folder.ts'

const root = temporaryFolder()
const machine = { disk: systemDisk, processes: systemProcesses }
const earlier = stateOf(earlierFiles, '00000001')
const block = 4096
/** Twenty files of a block each: a disk can be full at any of them. */
const manyFiles = new Map(Array.from({ length: 20 }, (_, i) => [`file-${i}.stl`, new Uint8Array(block).fill(i)]))

it('make on a disk that gets full says so, leaves the earlier package whole and nothing half written', async (test) => {
  const disk = smallDisk(test, join(root(), 'stick'), 600)
  try {
    headFile(root())
    expect(writePackage(placeAt(disk.folder), earlierFiles, '00000001', machine).ok).toBe(true)
    expect(await typed(root(), ['make', 'head.yaml', '--out', 'stick/head'])).toEqual({
      exit: 2,
      out: '',
      err: 'stick/head: found a full disk; allowed: a place that can be written. Free some room, or choose another disk.\n',
    })
    expect(folderState(join(disk.folder, 'head'))).toEqual(earlier)
    expect(leftovers(disk.folder, 'head')).toEqual([])
  } finally {
    disk.release()
  }
})

it('a disk full at any step leaves the earlier package whole, and with room again the next run succeeds', (test) => {
  const disk = smallDisk(test, join(root(), 'stick'), 400)
  try {
    const head = join(disk.folder, 'head')
    const filler = join(disk.folder, 'photo.raw')
    expect(writePackage(placeAt(disk.folder), earlierFiles, '00000001', machine).ok).toBe(true)
    const free = statfsSync(disk.folder).bavail
    const ends: boolean[] = []
    for (let room = 0; room <= 30; room++) {
      writeFileSync(filler, new Uint8Array((free - room) * block))
      const result = writePackage(placeAt(disk.folder), manyFiles, '00000002', machine)
      ends.push(result.ok)
      if (result.ok) break
      expect(result.problems, `${room} blocks`).toMatchObject([{ code: 'not-writable', found: 'a full disk' }])
      expect(folderState(head), `${room} blocks`).toEqual(earlier)
      expect(leftovers(disk.folder, 'head'), `${room} blocks`).toEqual([])
      rmSync(filler)
    }
    expect(ends.filter((ok) => !ok).length).toBeGreaterThan(20)
    expect(ends.at(-1)).toBe(true)
    expect(folderState(head)).toEqual(stateOf(manyFiles, '00000002'))
    expect(leftovers(disk.folder, 'head')).toEqual([])
  } finally {
    disk.release()
  }
})

it('a disk that has become read-only says so, and the earlier package stays', (test) => {
  const disk = smallDisk(test, join(root(), 'stick'), 400)
  try {
    expect(writePackage(placeAt(disk.folder), earlierFiles, '00000001', machine).ok).toBe(true)
    disk.makeReadOnly()
    const [problem] = problemsOf(writePackage(placeAt(disk.folder), newFiles, '00000002', machine))
    expect(problem).toMatchObject({ code: 'not-writable', found: 'a disk that can only be read' })
    expect(folderState(join(disk.folder, 'head'))).toEqual(earlier)
    expect(leftovers(disk.folder, 'head')).toEqual([])
  } finally {
    disk.release()
  }
})

it('a folder that vanishes before any step of the writing is a problem, not a defect, and nothing comes back', () => {
  const steps = failingDisk(Number.POSITIVE_INFINITY, 'refused')
  writePackage(placeAt(root(), 'counted'), newFiles, '00000002', { ...machine, disk: steps.disk })
  expect(steps.steps.length).toBeGreaterThan(8)
  for (let step = 0; step < steps.steps.length; step++) {
    const parent = join(root(), `step ${step}`)
    systemDisk.makeFolder(parent)
    writePackage(placeAt(parent), earlierFiles, '00000001', machine)
    let count = 0
    const vanishing = <Given extends unknown[], Back>(does: (...given: Given) => Back) => {
      return (...given: Given): Back => {
        if (count++ === step) rmSync(parent, { recursive: true })
        return does(...given)
      }
    }
    const { makeFolder, createFile, overwrite, syncFolder, rename, removeFile, removeFolder } = failingDisk(
      Number.POSITIVE_INFINITY,
      'refused',
    ).disk
    const disk = {
      ...systemDisk,
      makeFolder: vanishing(makeFolder),
      createFile: vanishing(createFile),
      overwrite: vanishing(overwrite),
      syncFolder: vanishing(syncFolder),
      rename: vanishing(rename),
      removeFile: vanishing(removeFile),
      removeFolder: vanishing(removeFolder),
    }
    const result = writePackage(placeAt(parent), newFiles, '00000002', { ...machine, disk })
    if (!result.ok) {
      expect(result.problems, `step ${step}`).toMatchObject([
        { code: 'not-writable', found: 'no folder to write it in', where: { file: 'head' } },
      ])
    }
    expect(folderState(parent), `step ${step}`).toBeUndefined()
  }
})
