import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { systemDisk } from '../../src/package/disk.ts'
import { systemProcesses } from '../../src/package/processes.ts'
import { recoverAtStart } from '../../src/package/recover.ts'
import { writePackage } from '../../src/package/write-package.ts'
import { failingDisk } from './failing-disk.ts'
import { folderState, leftovers } from './folder-state.ts'
import { earlierFiles, newFiles, placeAt, stateOf } from './small-packages.ts'
import { spawned } from './spawned.ts'
import { temporaryFolder } from './temporary-folder.ts'

const root = temporaryFolder()
const machine = { disk: systemDisk, processes: systemProcesses }

it('a process killed (kill -9) before any step leaves the earlier package or the new one, once the next has started', async () => {
  const begun = (name: string) => {
    const parent = join(root(), name)
    mkdirSync(parent)
    expect(writePackage(placeAt(parent), earlierFiles, '00000001', machine).ok).toBe(true)
    return parent
  }
  const counting = failingDisk(Number.POSITIVE_INFINITY, 'refused')
  writePackage(placeAt(begun('counted')), newFiles, '00000002', { ...machine, disk: counting.disk })
  const count = counting.steps.length
  expect(count).toBeGreaterThan(10)

  const states: string[] = []
  const kill = async (step: number) => {
    const parent = begun(`step ${step}`)
    expect((await spawned('tests/package/killed-run.ts', [parent, String(step)]).ended).signal).toBe('SIGKILL')
    const left = leftovers(parent, 'head').filter((found) => !found.includes('.lock'))
    const recovered = recoverAtStart(placeAt(parent), machine)
    expect(recovered.ok && recovered.value !== undefined, `step ${step}`).toBe(left.length > 0)
    expect(leftovers(parent, 'head')).toEqual([])
    const state = folderState(join(parent, 'head'))
    expect([stateOf(earlierFiles, '00000001'), stateOf(newFiles, '00000002')]).toContainEqual(state)
    states[step] = state?.['arbor.stl'] === undefined ? 'earlier' : 'new'
  }
  // Two at a time: a process takes most of its time to start.
  for (let step = 1; step <= count; step += 2) {
    await Promise.all([step, step + 1].filter((s) => s <= count).map(kill))
  }
  // From some step on it is the new one, and before that never.
  expect(states.slice(1).join(' ')).toMatch(/^(?:earlier )+new(?: new)*$/)
})
