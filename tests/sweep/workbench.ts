import { families } from '../../src/families/families.ts'
import type { CommonParameters, Design } from '../../src/families/family.ts'
import { type ReadDesign, readAnyDesign } from '../../src/families/read-design.ts'
import type { Problem } from '../../src/input/problem.ts'
import { loadTables } from '../../src/package/load-tables.ts'
import { revisionOf } from '../../src/package/revision.ts'
import type { SweepJob } from '../../src/package/sweep-threads.ts'
import { chosenFigures } from '../../src/sweep/chosen-figures.ts'
import { setResult } from '../../src/sweep/set-result.ts'
import { changeAt, countSets, readAxes, type Sweep, sweepOf } from '../../src/sweep/sweep.ts'
import { headText } from '../command-line/workshop.ts'

type Read = ReadDesign<CommonParameters, Design>

const loaded = loadTables()
if (!loaded.ok) throw new Error('our own tables must be readable')
export const tables = loaded.value

/** A parameter file of the demo head, some of its text replaced; it has to be readable. */
export function readHead(...edits: readonly (readonly [string, string])[]): Read {
  const read = readAnyDesign(families, headText(...edits), 'head.yaml', tables)
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return read.value
}

/** The demo head as it is; designs keep what they worked out and change nothing. */
const demo = readHead()

/** The only axis of a `--vary` that has to be understood. */
export function axisOf(vary: string, read: Read = demo) {
  const axes = readAxes([vary], read)
  if (!axes.ok) throw new Error(JSON.stringify(axes.problems))
  return axes.value[0]!
}

/** What is wrong with these `--vary`. */
export function problemsOf(...vary: string[]): Problem[] {
  const axes = readAxes(vary, demo)
  return axes.ok ? [] : axes.problems
}

/** A sweep on this thread alone. */
export function swept(vary: readonly string[], ids?: string, read: Read = demo): Sweep {
  const axes = readAxes(vary, read)
  const figures = chosenFigures(ids, read.family.sweepFigures, read.family.figures)
  if (!axes.ok || !figures.ok) throw new Error('the sweep must be understood')
  const { family, design } = read
  const results = Array.from({ length: countSets(axes.value) }, (_, at) =>
    setResult(family, design.parameters, tables, changeAt(axes.value, at), figures.value),
  )
  return sweepOf(read, revisionOf(read), axes.value, figures.value, results)
}

/** The same as work for threads. */
export function sweepWork(vary: readonly string[], read: Read = demo): SweepJob {
  const axes = readAxes(vary, read)
  if (!axes.ok) throw new Error(JSON.stringify(axes.problems))
  const { family, design } = read
  return { family: family.name, parameters: design.parameters, tables, axes: axes.value, figures: family.sweepFigures }
}

/** Rows of a CSV text by RFC 4180, read without our own code for writing one. */
export function csvRows(text: string): string[][] {
  const rows: string[][] = []
  let row: string[] = []
  let cell = ''
  let isQuoted = false
  for (let at = 0; at < text.length; at++) {
    const sign = text[at]!
    if (isQuoted) {
      if (sign !== '"') cell += sign
      else if (text[at + 1] === '"') cell += text[at++]
      else isQuoted = false
    } else if (sign === '"' && cell === '') isQuoted = true
    else if (sign === ',') {
      row.push(cell)
      cell = ''
    } else if (sign === '\r' && text[at + 1] === '\n') {
      rows.push([...row, cell])
      row = []
      cell = ''
      at++
    } else if (/["\r\n]/.test(sign)) throw new Error(`a bare ${JSON.stringify(sign)} at ${at}`)
    else cell += sign
  }
  if (cell !== '' || row.length > 0 || isQuoted) throw new Error('the last line has no end')
  return rows
}
