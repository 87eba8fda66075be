// Installs the dependencies when they are missing or older than the lock file. Plain Node, no dependency.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = join(dirname(fileURLToPath(import.meta.url)), '..')
const lock = join(root, 'package-lock.json')
const mark = join(root, 'node_modules', '.installed-from-lock')

const wanted = readFileSync(lock, 'utf8')
if (!existsSync(mark) || readFileSync(mark, 'utf8') !== wanted) {
  process.stderr.write('Installing the dependencies (once) …\n')
  const npm = spawnSync('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  })
  if (npm.status !== 0) {
    process.stderr.write('npm ci failed; see above.\n')
    process.exit(1)
  }
  writeFileSync(mark, wanted)
}
