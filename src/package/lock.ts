import type { Problem, Result } from '../input/problem.ts'
import type { Disk } from './disk.ts'
import { attempt, diskProblem, systemCode } from './disk-problem.ts'
import type { Machine } from './machine.ts'
import type { PackagePlace } from './package-place.ts'
import { pause } from './pause.ts'
import { type Holder, holderSchema, type Processes } from './processes.ts'

/** The right to write at a place. */
export interface Lock {
  /** A run before this one did not come to its end: what lies beside the target is that run's. */
  readonly afterDeath: boolean
  release(): void
  /** Gives the lock up, but says to the next run that something is left to tidy. */
  leave(): void
}

/**
 * Takes the lock of a place, or says who has it.
 *
 * A dead run's lock is never taken away to make room, for two runs could do that at once and one of them take the
 * other's new lock with it. There are several lock files instead: a run writes the first free one, and then looks
 * through all of them. Whoever finds another living run gives up. Of two runs at the same time at least the later
 * one sees the earlier, so two never go on together; only who holds the lock removes those of the dead.
 */
export function takeLock(place: PackagePlace, machine: Machine): Result<Lock> {
  let own: string | undefined
  try {
    const earlier = holdersIn(place.locks, machine)
    const strange = earlier.find(({ isOurs }) => !isOurs)
    if (strange !== undefined)
      return { ok: false, problems: [inTheWay(place, strange.path, 'move it elsewhere, or choose another --out')] }
    const busy = earlier.find(({ alive }) => alive)
    if (busy !== undefined) return refused(place, busy)
    const self = lockText(machine.processes.self())
    own = place.locks.find((path) => created(machine.disk, path, self))
    // All taken: by runs that began at the same moment.
    if (own === undefined) return refused(place, undefined)
    const mine = own
    const others = place.locks.filter((path) => path !== mine)
    const rival = holdersIn(others, machine).find(({ alive }) => alive)
    const kept = textOf(machine.disk, mine) === self
    if (rival === undefined && kept) {
      machine.disk.syncFolder(place.parent)
      // From here on this run's lock says that there was a death; were theirs kept, the places would run out.
      for (const { path } of earlier) attempt(() => machine.disk.removeFile(path))
      return { ok: true, value: lockOf(mine, earlier.length > 0, machine) }
    }
    if (kept) machine.disk.removeFile(mine)
    return refused(place, rival)
  } catch (error) {
    const mine = own
    if (mine !== undefined) attempt(() => machine.disk.removeFile(mine))
    return { ok: false, problems: [diskProblem(error, place.shown, 'a place that can be written')] }
  }
}

function lockOf(mine: string, afterDeath: boolean, { disk, processes }: Machine): Lock {
  return {
    afterDeath,
    // A lock that cannot be removed is a dead one for the next run, which finds nothing to tidy.
    release: () => void attempt(() => disk.removeFile(mine)),
    leave: () => void attempt(() => disk.overwrite(mine, lockText({ ...processes.self(), pid: 0 }))),
  }
}

const lockText = (holder: Holder): string => `${JSON.stringify(holder)}\n`

/** True where a run is at work, or died at it. */
export const isLocked = (place: PackagePlace, disk: Disk): boolean =>
  place.locks.some((path) => disk.standing(path) !== 'nothing')

interface Found {
  readonly path: string
  /** Undefined where no run is named: in a lock that was cut short, or in a file that is none. */
  readonly holder: Holder | undefined
  readonly isOurs: boolean
  readonly alive: boolean
}

function holdersIn(paths: readonly string[], { disk, processes }: Machine): Found[] {
  return paths.flatMap((path) => {
    if (textOf(disk, path) === undefined) return []
    const { holder, isOurs } = holderAt(disk, path)
    return [{ path, holder, isOurs, alive: holder !== undefined && isAlive(holder, processes) }]
  })
}

const isAlive = (holder: Holder, processes: Processes) => holder.pid !== 0 && processes.isRunning(holder)

/**
 * A lock file is empty for a moment while it is made; one that stays so was left by a run that died in that moment.
 * If it was only slow, it finds out: it looks at all locks once its own is written.
 */
function holderAt(disk: Disk, path: string): Pick<Found, 'holder' | 'isOurs'> {
  for (let tries = 1; ; tries++) {
    const text = textOf(disk, path) ?? ''
    const holder = holderOf(text)
    if (holder !== undefined || tries === 3) return { holder, isOurs: holder !== undefined || isCutShort(text) }
    pause(10)
  }
}

function holderOf(text: string): Holder | undefined {
  try {
    return holderSchema.safeParse(JSON.parse(text)).data
  } catch {
    return undefined
  }
}

/** The beginning of a lock, or nothing yet: what a run leaves that dies while it writes one. */
function isCutShort(text: string): boolean {
  const start = '{"pid":'
  return start.startsWith(text.slice(0, start.length)) && !text.includes('}')
}

/** Undefined where there is no such file. */
function textOf(disk: Disk, path: string): string | undefined {
  try {
    return new TextDecoder().decode(disk.read(path))
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return undefined
    throw error
  }
}

function created(disk: Disk, path: string, content: string): boolean {
  try {
    disk.createFile(path, content)
    return true
  } catch (error) {
    if (systemCode(error) === 'EEXIST') return false
    throw error
  }
}

function refused(place: PackagePlace, found: Found | undefined): { ok: false; problems: Problem[] } {
  const who = found?.holder === undefined ? '' : ` (process ${found.holder.pid} on ${found.holder.host})`
  const file = place.show(found?.path ?? place.locks[0] ?? place.target)
  const problem: Problem = {
    code: 'target-busy',
    where: { file: place.shown },
    found: `another run that is writing there${who}`,
    allowed: 'one run at a time',
    remedy: `wait until it is done; if there is none, remove ${file}`,
  }
  return { ok: false, problems: [problem] }
}

/** A file of that name which no run of ours wrote is somebody's work, whatever it is called. */
export function inTheWay(place: PackagePlace, path: string, remedy: string): Problem {
  return {
    code: 'target-not-ours',
    where: { file: place.show(path) },
    found: `something in the way of writing ${place.shown}`,
    allowed: 'nothing there',
    remedy,
  }
}
