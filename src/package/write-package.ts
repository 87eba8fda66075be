import { join } from 'node:path'
import type { Result } from '../input/problem.ts'
import { attempt, diskProblem } from './disk-problem.ts'
import { takeLock } from './lock.ts'
import type { Machine } from './machine.ts'
import { type Manifest, manifestName, manifestOf, manifestText } from './manifest.ts'
import type { PackagePlace } from './package-place.ts'
import { type Recovery, recover } from './recover.ts'
import { replaceable } from './target.ts'

export interface WrittenPackage {
  readonly manifest: Manifest
  /** What the user should know about how it went: recovered, or something left to tidy. Mostly nothing. */
  readonly notes: readonly string[]
}

/**
 * Writes a package whole or not at all: into a folder beside the target, which is then swapped in. On failure at any
 * step the place is as it was; after a sudden death the next run makes it so (`recover`). What it replaces is only
 * ever an empty folder or a package of ours that nobody changed. The same content gives the same folder.
 */
export function writePackage(
  place: PackagePlace,
  files: ReadonlyMap<string, Uint8Array | string>,
  revision: string,
  machine: Machine,
): Result<WrittenPackage> {
  const manifest = manifestOf(files, revision)
  const lock = takeLock(place, machine)
  if (!lock.ok) return lock
  let tidy = true
  try {
    const recovery = recover(place, lock.value, machine.disk)
    tidy = recovery.tidy
    if (!recovery.result.ok) return recovery.result
    // Until it has come to an end of one kind or the other.
    tidy = false
    const content = new Map(files).set(manifestName, manifestText(manifest))
    const swap = swapIn(place, content, machine)
    tidy = swap.tidy
    if (!swap.result.ok) return swap.result
    const notes = [recovery.result.value, swap.result.value].filter((note) => note !== undefined)
    return { ok: true, value: { manifest, notes } }
  } finally {
    if (tidy) lock.value.release()
    else lock.value.leave()
  }
}

/** The steps. A result without problems may carry a note: the new package is in place, but not all beside it is tidy. */
function swapIn(place: PackagePlace, content: ReadonlyMap<string, Uint8Array | string>, { disk }: Machine): Recovery {
  const { parent, target, writing, before } = place
  /** What undoes the steps done so far, the last one first. */
  const undo: (() => void)[] = []
  try {
    const standing = replaceable(place, disk)
    if (!standing.ok) return { result: standing, tidy: true }
    disk.makeFolder(writing)
    undo.unshift(() => disk.removeFolder(writing))
    for (const [name, bytes] of content) disk.createFile(join(writing, name), bytes)
    disk.syncFolder(writing)
    if (standing.value === 'folder') {
      disk.rename(target, before)
      undo.unshift(() => disk.rename(before, target))
    }
    disk.rename(writing, target)
  } catch (error) {
    const undone = undo.map((step) => attempt(step)).every((done) => done)
    const problem = diskProblem(error, place.shown, 'a place that can be written')
    const remedy = `${problem.remedy}; what is left beside it will be tidied by the next run`
    return { result: { ok: false, problems: [undone ? problem : { ...problem, remedy }] }, tidy: undone }
  }
  const tidy = attempt(() => {
    disk.syncFolder(parent)
    disk.removeFolder(before)
  })
  const note = `${place.show(before)} could not be removed yet; the next run will try again`
  return { result: { ok: true, value: tidy ? undefined : note }, tidy }
}
