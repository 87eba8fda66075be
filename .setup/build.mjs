// Bundles the command for an installed package: of its hundreds of files a few, which start in a third of the time.
// Plain `node .setup/build.mjs [FOLDER]`; FOLDER is `dist` at the top unless said.
import { rmSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'

const root = join(dirname(fileURLToPath(import.meta.url)), '..')
const folder = resolve(process.argv[2] ?? join(root, 'dist'))

rmSync(folder, { recursive: true, force: true })
await build({
  absWorkingDir: root,
  // The commands, and the files that run as threads; all in one folder, two below seeds and templates as in `src`.
  entryPoints: ['src/command-line/main.ts', 'src/package/sweep-thread.ts', 'src/package/beside-thread.ts'],
  entryNames: '[name]',
  outdir: join(folder, 'command-line'),
  bundle: true,
  splitting: true,
  packages: 'external',
  platform: 'node',
  format: 'esm',
  target: 'node20',
  charset: 'utf8',
  logLevel: 'warning',
})
