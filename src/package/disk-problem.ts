import type { Problem } from '../input/problem.ts'

const answers: Readonly<Record<string, string>> = {
  EACCES: 'no permission to write there',
  EPERM: 'no permission to write there, or something in it that is open elsewhere',
  EBUSY: 'something that is open elsewhere',
  EROFS: 'a disk that can only be read',
  ENOSPC: 'a full disk',
  EDQUOT: 'no more room on the disk for this user',
  EIO: 'a disk that fails',
  ENOENT: 'no folder to write it in',
  ENOTDIR: 'a file where its folder should be',
  EEXIST: 'something that is there already',
  ENOTEMPTY: 'something that is there already',
  EXDEV: 'a folder that is a disk of its own',
  ELOOP: 'links that lead in a circle',
  ENAMETOOLONG: 'a name that is too long for this disk',
  EINVAL: 'a name that this system does not take',
  ERR_INVALID_ARG_VALUE: 'a name that this system does not take',
  EMFILE: 'too many open files',
  ENFILE: 'too many open files',
}

const remedies: Readonly<Record<string, string>> = {
  ENOENT: 'make its folder first, or choose another place',
  ENOSPC: 'free some room, or choose another disk',
  EDQUOT: 'free some room, or choose another disk',
  EBUSY: 'close what has it open, or choose another place',
  EPERM: 'close what has it open, or choose another place',
}

/**
 * A failure of the disk in words. `file` as the user named it. An error that is none of the system's is our own defect
 * and is thrown on.
 */
export function diskProblem(error: unknown, file: string, allowed: string): Problem {
  const code = systemCode(error)
  if (code === undefined) throw error
  return {
    code: 'not-writable',
    where: { file },
    found: answers[code] ?? `the system's answer ${code}`,
    allowed,
    remedy: remedies[code] ?? 'choose another place',
  }
}

/** The code that the system gave for a failed step; undefined for errors that are not the system's. */
export function systemCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string') return undefined
  const fromSystem = 'syscall' in error || error.code === 'ERR_INVALID_ARG_VALUE'
  return fromSystem ? error.code : undefined
}

/** Does a step that may fail without harm, such as tidying; false where the system refused it. */
export function attempt(step: () => void): boolean {
  try {
    step()
    return true
  } catch (error) {
    if (systemCode(error) === undefined) throw error
    return false
  }
}
