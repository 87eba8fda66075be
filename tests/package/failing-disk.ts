import { readdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Disk, systemDisk } from '../../src/package/disk.ts'

export type Failure =
  /** One step is refused; everything after it works again. */
  | 'refused'
  /** Nothing is written any more from that step on, as if the process had died before it. */
  | 'dead before'
  /** The same, in the middle of the step: half a file is written, half a folder removed. */
  | 'dead within'

/** The system's disk, which does not wait until things are on it: a test that dies a thousand times would take minutes. */
export const quickDisk: Disk = {
  ...systemDisk,
  createFile: (path, content) => writeFileSync(path, content, { flag: 'wx' }),
  syncFolder: () => undefined,
}

/** A quick disk, of which the writing step `at` (counted from 1) fails. `steps` tells what was asked of it. */
export function failingDisk(at: number, failure: Failure, code = 'EIO'): { disk: Disk; steps: string[] } {
  const steps: string[] = []
  const step = <Given extends unknown[]>(name: keyof Disk, half?: (...given: Given) => void) => {
    return (...given: Given): void => {
      steps.push(`${name} ${given.filter((g) => typeof g === 'string').join(' ')}`)
      const now = steps.length
      if (now === at && failure === 'dead within') half?.(...given)
      if (now === at || (now > at && failure !== 'refused')) throw systemError(code)
      ;(quickDisk[name] as unknown as (...given: Given) => void)(...given)
    }
  }
  const halfFile = (path: string, content: Uint8Array | string) =>
    writeFileSync(path, content.slice(0, Math.floor(content.length / 2)))
  const disk: Disk = {
    standing: systemDisk.standing,
    list: systemDisk.list,
    read: systemDisk.read,
    makeFolder: step('makeFolder'),
    createFile: step('createFile', halfFile),
    overwrite: step('overwrite', halfFile),
    syncFolder: step('syncFolder'),
    rename: step('rename'),
    removeFile: step('removeFile'),
    removeFolder: step('removeFolder', (folder: string) => {
      const names = readdirSync(folder).toSorted()
      for (const name of names.slice(0, Math.ceil(names.length / 2))) rmSync(join(folder, name), { recursive: true })
    }),
  }
  return { disk, steps }
}

/** An error as the system gives it. */
export const systemError = (code: string): Error => Object.assign(new Error(code), { code, syscall: 'write' })
