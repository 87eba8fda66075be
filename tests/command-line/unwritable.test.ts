import { chmodSync, chownSync, existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { systemDisk } from '../../src/package/disk.ts'
import { systemProcesses } from '../../src/package/processes.ts'
import { replaceable } from '../../src/package/target.ts'
import { writePackage } from '../../src/package/write-package.ts'
import { folderState, leftovers } from '../package/folder-state.ts'
import { earlierFiles, placeAt, stateOf } from '../package/small-packages.ts'
import { spawnedNode } from '../package/spawned.ts'
import { temporaryFolder } from '../package/temporary-folder.ts'
import { builtCommand } from './built.ts'
import { headFile, typed } from './workshop.ts'

const folder = temporaryFolder()
const { main } = builtCommand()

/** Permissions do not bind an administrator, as whom CI runs: then the command runs as the user that is nobody. */
const nobody = process.getuid?.() === 0 ? 65534 : undefined
const run = (...args: string[]) =>
  spawnedNode([main, ...args], { cwd: folder(), ...(nobody !== undefined && { user: nobody }) }).ended
const refusal = (what: string, allowed: string) =>
  expect.stringMatching(new RegExp(`^${what}: found no permission to write there; allowed: ${allowed}\\. `))

const head = () => join(folder(), 'head')
/** Whether the new package is there, every file as its own list says. */
const whole = () => existsSync(join(head(), 'drawings.pdf')) && replaceable(placeAt(folder()), systemDisk).ok
const machine = { disk: systemDisk, processes: systemProcesses }
const place = 'a place that can be written'

/** A package of other files, and a parameter set. */
function begun(): void {
  expect(writePackage(placeAt(folder()), earlierFiles, '00000001', machine).ok).toBe(true)
  headFile(folder())
}
const earlier = stateOf(earlierFiles, '00000001')

// Windows has other means than marks on a folder.
it.skipIf(process.platform === 'win32')(
  'in a folder that can only be read check works; make, new and sweep say what they lack, and nothing changes',
  async () => {
    begun()
    const names = readdirSync(folder())
    chmodSync(folder(), 0o555)
    try {
      expect(await run('check', 'head.yaml')).toMatchObject({ exit: 0, err: '' })
      expect(await run('make', 'head.yaml')).toMatchObject({ exit: 2, out: '', err: refusal('head', place) })
      const vary = ['--vary', 'slot.depth=8..9:2', '--out', 'sweep']
      expect(await run('sweep', 'head.yaml', ...vary)).toMatchObject({ exit: 2, err: refusal('sweep', place) })
      const made = await run('new', 'fly-cutter-head', 'new.yaml')
      expect(made).toMatchObject({ exit: 2, out: '', err: refusal('new.yaml', 'a new file') })
      expect(readdirSync(folder())).toEqual(names)
      expect(folderState(head())).toEqual(earlier)
    } finally {
      chmodSync(folder(), 0o755)
    }
  },
)

it.skipIf(nobody === undefined)(
  'over the package of another user the new one comes whole, and of the earlier one nothing is lost until its owner tidies',
  async () => {
    begun()
    chownSync(folder(), nobody!, nobody!)
    const note = '.head.before could not be removed yet; the next run will try again\n'
    expect(await run('make', 'head.yaml')).toMatchObject({ exit: 0, err: note })
    expect(await run('make', 'head.yaml')).toMatchObject({
      exit: 2,
      out: '',
      err: refusal('(\\.head\\.before|head)', place),
    })
    expect(whole()).toBe(true)
    expect(folderState(join(folder(), '.head.before'))).toEqual(earlier)
    const { err } = await typed(folder(), ['make', 'nowhere.yaml', '--out', 'head'])
    expect(err).toMatch(/^head: an earlier run ended before it had tidied up; its package is whole\n/)
    expect(leftovers(folder(), 'head')).toEqual([])
    expect(whole()).toBe(true)
  },
)
