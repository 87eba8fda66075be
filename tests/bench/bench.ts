// npm run bench: medians of the same shapes at the same chord tolerance and of the same views, beside other kernels, in one run.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { cpus, tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import Module from 'manifold-3d'
import { findingsOf } from '../../src/checks/rule.ts'
import type { CommonParameters, Design } from '../../src/families/family.ts'
import { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import { type ReadDesign, readDesign } from '../../src/families/read-design.ts'
import { judged } from '../../src/families/variants.ts'
import { besideWork } from '../../src/package/beside-work.ts'
import { drawingFiles } from '../../src/package/drawing-files.ts'
import { loadFont } from '../../src/package/load-font.ts'
import { sweptOn } from '../../src/package/sweep-threads.ts'
import { solidOf } from '../../src/part/part.ts'
import { meshOf } from '../../src/solid/mesh.ts'
import { countSets } from '../../src/sweep/sweep.ts'
import { headFrom, tables, templateText } from '../families/random-heads.ts'
import { finely } from '../outside/brep/measure.ts'
import { rawHead } from '../outside/brep/raw-head.ts'
import { jscadBooleanBody } from '../solid/jscad-booleans.ts'
import { sweepWork } from '../sweep/workbench.ts'
import { kernelBody } from './kernel-head.ts'
import { viewTimes } from './view-times.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** Milliseconds of each run, the shortest first. */
function spentOn(times: number, run: () => unknown): number[] {
  // Warm: V8 takes some hundred runs of a rule, and a few of all drawings, to settle.
  for (let i = 0; i < Math.max(8, times); i++) run()
  const spent = Array.from({ length: times }, () => {
    const start = performance.now()
    run()
    return performance.now() - start
  })
  return spent.sort((a, b) => a - b)
}

const middleOf = (sorted: readonly number[]): number => sorted[Math.floor(sorted.length / 2)]!
const median = (times: number, run: () => unknown): number => middleOf(spentOn(times, run))
/** The median, and the least beside it: what other programs at work on the machine have not added to. */
const both = (times: number, run: () => unknown): [string, string] => {
  const spent = spentOn(times, run)
  return [ms(middleOf(spent)), ms(spent[0]!)]
}

/** What any program on that kernel does first. */
const loadKernel = "import kernel from 'replicad-opencascadejs'; await kernel()"

const lines: string[] = []
const row = (what: string, ...cells: string[]) =>
  lines.push([what.padEnd(58), ...cells.map((c) => c.padStart(14))].join(' '))
const ms = (t: number) => `${t.toFixed(t < 10 ? 2 : 1)} ms`
const times = (a: number, b: number) => `${(a / b).toFixed(2)} ×`
const versionOf = (name: string) =>
  (JSON.parse(readFileSync(join(root, 'node_modules', name, 'package.json'), 'utf8')) as { version: string }).version

// Before the other kernels are at work: what is warm for them is not for this.
row('check', 'median', 'least')
const { parameters } = headFrom('parameters')
const build = (p = parameters) => {
  const design = HeadDesign.from(p, tables)
  if (!design.ok) throw new Error('the demo must build')
  return design.value
}
row('  parameters → findings, demo', ...both(400, () => findingsOf(flyCutterHead.rules, build())))
row('  with remedies, demo', ...both(100, () => judged(flyCutterHead, build(), true)))
const faulty = headFrom('parameters', ['  depth: 9.5', '  depth: 13']).parameters
row('  with remedies, slot 3.5 mm too deep', ...both(40, () => judged(flyCutterHead, build(faulty), true)))

lines.push('')
row('drawings of the demo, warm', 'median')
const read = readDesign(flyCutterHead, templateText('parameters'), 'demo', tables)
if (!read.ok) throw new Error('the demo must read')
const sheets = () => {
  const again = { ...read.value, design: build() } as unknown as ReadDesign<CommonParameters, Design>
  return drawingFiles(again, [], 'a1b2c3d4', loadFont(), besideWork.pdf)
}
row('  all sheets as DXF, PDF and SVG', ms(median(12, sheets)))

lines.push('')
row('sweep, the usual figures, sets a second', 'median', 'most')
for (const [what, vary] of [
  ['slot.depth and bore.depth', ['slot.depth=8..13:20', 'bore.depth=20..30:20']],
  // No hole is whole any more, so that its volume takes a skin of its own.
  ['the same, all where bore breaks into slot', ['slot.depth=11..13:20', 'bore.depth=31..34:20']],
  ['bit.overhang and depth of cut', ['bit.overhang=15..45:20', 'work.depth-of-cut=0.2..2:20']],
] as const) {
  const work = sweepWork(vary)
  const spent: number[] = []
  // The first round warms up.
  for (let round = 0; round < 6; round++) {
    const start = performance.now()
    await sweptOn(1, work, () => undefined)
    if (round > 0) spent.push(performance.now() - start)
  }
  spent.sort((a, b) => a - b)
  const rate = (time: number) => `${Math.round((1000 * countSets(work.axes)) / time)}`
  row(`  ${what}, one core`, rate(middleOf(spent)), rate(spent[0]!))
}

const kernel = await Module()
kernel.setup()

const bodyWith = (screws: number) =>
  solidOf(headFrom('parameters', [/count: \d\n/, `count: ${screws} \n`], ['spacing: 24', 'spacing: 6.2']).part('body'))
const ours = (screws: number, tolerance: number) => {
  const solid = bodyWith(screws)
  return median(40, () => meshOf(solid, tolerance, 'body'))
}
const theirs = (screws: number, tolerance: number) => median(40, () => kernelBody(kernel, screws, tolerance))

lines.push('')
row('body solid of the demo head', 'ours', 'other', 'ours/other')
const [own, mesh] = [ours(2, 0.02), theirs(2, 0.02)]
row('  0.02 mm, 2 screws, manifold-3d', ms(own), ms(mesh), times(own, mesh))
const exact = rawHead(templateText('parameters'))
const brep = median(5, () => finely(exact.body()))
row('  the same, replicad (B-rep, then meshed)', ms(own), ms(brep), times(own, brep))
const booleans = median(10, jscadBooleanBody)
row('  the same, JSCAD booleans (not yet closed)', ms(own), ms(booleans), times(own, booleans))
for (const screws of [1, 3, 6]) {
  const [a, b] = [ours(screws, 0.02), theirs(screws, 0.02)]
  row(`  ${screws} screws`, ms(a), ms(b), times(a, b))
}
for (const tolerance of [0.08, 0.04, 0.01]) {
  const [a, b] = [ours(2, tolerance), theirs(2, tolerance)]
  row(`  chord tolerance ${tolerance} mm`, ms(a), ms(b), times(a, b))
}

lines.push('')
row('edges and views of the demo head', 'ours', 'other', 'ours/other')
for (const { what, ours: drawn, kernel: projected } of viewTimes(median)) {
  row(`  ${what}`, ms(drawn), ...(projected === undefined ? [] : [ms(projected), times(drawn, projected)]))
}

lines.push('')
row('cold processes', 'median', 'most memory')
const folder = mkdtempSync(join(tmpdir(), 'bench-'))
// The most that the process itself had: `maxRSS` of a child still counts what this one had when it was split off.
const memory = `process.on('exit', () => {
  let text = ''
  try { text = require('node:fs').readFileSync('/proc/self/status', 'utf8') } catch {}
  const most = /VmHWM:\\s+(\\d+)/.exec(text)?.[1] ?? process.resourceUsage().maxRSS
  process.stderr.write('\\nmaxrss ' + most)
})`
const memoryFile = join(folder, 'memory.cjs')
writeFileSync(memoryFile, memory)
/** Runs node some times over; wall clock and memory of each. */
function cold(what: string, argsOf: (round: number) => readonly string[]): void {
  const runs = Array.from({ length: 5 }, (_, round) => {
    const start = performance.now()
    const loaded = ['--require', memoryFile]
    const ran = spawnSync(process.execPath, [...loaded, ...argsOf(round)], { cwd: root, encoding: 'utf8' })
    if (ran.status !== 0) throw new Error(ran.stderr)
    return { time: performance.now() - start, kilobytes: Number(/maxrss (\d+)/.exec(ran.stderr)?.[1]) }
  })
  const spent = runs.map((r) => r.time).sort((a, b) => a - b)[2]!
  row(`  ${what}`, ms(spent), `${(Math.max(...runs.map((r) => r.kilobytes)) / 1024).toFixed(0)} MB`)
}
const demo = 'templates/fly-cutter-head/parameters.yaml'
cold('node alone', () => ['-e', '0'])
cold('check, built', () => ['dist/command-line/main.js', 'check', demo])
cold('make, built', (round) => ['dist/command-line/main.js', 'make', demo, '--out', join(folder, `${round}`)])
const vary = ['--vary', 'slot.depth=8..12:41', '--vary', 'bore.depth=20..30:41']
cold('sweep of 1681 sets, built, all cores', (round) => [
  'dist/command-line/main.js',
  'sweep',
  demo,
  ...vary,
  '--out',
  join(folder, `sweep-${round}`),
])
cold('the B-rep kernel loaded, nothing made', () => ['--input-type=module', '-e', loadKernel])
rmSync(folder, { recursive: true })

process.stdout.write(
  [
    `Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model ?? '?'}, ` +
      `JSCAD ${versionOf('@jscad/modeling')}, manifold-3d ${versionOf('manifold-3d')}, replicad ${versionOf('replicad')}; medians.`,
    '',
    ...lines,
    '',
  ].join('\n'),
)
