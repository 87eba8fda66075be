// Asks the B-rep kernel anew and keeps what it says, for `projection.test.ts` to compare with; to be run whenever the
// sets, the views or the kernel change: npx tsx tests/outside/edges/keep-judgments.ts [NUMBER …]
import { mkdirSync, writeFileSync } from 'node:fs'
import { askJudge } from './ask-judge.ts'
import { judgedFile, judgedSets } from './judged-sets.ts'

const numbers = process.argv.slice(2).map(Number)
mkdirSync(new URL('judged/', import.meta.url), { recursive: true })
for (const number of numbers.length > 0 ? numbers : judgedSets) {
  writeFileSync(judgedFile(number), `${JSON.stringify(askJudge(number), undefined, 2)}\n`)
}
