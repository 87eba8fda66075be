import { basename, dirname, isAbsolute, join, parse, relative, resolve } from 'node:path'
import type { Result } from '../input/problem.ts'

/** Where a package goes, and the names beside it that its writing needs. All paths are absolute. */
export interface PackagePlace {
  /** As the user named it. */
  readonly shown: string
  readonly parent: string
  readonly target: string
  /** The new package until it is whole. */
  readonly writing: string
  /** The earlier package while the new one is moved in. */
  readonly before: string
  /** Lock files: a run takes the first free one, see `takeLock`. */
  readonly locks: readonly string[]
  /** A path beside the target in the user's words. */
  show(path: string): string
}

/** Names that mean a device on Windows, with any extension, and what no name may hold or end with there. */
const notOnWindows = /^(?:con|prn|aux|nul|com[1-9¹²³]|lpt[1-9¹²³])(?:\s*\..*)?$|[<>:"|?*\\\p{Cc}]|[. ]$/iu

/** True where `make` could not put its package beside a file of this name, or a computer of the shop could not take it. */
export const isBadName = (name: string): boolean => notOnWindows.test(name) || notOnWindows.test(parse(name).name)

/** `named` is taken from `cwd`. The root of a disk and the folder one stands in cannot be swapped for another. */
export function packagePlace(cwd: string, named: string): Result<PackagePlace> {
  const target = resolve(cwd, named)
  const parent = dirname(target)
  const name = basename(target)
  const fromTarget = relative(target, cwd)
  const above = !isAbsolute(fromTarget) && !/^\.\.(?:[\\/]|$)/.test(fromTarget)
  if (name === '' || above) {
    const found =
      name === '' ? 'the top of a disk' : fromTarget === '' ? 'the current folder' : 'a folder above this one'
    return {
      ok: false,
      problems: [
        {
          code: 'target-not-ours',
          where: { file: named },
          found,
          allowed: 'a folder for the package alone',
          remedy: 'choose another --out',
        },
      ],
    }
  }
  if (notOnWindows.test(name)) {
    return {
      ok: false,
      problems: [
        {
          code: 'not-writable',
          where: { file: named },
          found: `the name ${name}, which Windows does not take`,
          allowed: 'a name that every computer of the shop takes',
          remedy: 'choose another --out',
        },
      ],
    }
  }
  const beside = (suffix: string) => join(parent, `.${name}.${suffix}`)
  return {
    ok: true,
    value: {
      shown: named,
      parent,
      target,
      writing: beside('writing'),
      before: beside('before'),
      locks: ['lock', 'lock.2', 'lock.3', 'lock.4'].map(beside),
      show: (path) => join(isAbsolute(named) ? parent : relative(cwd, parent), basename(path)),
    },
  }
}
