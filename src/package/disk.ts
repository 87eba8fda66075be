import {
  closeSync,
  fsyncSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs'
import { pause } from './pause.ts'

export type Standing = 'nothing' | 'file' | 'folder' | 'link' | 'other'

/**
 * The few things that writing a package asks of a disk. They are handed in, so that a test can let any one of them
 * fail, or die between two of them. All throw the system's errors, which carry a `code`.
 */
export interface Disk {
  /** What stands at the path itself: links are not followed. */
  standing(path: string): Standing
  list(folder: string): readonly string[]
  read(file: string): Uint8Array
  /** Fails where something is there already. */
  makeFolder(path: string): void
  /** Fails where something is there already; the content is on the disk, not only on its way, when this returns. */
  createFile(path: string, content: Uint8Array | string): void
  overwrite(file: string, content: string): void
  /** Puts the names in a folder on the disk, where the system can do that. */
  syncFolder(path: string): void
  rename(from: string, to: string): void
  removeFile(path: string): void
  /** With all that is in it; a link is removed, not what it points to. Nothing there is fine. */
  removeFolder(path: string): void
}

export const systemDisk: Disk = {
  standing,
  list: (folder) => readdirSync(folder).toSorted(),
  read: (file) => readFileSync(file),
  makeFolder: (path) => void mkdirSync(path),
  createFile,
  overwrite: (file, content) => writeFileSync(file, content),
  syncFolder,
  rename,
  removeFile: (path) => unlinkSync(path),
  removeFolder: (path) => rmSync(path, { recursive: true, force: true, maxRetries: 5, retryDelay: 50 }),
}

function standing(path: string): Standing {
  const found = lstatSync(path, { throwIfNoEntry: false })
  if (found === undefined) return 'nothing'
  if (found.isSymbolicLink()) return 'link'
  if (found.isDirectory()) return 'folder'
  return found.isFile() ? 'file' : 'other'
}

function createFile(path: string, content: Uint8Array | string): void {
  const handle = openSync(path, 'wx')
  let written = false
  try {
    writeFileSync(handle, content)
    fsyncSync(handle)
    written = true
  } finally {
    closeSync(handle)
    // Half a file is worse than none.
    if (!written) rmSync(path, { force: true })
  }
}

function syncFolder(path: string): void {
  // Windows opens no folders, and keeps their order itself.
  if (process.platform === 'win32') return
  const handle = openSync(path, 'r')
  try {
    fsyncSync(handle)
  } catch (error) {
    // Some network disks cannot: then what they do by themselves has to do.
    if (!['EINVAL', 'ENOTSUP', 'EBADF'].includes((error as NodeJS.ErrnoException).code ?? '')) throw error
  } finally {
    closeSync(handle)
  }
}

/** On Windows a virus scanner or an indexer holds new files for some milliseconds, and a rename fails meanwhile. */
function rename(from: string, to: string): void {
  for (let tries = 1; ; tries++) {
    try {
      renameSync(from, to)
      return
    } catch (error) {
      const held = ['EPERM', 'EACCES', 'EBUSY'].includes((error as NodeJS.ErrnoException).code ?? '')
      if (process.platform !== 'win32' || !held || tries === 10) throw error
      pause(20 * tries)
    }
  }
}
