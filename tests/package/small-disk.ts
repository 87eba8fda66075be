import { spawnSync } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { expect, type TestContext } from 'vitest'

/** A disk of its own, in memory, so small that it can be filled. */
export interface SmallDisk {
  readonly folder: string
  /** From then on nothing can be written on it, whoever asks. */
  makeReadOnly(): void
  release(): void
}

/**
 * A disk of `kilobytes` at the folder, which is made. Mounting takes the rights of an administrator on Linux: where they
 * are missing the suite says so and leaves the check out, and in CI, which has them, the check fails.
 */
export function smallDisk({ skip }: Pick<TestContext, 'skip'>, folder: string, kilobytes: number): SmallDisk {
  mkdirSync(folder)
  const mounted = mount('-t', 'tmpfs', '-o', `size=${kilobytes}k`, 'tmpfs', folder)
  if (!mounted && process.env.CI === undefined) skip('no right to mount a small disk')
  expect(mounted, 'mount').toBe(true)
  return {
    folder,
    makeReadOnly: () => expect(mount('-o', 'remount,ro', folder), 'remount').toBe(true),
    release: () => expect(spawnSync('umount', [folder]).status, 'umount').toBe(0),
  }
}

const mount = (...args: string[]): boolean => spawnSync('mount', args).status === 0
