import { readFileSync } from 'node:fs'
import { hostname, uptime } from 'node:os'
import { z } from 'zod'

/** A process so described that another one with the same number is not taken for it. */
export const holderSchema = z.strictObject({
  /** 0: nobody, the work was left for the next run. */
  pid: z.int().min(0),
  host: z.string(),
  /** When it wrote this, milliseconds of the wall clock. */
  at: z.number(),
  /** Start mark of the system for that process; empty where the system gives none. */
  birth: z.string(),
})

export type Holder = z.output<typeof holderSchema>

export interface Processes {
  self(): Holder
  /** True also where that cannot be known: a process of another computer that shares the disk. */
  isRunning(holder: Holder): boolean
}

export const systemProcesses: Processes = {
  self: () => ({ pid: process.pid, host: hostname(), at: Date.now(), birth: birthOf(process.pid) }),
  isRunning: ({ pid, host, at, birth }) => {
    if (host !== hostname()) return true
    if (!exists(pid)) return false
    const now = birthOf(pid)
    if (birth !== '' && now !== '') return birth === now
    // The number may have been given again since the computer was started; a minute for a clock that was set.
    return at > Date.now() - uptime() * 1000 - 60_000
  },
}

function exists(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    // It is there, but another user's.
    return (error as NodeJS.ErrnoException).code === 'EPERM'
  }
}

/** Boot and start time of a process, where the system keeps them in files. */
function birthOf(pid: number): string {
  try {
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim()
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8')
    // The second field, a name in brackets, may have spaces and brackets of its own; the start time is the 22nd.
    const start = stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? ''
    return start === '' ? '' : `${boot} ${start}`
  } catch {
    return ''
  }
}
