import { join } from 'node:path'
import type { Problem, Result } from '../input/problem.ts'
import type { Disk, Standing } from './disk.ts'
import { fileOf, type Manifest, manifestName, manifestText, readManifest } from './manifest.ts'
import type { PackagePlace } from './package-place.ts'

/** What file browsers leave in folders they show: nobody's work. */
const droppings = ['.DS_Store', 'Thumbs.db', 'desktop.ini']

const words: Readonly<Record<Exclude<Standing, 'nothing' | 'folder'>, string>> = {
  file: 'a file',
  link: 'a link to somewhere else',
  other: 'something that is no folder',
}

/**
 * What stands where the package shall go, if that may be replaced: nothing, an empty folder, or a package of ours in
 * which everything is as it was written. Anything else is somebody's work and a problem. A file that the user removed
 * from a package is no loss.
 */
export function replaceable(place: PackagePlace, disk: Disk): Result<'nothing' | 'folder'> {
  const standing = disk.standing(place.target)
  if (standing === 'nothing') return { ok: true, value: 'nothing' }
  if (standing !== 'folder') return refused(place, 'target-not-ours', words[standing])
  const names = disk.list(place.target).filter((name) => !droppings.includes(name))
  if (names.length === 0) return { ok: true, value: 'folder' }
  const manifest = manifestIn(place.target, disk)
  if (manifest === undefined) {
    return refused(place, 'target-not-ours', `a folder that cutterwright did not write, with ${listed(names)} in it`)
  }
  const changed = names.filter((name) => !isAsWritten(name, place.target, manifest, disk))
  if (changed.length === 0) return { ok: true, value: 'folder' }
  return refused(place, 'target-changed', `files that were changed or added by hand: ${listed(changed)}`)
}

/** What `make`, `measured` and `sweep` write. */
export type PackageKind = 'package' | 'as-made' | 'sweep'

/** The files by which a folder is known as a sweep, or as a report on a tool as it was made. */
export const sweepTable = 'sweep.csv'
export const asMadeJson = 'as-made.json'

const kinds: Readonly<Record<PackageKind, { readonly is: string; readonly by: string }>> = {
  package: { is: 'a package', by: 'make' },
  'as-made': { is: 'an as-made report', by: 'measured' },
  sweep: { is: 'a sweep', by: 'sweep' },
}

/** Told by the file that only this kind has. */
export function kindOf({ files }: Manifest): PackageKind {
  const has = (name: string) => files.some((file) => file.name === name)
  return has(sweepTable) ? 'sweep' : has(asMadeJson) ? 'as-made' : 'package'
}

/** Each command takes the place of its own work only: a problem where something of another kind stands there, whole or changed. */
export function otherKind({ target, shown }: PackagePlace, kind: PackageKind, disk: Disk): Problem | undefined {
  if (disk.standing(target) !== 'folder') return undefined
  const manifest = manifestIn(target, disk)
  const standing = manifest && kindOf(manifest)
  if (standing === undefined || standing === kind) return undefined
  return {
    code: 'target-not-ours',
    where: { file: shown },
    found: `${kinds[standing].is} that ${kinds[standing].by} wrote`,
    allowed: `nothing there, an empty folder, or ${kinds[kind].is} that ${kinds[kind].by} wrote`,
    remedy: 'choose another --out',
  }
}

/** True where nothing of anybody's is lost with the folder. */
export const isEmpty = (folder: string, disk: Disk): boolean =>
  disk.list(folder).every((name) => droppings.includes(name))

/** The list that makes a folder a package of ours. */
export function manifestIn(folder: string, disk: Disk): Manifest | undefined {
  const path = join(folder, manifestName)
  return disk.standing(path) === 'file' ? readManifest(new TextDecoder().decode(disk.read(path))) : undefined
}

function isAsWritten(name: string, folder: string, manifest: Manifest, disk: Disk): boolean {
  const path = join(folder, name)
  if (disk.standing(path) !== 'file') return false
  if (name === manifestName) return new TextDecoder().decode(disk.read(path)) === manifestText(manifest)
  const meant = manifest.files.find((file) => file.name === name)
  return meant !== undefined && meant.sha256 === fileOf(name, disk.read(path)).sha256
}

function listed(names: readonly string[]): string {
  const most = 8
  const more = names.length > most ? ` and ${names.length - most} more` : ''
  return `${names.slice(0, most).join(', ')}${more}`
}

function refused(
  place: PackagePlace,
  code: 'target-not-ours' | 'target-changed',
  found: string,
): { ok: false; problems: Problem[] } {
  const allowed = 'nothing there, an empty folder, or a package as cutterwright wrote it'
  const remedy = code === 'target-changed' ? 'move them elsewhere, or choose another --out' : 'choose another --out'
  return { ok: false, problems: [{ code, where: { file: place.shown }, found, allowed, remedy }] }
}
