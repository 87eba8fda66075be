import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parse } from 'yaml'
import type { ProblemCode } from '../../src/input/problem.ts'

/** One line of a corpus: a change to a text that is good, and what has to be said about it. */
export interface Broken {
  readonly what: string
  readonly change: readonly (readonly [from: string, to: string])[]
  /** A letter that stands for many of another text: [letter, how many, of what]. */
  readonly repeat?: readonly [letter: string, times: number, text?: string]
  readonly code: ProblemCode
  readonly path?: string
  readonly found?: string
  readonly says?: string
  /** How many further problems come with it. */
  readonly also?: number
  /** No problem, although it looks like one. */
  readonly accepted?: true
  /** A good set of a tool that cannot work: a stop, of this check where it is a text. */
  readonly stop?: true | string
  /** Name of the table, for tables. */
  readonly table?: string
  /** Shows only where the other tables are good. */
  readonly alone?: true
  /** The problem stands in another table, which needs what is gone. */
  readonly elsewhere?: true
  /** For sheets: that it is YAML, or has semicolons between its cells. */
  readonly sheet?: 'yaml'
  readonly semicolons?: true
}

/** A broken text, and the place in it that has to be named. */
export interface BrokenText {
  readonly text: string
  readonly place?: { readonly line: number; readonly column: number }
}

export const corpus = (name: string): readonly Broken[] =>
  parse(readFileSync(join(import.meta.dirname, `${name}.yaml`), 'utf8'))

/** The changes done to a good text. A change that finds nothing to change is a fault of the corpus. */
export function broken(good: string, { change, repeat }: Pick<Broken, 'change' | 'repeat'>): BrokenText {
  const [letter, times, of] = repeat ?? ['', 0]
  let text = good
  for (const [from, to] of change) {
    if (!text.includes(from)) throw new Error(`no ${from} in the text`)
    const many = letter === '' ? to : to.replace(letter, (of ?? letter).repeat(times))
    text = text.replace(from, () => many)
  }
  const [before = '', after, ...more] = text.split('¦')
  if (after === undefined) return { text }
  if (more.length > 0) throw new Error('two places marked')
  const line = before.split('\n').length
  return { text: before + after, place: { line, column: before.length - before.lastIndexOf('\n') } }
}
