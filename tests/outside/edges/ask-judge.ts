import { readFileSync } from 'node:fs'
import { rawHead } from '../brep/raw-head.ts'
import { type JudgedFile, keptView } from './judged-file.ts'
import { asked, setOf } from './judged-sets.ts'
import { judgedView } from './judged-view.ts'

const version = (
  JSON.parse(readFileSync(new URL('../../../node_modules/replicad/package.json', import.meta.url), 'utf8')) as {
    version: string
  }
).version

/** What the B-rep kernel draws of a set, built from the bare numbers of its parameter file; `body`: of the body alone. */
export function askJudge(number: number, only?: 'body'): JudgedFile {
  const { text } = setOf(number)
  const head = rawHead(text)
  const parts = asked(number)
    .filter(({ id }) => only === undefined || id === only)
    .map(({ id, views }) => {
      const shape = head[id]()
      const kept = views.map(([name, view]) => [name, keptView(judgedView(shape, view.z, view.x, 0.1))] as const)
      return [id, Object.fromEntries(kept)] as const
    })
  return { kernel: 'replicad', version, parameters: text, parts: Object.fromEntries(parts) }
}
