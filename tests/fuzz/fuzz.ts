// npm run fuzz -- --count N --seed S [--depth check|solids|whole] [--from K]: random legal parameter sets, see DEVELOPERS.md.
import { mkdirSync, writeFileSync } from 'node:fs'
import { setImmediate } from 'node:timers/promises'
import { parseArgs } from 'node:util'
import { type Depth, judgeSet } from './judge-set.ts'
import { randomSet } from './random-set.ts'

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1' },
    from: { type: 'string', default: '0' },
    depth: { type: 'string', default: 'whole' },
    keep: { type: 'string', default: 'out/fuzz' },
  },
})
const [count, seed, from] = [values.count, values.seed, values.from].map(Number) as [number, number, number]
const depths: readonly string[] = ['check', 'solids', 'whole']
if (![count, seed, from].every(Number.isInteger) || count < 1 || !depths.includes(values.depth)) {
  process.stderr.write('fuzz: --count, --seed and --from are whole numbers, --depth is check, solids or whole\n')
  process.exit(2)
}
const tally = { legal: 0, refused: 0 }
const kinds = new Map<string, number>()
let failed = 0
const start = performance.now()
for (let i = from; i < from + count; i++) {
  // Where it stands, for a set that never ends is a failure too.
  if (i > from && (i - from) % 250 === 0) process.stderr.write(`${i - from} of ${count}\n`)
  // What a document has left for later is done, and let go, only when the loop gives way.
  await setImmediate()
  const text = randomSet(seed, i)
  const { kind, faults } = await judgeSet(text, values.depth as Depth)
  tally[kind]++
  if (faults.length === 0) continue
  failed++
  mkdirSync(values.keep, { recursive: true })
  writeFileSync(
    `${values.keep}/seed-${seed}-${i}.yaml`,
    `${faults.map((f) => `# ${f.replaceAll('\n', ' ')}\n`).join('')}${text}`,
  )
  for (const fault of faults) {
    const form = fault.replace(/-?\d+(\.\d+)?(e-?\d+)?/g, '#').slice(0, 160)
    kinds.set(form, (kinds.get(form) ?? 0) + 1)
  }
  process.stdout.write(`${i}: ${faults[0]!.slice(0, 200)}\n`)
}
const seconds = (performance.now() - start) / 1000
process.stdout.write(
  `${count} sets of seed ${seed}, ${values.depth}: ${tally.legal} legal, ${tally.refused} refused, ${failed} failed, ${seconds.toFixed(0)} s\n`,
)
for (const [form, times] of [...kinds].sort((a, b) => b[1] - a[1])) process.stdout.write(`${times} × ${form}\n`)
process.exit(failed > 0 ? 1 : 0)
