// Bundles the command for an installed package: with its libraries a few files, which need nothing else installed and
// start in a third of the time. Plain `node .setup/build.mjs [FOLDER]`; FOLDER is `dist` at the top unless said.
import { copyFileSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'

const root = join(dirname(fileURLToPath(import.meta.url)), '..')
const folder = resolve(process.argv[2] ?? join(root, 'dist'))
const fontPackage = 'node_modules/dejavu-fonts-ttf'

rmSync(folder, { recursive: true, force: true })
const { metafile } = await build({
  absWorkingDir: root,
  // The commands, and the files that run as threads; all in one folder, two below seeds and templates as in `src`.
  entryPoints: ['src/command-line/main.ts', 'src/package/sweep-thread.ts', 'src/package/beside-thread.ts'],
  entryNames: '[name]',
  outdir: join(folder, 'command-line'),
  bundle: true,
  splitting: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  charset: 'utf8',
  minifySyntax: true,
  minifyWhitespace: true,
  logLevel: 'warning',
  metafile: true,
  // Libraries in the older module format ask for Node's own modules by `require`, which an ES module has not.
  banner: {
    js: `import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);`,
  },
})
copyFileSync(join(root, fontPackage, 'ttf', 'DejaVuSansCondensed.ttf'), join(folder, 'DejaVuSansCondensed.ttf'))

const packages = new Set([fontPackage])
for (const input of Object.keys(metafile.inputs)) {
  const found = /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(input)
  if (found) packages.add(found[1])
}
writeFileSync(join(folder, 'third-party-licences.txt'), [...packages].sort().map(licenceOf).join('\n'))

/** Name, version and licence of a package, with the text that it brings. */
function licenceOf(path) {
  const { name, version, license, repository } = JSON.parse(readFileSync(join(root, path, 'package.json'), 'utf8'))
  const text = readdirSync(join(root, path)).find((file) => /^licen[cs]e/i.test(file))
  const from = repository?.url ?? repository
  const heading = `${name} ${version}, ${license ?? 'licence below'}${from ? `, ${from}` : ''}`
  return `${heading}\n${'-'.repeat(heading.length)}\n${text ? `${readFileSync(join(root, path, text), 'utf8').trim()}\n` : ''}`
}
