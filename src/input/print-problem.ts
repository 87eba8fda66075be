import { printable } from './plain-text.ts'
import type { Problem } from './problem.ts'

/** Widest source line that is shown under a problem. */
const widest = 160

/**
 * One problem in words: `file:line:column: path: found X; allowed: Y. Remedy.` With the text of the file the source
 * line follows, and a mark below the column. Nothing of the user's that could steer a terminal gets through.
 */
export function printProblem(problem: Problem, text?: string): string {
  const { file, line, column, path } = problem.where
  const place = [file, line, line === undefined ? undefined : column, path === undefined ? undefined : ` ${path}`]
  const head = place.filter((part) => part !== undefined).join(':')
  const remedy = problem.remedy === undefined || problem.remedy === '' ? '' : ` ${sentence(problem.remedy)}`
  const words = printable(
    `${shortened(head)}: found ${shortened(problem.found)}; allowed: ${stopped(problem.allowed)}${remedy}`,
  )
  const excerpt = text === undefined || line === undefined ? '' : sourceLine(text, line, column ?? 1)
  return excerpt === '' ? words : `${words}\n${excerpt}`
}

/** All problems in the order in which they stand, files in the order of their names; `texts` by file name. */
export function printProblems(problems: readonly Problem[], texts: ReadonlyMap<string, string> = new Map()): string {
  return [...problems]
    .sort(byPosition)
    .map((problem) => printProblem(problem, texts.get(problem.where.file)))
    .join('\n')
}

/** Order of two problems for printing: by file, then line, then column; those without a line come first. */
export function byPosition(a: Problem, b: Problem): number {
  if (a.where.file !== b.where.file) return a.where.file < b.where.file ? -1 : 1
  return (a.where.line ?? 0) - (b.where.line ?? 0) || (a.where.column ?? 0) - (b.where.column ?? 0)
}

function sourceLine(text: string, line: number, column: number): string {
  const source = text.replace(/^\ufeff/, '').split(/\r?\n/)[line - 1]
  if (source === undefined || source.trim() === '') return ''
  // A window of the line that has the column in it; escapes made visible move the mark, so they are counted.
  const from = Math.max(0, Math.min(column - 1 - Math.floor(widest / 2), source.length - widest))
  const before = `${from > 0 ? '…' : ''}${printable(source.slice(from, column - 1))}`
  const after = `${printable(source.slice(Math.max(from, column - 1), from + widest))}${source.length > from + widest ? '…' : ''}`
  return `  ${before}${after}\n  ${' '.repeat([...before].length)}^`
}

/** A key may be as long as the file that was given. */
function shortened(text: string): string {
  return text.length > 300 ? `${text.slice(0, 300)} …` : text
}

function stopped(text: string): string {
  return /[.?!]$/.test(text) ? text : `${text}.`
}

function sentence(text: string): string {
  return stopped(`${text.charAt(0).toUpperCase()}${text.slice(1)}`)
}
