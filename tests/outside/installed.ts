import { spawnSync } from 'node:child_process'
import { expect, type TestContext } from 'vitest'

/**
 * For a check that needs a program which npm cannot bring: without it the suite says so and leaves the check out, and
 * in CI, which installs it, the check fails.
 */
export function needs({ skip }: Pick<TestContext, 'skip'>, program: keyof typeof present): void {
  const { found, how } = present[program]
  if (!found() && process.env.CI === undefined) skip(`${program} is not installed: apt-get install ${how}`)
  expect(found(), program).toBe(true)
}

const starts = (program: string, ...args: string[]) => spawnSync(program, args).error === undefined

const present = {
  admesh: { found: () => starts('admesh', '--version'), how: 'admesh' },
  poppler: { found: () => starts('pdftotext', '-v'), how: 'poppler-utils' },
  ezdxf: {
    found: () => spawnSync('/usr/bin/python3', ['-c', 'import ezdxf']).status === 0,
    how: 'python3-ezdxf',
  },
} as const
