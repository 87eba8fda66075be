import type { Problem, Result } from '../input/problem.ts'
import type { Disk } from './disk.ts'
import { diskProblem } from './disk-problem.ts'
import { inTheWay, isLocked, type Lock, takeLock } from './lock.ts'
import type { Machine } from './machine.ts'
import type { PackagePlace } from './package-place.ts'
import { isEmpty, manifestIn } from './target.ts'

/** Tidies up after a run that died, if one did: see `recover`. Where none did, nothing is written. */
export function recoverAtStart(place: PackagePlace, machine: Machine): Result<string | undefined> {
  try {
    if (!isLocked(place, machine.disk)) return { ok: true, value: undefined }
  } catch (error) {
    return { ok: false, problems: [diskProblem(error, place.shown, 'a place that can be written')] }
  }
  const lock = takeLock(place, machine)
  if (!lock.ok) return lock
  const { result, tidy } = recover(place, lock.value, machine.disk)
  if (tidy) lock.value.release()
  else lock.value.leave()
  return result
}

export interface Recovery {
  /** What was done, in a sentence; undefined where there was nothing to do. */
  readonly result: Result<string | undefined>
  /** False: the dead run's things still lie there, and the lock has to go on saying so. */
  readonly tidy: boolean
}

/**
 * Brings the place of a run that died back to a whole package, the earlier or the new one. Every step may be the
 * last one again: the next run goes on.
 *
 * A package is put in place by two renames: the target to `before`, then `writing` to the target. So where the
 * target is missing and `before` is there, the earlier package goes back; where both are there, the new one has
 * arrived and the earlier one goes. `writing` is never whole for sure, and always goes.
 */
export function recover(place: PackagePlace, { afterDeath }: Pick<Lock, 'afterDeath'>, disk: Disk): Recovery {
  try {
    const left = [place.before, place.writing].filter((path) => disk.standing(path) !== 'nothing')
    if (left.length === 0) return { result: { ok: true, value: undefined }, tidy: true }
    if (!afterDeath) return { result: { ok: false, problems: strangers(place, left) }, tidy: true }
    const problem = foreign(place, disk)
    if (problem !== undefined) return { result: { ok: false, problems: [problem] }, tidy: false }
    return { result: { ok: true, value: `${place.shown}: ${tidied(place, disk)}` }, tidy: true }
  } catch (error) {
    // What could not be removed is named, and not the package that it stands beside.
    const { path = '' } = error as { readonly path?: string }
    const stuck = [place.before, place.writing].find((p) => path.startsWith(p))
    const shown = stuck === undefined ? place.shown : place.show(stuck)
    return { result: { ok: false, problems: [diskProblem(error, shown, 'a place that can be written')] }, tidy: false }
  }
}

function tidied(place: PackagePlace, disk: Disk): string {
  const began = disk.standing(place.writing) !== 'nothing'
  let done = 'an earlier run was cut short; what it had begun is removed'
  if (disk.standing(place.before) !== 'nothing') {
    const arrived = disk.standing(place.target) !== 'nothing' && !isEmpty(place.target, disk)
    if (arrived) {
      disk.removeFolder(place.before)
      done = 'an earlier run ended before it had tidied up; its package is whole'
    } else {
      disk.removeFolder(place.target)
      disk.rename(place.before, place.target)
      disk.syncFolder(place.parent)
      done = 'an earlier run was cut short; the package from before it is back in place'
    }
  }
  if (began) disk.removeFolder(place.writing)
  return done
}

/** Without a lock nothing says that these are ours to remove. */
function strangers(place: PackagePlace, left: readonly string[]): Problem[] {
  return left.map((path) => {
    const earlier = path === place.before ? ` (if it is an earlier package, rename it to ${place.shown})` : ''
    return inTheWay(place, path, `move it elsewhere${earlier}`)
  })
}

/** Somebody put work of their own where the dead run had moved the earlier package away. */
function foreign(place: PackagePlace, disk: Disk): Problem | undefined {
  if (disk.standing(place.before) === 'nothing') return undefined
  const standing = disk.standing(place.target)
  if (standing === 'nothing') return undefined
  if (standing === 'folder' && (isEmpty(place.target, disk) || manifestIn(place.target, disk) !== undefined)) {
    return undefined
  }
  return {
    code: 'target-not-ours',
    where: { file: place.shown },
    found: 'something that cutterwright did not write, put there after a run had died',
    allowed: 'nothing there',
    remedy: `move it elsewhere; the earlier package is in ${place.show(place.before)} and will be put back`,
  }
}
