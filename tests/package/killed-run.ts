// A run on a real disk that kills its own process before a given writing step: `killed-run.ts PARENT STEP`.
import { type Disk, systemDisk } from '../../src/package/disk.ts'
import { systemProcesses } from '../../src/package/processes.ts'
import { writePackage } from '../../src/package/write-package.ts'
import { newFiles, placeAt } from './small-packages.ts'

const [parent = '', last = ''] = process.argv.slice(2)
let steps = 0
const killedAt = <Given extends unknown[]>(step: (...given: Given) => void) => {
  return (...given: Given): void => {
    steps++
    if (steps === Number(last)) process.kill(process.pid, 'SIGKILL')
    step(...given)
  }
}
const disk: Disk = {
  ...systemDisk,
  makeFolder: killedAt(systemDisk.makeFolder),
  createFile: killedAt(systemDisk.createFile),
  syncFolder: killedAt(systemDisk.syncFolder),
  rename: killedAt(systemDisk.rename),
  removeFile: killedAt(systemDisk.removeFile),
  removeFolder: killedAt(systemDisk.removeFolder),
}
writePackage(placeAt(parent), newFiles, '00000002', { disk, processes: systemProcesses })
