import { existsSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { expect, it } from 'vitest'
import { systemDisk } from '../../src/package/disk.ts'
import { systemProcesses } from '../../src/package/processes.ts'
import { writePackage } from '../../src/package/write-package.ts'
import { folderState, leftovers } from '../package/folder-state.ts'
import { earlierFiles, placeAt, stateOf } from '../package/small-packages.ts'
import { type Spawned, spawnedNode } from '../package/spawned.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { builtCommand } from './built.ts'
import { headFile, typed } from './workshop.ts'

const folder = temporaryFolder()
const { main } = builtCommand()
const run = (...args: string[]) => spawnedNode([main, ...args], { cwd: folder() })
const machine = { disk: systemDisk, processes: systemProcesses }
const at = (name: string) => join(folder(), name)

/** Shares of a run that was not disturbed. */
const shares = [0.05, 0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 0.95]

/** Signs that it writes, which takes too little of a run for most shares to meet. */
const signs: readonly [string, () => boolean][] = [
  ['half of its files are there', () => existsSync(at('.head.writing/body.dxf'))],
  ['the earlier package is moved away', () => existsSync(at('.head.before'))],
]

it('make killed (kill -9) anywhere in its run leaves the earlier package or the new one whole, and the next run says what it tidied', async () => {
  headFile(folder())
  const start = performance.now()
  expect(await run('make', 'head.yaml', '--out', 'expected').ended).toMatchObject({ exit: 0, err: '' })
  const whole = performance.now() - start
  const expected = folderState(at('expected'))
  const earlier = stateOf(earlierFiles, '00000001')

  const killedWhen = async (what: string, moment: (run: Spawned) => Promise<unknown>) => {
    rmSync(at('head'), { recursive: true, force: true })
    expect(writePackage(placeAt(folder()), earlierFiles, '00000001', machine).ok).toBe(true)
    const killed = run('make', 'head.yaml')
    await Promise.race([moment(killed), killed.ended])
    killed.kill()
    await killed.ended
    const left = leftovers(folder(), 'head').filter((name) => !name.includes('.lock'))
    // Recovery is the first thing that a make does, before it reads a file that is not there.
    const next = await typed(folder(), ['make', 'nowhere.yaml', '--out', 'head'])
    expect(next.err.split('\n')[0], what).toMatch(
      left.length > 0 ? /^head: an earlier run / : /^nowhere\.yaml: found nothing/,
    )
    expect([earlier, expected], what).toContainEqual(folderState(at('head')))
    expect(leftovers(folder(), 'head'), what).toEqual([])
  }
  for (const share of shares) await killedWhen(`after ${share} of a run`, () => setTimeout(share * whole))
  for (const [sign, isThere] of signs) {
    const seen = async ({ ended }: Spawned) => {
      const done = ended.then(() => true)
      while (!isThere() && !(await Promise.race([done, setTimeout(1, false)])));
    }
    await killedWhen(sign, seen)
  }
})
