import { LineCounter, parseDocument } from 'yaml'
import { type DocumentNode, deepest, quoted, readTree } from './document-tree.ts'
import { tooDeepAt } from './nesting.ts'
import { firstBadCharacter } from './plain-text.ts'
import type { Problem, Result } from './problem.ts'
import { yamlProblem } from './yaml-problem.ts'

/** Keys and list positions from the top of the document: `['screws', 'count']`, `['speeds', 0]`. */
export type DocumentPath = readonly (string | number)[]

/** A parameter file or table as read: its plain values, and where each of them stands. */
export interface ReadDocument {
  /** The whole text, without a byte order mark. */
  readonly text: string
  /** Plain objects, lists, strings, finite numbers, booleans and null. */
  readonly raw: unknown
  /** True where the user wrote a key or item at this path, whatever its value. */
  has(path: DocumentPath): boolean
  /** Line and column from 1. Where nothing is written at the path, those of the nearest section above it. */
  locate(path: DocumentPath, of: 'key' | 'value'): { readonly line: number; readonly column: number }
  /** What is written there, shortened: the source of a value, `a section`, `a list`, or `nothing`. */
  writtenAt(path: DocumentPath): string
}

/** Longest text that is read, in characters: a parameter file has some thousands. */
export const longestDocument = 1_000_000
/** A slip early in a file can make every later line an error; more than this helps nobody. */
const mostProblems = 20

/**
 * Reads a YAML 1.2 document whose top is a map; JSON is read the same way, being YAML. `file` is only named in
 * problems, nothing is opened. All that is wrong with the writing is reported together, 20 problems at most; what
 * the keys and values mean is judged by `checkDocument`.
 */
export function readDocument(text: string, file: string): Result<ReadDocument> {
  const source = text.startsWith('\ufeff') ? text.slice(1) : text
  const refuse = (problem: Omit<Problem, 'where'>, at?: number): Result<never> => ({
    ok: false,
    problems: [{ ...problem, where: at === undefined ? { file } : { file, ...position(source, at) } }],
  })
  if (source.length > longestDocument) {
    const found = `${source.length} characters`
    return refuse({ code: 'file-too-large', found, allowed: `at most ${longestDocument} characters` })
  }
  const bad = firstBadCharacter(source)
  if (bad !== undefined) {
    const remedy = source[bad.at] === '\r' && { remedy: 'save the file with the line ends of Linux or Windows' }
    return refuse({ code: 'not-text', found: bad.name, allowed: 'plain text in UTF-8', ...remedy }, bad.at)
  }
  const deep = tooDeepAt(source, 2 * deepest)
  if (deep !== undefined) {
    const found = `more than ${2 * deepest} levels`
    return refuse({ code: 'too-deep', found, allowed: `at most ${deepest} levels` }, deep)
  }

  const lines = new LineCounter()
  const parsed = parseDocument(source, {
    lineCounter: lines,
    version: '1.2',
    schema: 'core',
    merge: false,
    resolveKnownTags: false,
    // Repeated keys are found while the tree is read: the library compares each with each, and names one place only.
    uniqueKeys: false,
    prettyErrors: false,
    logLevel: 'error',
  })
  const problems = parsed.errors.map((error) => yamlProblem(error, parsed, source, lines, file))
  if (parsed.directives.yaml.explicit === true || parsed.warnings.some(({ code }) => code === 'BAD_DIRECTIVE')) {
    // A directive can turn the file into YAML 1.1, where `no` is false and `1:30` is ninety.
    const allowed = 'a file without a % line'
    problems.push({ code: 'not-yaml', where: { file, line: 1, column: 1 }, found: 'a % line', allowed })
  }
  if (problems.length > 0) return { ok: false, problems: firstOfEachLine(problems).slice(0, mostProblems) }

  const root = parsed.contents
  if (root === null || (root.range[0] === root.range[1] && root.anchor === undefined && root.tag === undefined)) {
    return refuse({ code: 'file-empty', found: 'nothing', allowed: 'keys with values' })
  }
  const { tree, raw, problems: inTree } = readTree(parsed, source, lines, file)
  if (inTree.length > 0) return { ok: false, problems: inTree.slice(0, mostProblems) }
  if (tree.form !== 'section') {
    const found = tree.form === 'list' ? 'a list' : quoted(source, tree.valueAt, tree.valueEnd) || 'nothing'
    return refuse({ code: 'wrong-kind', found, allowed: 'keys with values, such as units: mm' }, tree.valueAt)
  }
  return { ok: true, value: documentOf(source, raw, tree, lines) }
}

function documentOf(text: string, raw: unknown, tree: DocumentNode, lines: LineCounter): ReadDocument {
  const find = (path: DocumentPath): { node: DocumentNode; whole: boolean } => {
    let node = tree
    for (const step of path) {
      const child = node.children.get(String(step))
      if (child === undefined) return { node, whole: false }
      node = child
    }
    return { node, whole: true }
  }
  return {
    text,
    raw,
    has: (path) => find(path).whole,
    locate: (path, of) => {
      const { node, whole } = find(path)
      const { line, col } = lines.linePos(of === 'value' && whole ? node.valueAt : node.keyAt)
      return { line, column: col }
    },
    writtenAt: (path) => {
      const { node, whole } = find(path)
      if (!whole || node.form === 'empty') return 'nothing'
      if (node.form === 'scalar') return quoted(text, node.valueAt, node.valueEnd) || 'nothing'
      return node.form === 'list' ? 'a list' : 'a section'
    },
  }
}

function firstOfEachLine(problems: readonly Problem[]): Problem[] {
  const seen = new Set<number | undefined>()
  return problems.filter(({ where }) => {
    const known = seen.has(where.line)
    seen.add(where.line)
    return !known
  })
}

function position(text: string, at: number): { line: number; column: number } {
  const before = text.slice(0, at)
  return { line: before.split('\n').length, column: at - before.lastIndexOf('\n') }
}
