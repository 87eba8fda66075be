import { availableParallelism } from 'node:os'
import { systemDisk } from '../package/disk.ts'
import { systemProcesses } from '../package/processes.ts'
import type { World } from './world.ts'

/** The world of this process. */
export function processWorld(): World {
  for (const stream of [process.stdout, process.stderr]) {
    // Whoever reads may stop early, as `head` does: then the rest is not wanted.
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') process.exitCode = 2
    })
  }
  return {
    cwd: process.cwd(),
    // Only when it is asked for: looking at it opens it.
    get stdin() {
      return process.stdin
    },
    stdout: process.stdout,
    stderr: process.stderr,
    machine: { disk: systemDisk, processes: systemProcesses },
    threads: availableParallelism(),
  }
}
