import { mkdtempSync, realpathSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach } from 'vitest'

/** A folder for each test of a file, with a space in its name as on many a shop PC, removed after it. */
export function temporaryFolder(): () => string {
  let folder = ''
  beforeEach(() => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), 'shop pc ')))
  })
  afterEach(() => {
    rmSync(folder, { recursive: true, force: true })
  })
  return () => folder
}
