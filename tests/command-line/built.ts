import { chmodSync, cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect } from 'vitest'
import { projectRoot, spawnedNode } from '../package/spawned.ts'

/** What `npm pack` takes, built, in a folder elsewhere while the tests of a file run. */
export function builtCommand(): { readonly home: string; readonly main: string } {
  const home = mkdtempSync(join(tmpdir(), 'built-'))
  // Other users run it too, as where one person installs for all.
  chmodSync(home, 0o755)
  beforeAll(async () => {
    const built = await spawnedNode([join(projectRoot, '.setup', 'build.mjs'), join(home, 'dist')]).ended
    expect(built).toMatchObject({ exit: 0, err: '' })
    for (const name of ['seeds', 'templates', 'package.json', 'README.md', 'LICENSE']) {
      cpSync(join(projectRoot, name), join(home, name), { recursive: true })
    }
  })
  afterAll(() => rmSync(home, { recursive: true, force: true }))
  return { home, main: join(home, 'dist', 'command-line', 'main.js') }
}
