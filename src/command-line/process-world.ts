import { fstatSync, writeSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { isatty } from 'node:tty'
import { printProblem } from '../input/print-problem.ts'
import { systemDisk } from '../package/disk.ts'
import { diskProblem, systemCode } from '../package/disk-problem.ts'
import { systemProcesses } from '../package/processes.ts'
import type { Sink, World } from './world.ts'

/** The world of this process. */
export function processWorld(): World {
  const stderr = sinkOf(process.stderr, () => undefined)
  return {
    cwd: process.cwd(),
    // Only when it is asked for: looking at it opens it.
    get stdin() {
      return process.stdin
    },
    stdout: sinkOf(process.stdout, (words) => stderr.write(`${words}\n`)),
    stderr,
    machine: { disk: systemDisk, processes: systemProcesses },
    threads: availableParallelism(),
  }
}

/** A stream of this process. What cannot be written is told once, and the process ends with 2. */
function sinkOf(stream: NodeJS.WriteStream & { readonly fd: number }, tell: (words: string) => void): Sink {
  let hasFailed = false
  const failed = (error: unknown) => {
    // Whoever reads may stop early, as `head` does: then the rest is not wanted.
    if (systemCode(error) === 'EPIPE' || hasFailed) return
    hasFailed = true
    process.exitCode = 2
    tell(printProblem(diskProblem(error, '(standard output)', 'a place that can be written')))
  }
  if (!isOnDisk(stream.fd)) return stream.on('error', failed)
  return {
    write: (text) => {
      try {
        writeWhole(stream.fd, text)
      } catch (error) {
        failed(error)
      }
    },
  }
}

/** Node's own stream takes it for done when a disk that gets full has taken the half of it. */
function writeWhole(fd: number, text: string): void {
  const bytes = Buffer.from(text)
  for (let at = 0; at < bytes.length; ) at += writeSync(fd, bytes, at)
}

/** A file, or a device that is no terminal: what is written there is there, or is refused, at once. */
function isOnDisk(fd: number): boolean {
  try {
    const found = fstatSync(fd)
    return found.isFile() || (found.isCharacterDevice() && !isatty(fd))
  } catch {
    return false
  }
}
