import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type LineCounter,
  type Pair,
  type ParsedNode,
  type Scalar,
} from 'yaml'
import { readNumber } from '../quantity/parse-number.ts'
import { isJson, isUnspaced, tightRuns } from './flow-commas.ts'
import { firstBadCharacter } from './plain-text.ts'
import type { Problem, ProblemCode } from './problem.ts'

/** Deepest nesting of sections and lists in a file that is accepted. */
export const deepest = 32

/** One key or list item as written: where it stands, and what stands in it. */
export interface DocumentNode {
  /** Offset of the key (of the value for list items and the whole document). */
  readonly keyAt: number
  readonly valueAt: number
  readonly valueEnd: number
  readonly form: 'section' | 'list' | 'scalar' | 'empty'
  readonly children: ReadonlyMap<string, DocumentNode>
}

export interface TreeRead {
  readonly tree: DocumentNode
  readonly raw: unknown
  readonly problems: Problem[]
}

/**
 * Plain values and positions from a parsed document. Refuses what a parameter file has no use for and what could
 * bite: aliases (a short file could grow without end), tags, merge keys, keys that are no names, repeated keys,
 * numbers that are not decimal or not finite. Everything wrong is collected; the values are then not to be used.
 */
export function readTree(document: Document.Parsed, text: string, lines: LineCounter, file: string): TreeRead {
  const problems: Problem[] = []
  let writtenAsJson: boolean | undefined
  const where = (at: number, path: readonly string[]) => {
    const { line, col } = lines.linePos(at)
    return { file, line, column: col, ...(path.length === 0 ? {} : { path: path.join('.') }) }
  }
  const complain = (
    code: ProblemCode,
    at: number,
    path: readonly string[],
    found: string,
    allowed: string,
    remedy?: string,
  ) => {
    problems.push({ code, where: where(at, path), found, allowed, ...(remedy === undefined ? {} : { remedy }) })
  }
  const sourceOf = (node: ParsedNode) => quoted(text, node.range[0], node.range[1]) || 'nothing'

  function read(
    node: ParsedNode | null | undefined,
    keyAt: number,
    path: readonly string[],
  ): { tree: DocumentNode; raw: unknown } {
    const [valueAt, valueEnd] = node?.range ?? [keyAt, keyAt]
    const children = new Map<string, DocumentNode>()
    const leaf = (form: DocumentNode['form'], raw: unknown) => ({
      tree: { keyAt, valueAt, valueEnd, form, children },
      raw,
    })
    if (node === null || node === undefined) return leaf('empty', null)
    if (isAlias(node)) {
      complain('alias-not-allowed', valueAt, path, sourceOf(node), 'a value', 'write the value out here')
      return leaf('scalar', null)
    }
    if (node.anchor !== undefined || node.tag !== undefined) refuseDressing(node, keyAt, path)
    if (path.length > deepest && !isScalar(node)) {
      complain('too-deep', valueAt, path.slice(0, 4), `${path.length} levels`, `at most ${deepest} levels`)
      return leaf('scalar', null)
    }
    if (isScalar(node)) {
      const raw = scalarValue(node, path)
      return leaf(raw === null && valueAt === valueEnd ? 'empty' : 'scalar', raw)
    }
    if (isSeq(node)) {
      refuseTightCommas(node.items as ParsedNode[], path)
      const raw = node.items.map((item, index) => {
        const child = read(item as ParsedNode, (item as ParsedNode).range[0], [...path, String(index)])
        children.set(String(index), child.tree)
        return child.raw
      })
      return leaf('list', raw)
    }
    if (!isMap(node)) return leaf('scalar', null)
    const raw: Record<string, unknown> = {}
    const torn = keysTornOff(node.items as Pair<ParsedNode, ParsedNode | null>[], path)
    for (const [index, pair] of node.items.entries()) {
      if (torn.has(index)) continue
      const key = pair.key as ParsedNode
      const at = key.range[0]
      const name = isScalar(key) ? key.value : undefined
      if (key.anchor !== undefined || isAlias(key) || name === '<<') {
        complain('alias-not-allowed', at, path, sourceOf(key), 'a name', 'write the keys out here')
        continue
      }
      if (typeof name !== 'string' || name === '') {
        complain('wrong-kind', at, path, `${sourceOf(key)} as a key`, 'a name')
        continue
      }
      const first = children.get(name)
      const child = read(pair.value as ParsedNode | null, at, [...path, name])
      if (first !== undefined) {
        const { line, col } = lines.linePos(first.keyAt)
        const found = `${quoted(text, at, key.range[1])} again (it stands at line ${line}, column ${col} already)`
        complain('duplicate-key', at, [...path, name], found, 'each key once', 'remove one of the two')
        continue
      }
      children.set(name, child.tree)
      // Not by assignment: that would set the prototype where the key is `__proto__`.
      Object.defineProperty(raw, name, { value: child.raw, enumerable: true, writable: true, configurable: true })
    }
    return leaf('section', raw)
  }

  /** The list would take the number with a decimal comma, or one between thousands, for two, without a word. */
  function refuseTightCommas(nodes: readonly ParsedNode[], path: readonly string[]) {
    const items = nodes.map(({ range: [from, to] }) => ({ from, valueFrom: from, to }))
    const runs = tightRuns(text, items)
    if (runs.length > 0 && isUnspaced(items)) {
      writtenAsJson ??= isJson(text)
      if (writtenAsJson) return
    }
    for (const { first, comma, written } of runs) {
      const remedy = 'put a space behind the comma between two numbers, or write a point in a number'
      const found = quoted(written, 0, written.length)
      complain('not-a-quantity', comma, [...path, String(first)], found, 'a space behind each comma', remedy)
    }
  }

  /** Of `{ diameter: 6,5 }` YAML makes a key 5. Gives the numbers of such keys. */
  function keysTornOff(pairs: readonly Pair<ParsedNode, ParsedNode | null>[], path: readonly string[]): Set<number> {
    const items = pairs.map(({ key, value }) => {
      const whole = value ?? key
      return { from: key.range[0], valueFrom: whole.range[0], to: whole.range[1] }
    })
    const torn = new Set<number>()
    for (const { first, last, comma, written } of tightRuns(text, items)) {
      for (let at = first + 1; at <= last; at++) torn.add(at)
      const { key } = pairs[first]!
      const name = isScalar(key) ? [String(key.value)] : []
      const number = readNumber(written)
      const found = quoted(written, 0, written.length)
      complain(
        'not-a-quantity',
        comma,
        [...path, ...name],
        found,
        'a number with a point',
        number.ok ? undefined : number.remedy,
      )
    }
    return torn
  }

  /** Anchors and tags stand before the value; their place is looked up in the text, the library keeps none. */
  function refuseDressing(node: ParsedNode, keyAt: number, path: readonly string[]) {
    const before = text.slice(Math.min(keyAt, node.range[0]), node.range[0])
    const place = (sign: RegExp, name: string): [number, string] => {
      const match = sign.exec(before)
      return match === null
        ? [node.range[0], name]
        : [node.range[0] - before.length + match.index, match[0].slice(0, 60)]
    }
    if (node.anchor !== undefined) {
      const [at, found] = place(/&\S+/, `&${node.anchor}`)
      complain('alias-not-allowed', at, path, found, 'a value without an anchor', 'leave the anchor out')
    }
    if (node.tag !== undefined) {
      const [at, found] = place(/!\S*/, `the tag ${node.tag}`)
      complain('not-yaml', at, path, found, 'a value without a tag', 'leave the tag out; put text in quotes')
    }
  }

  function scalarValue(node: Scalar.Parsed, path: readonly string[]): unknown {
    const { value } = node
    const at = node.range[0]
    if (typeof value === 'number') {
      if (!Number.isFinite(value)) {
        complain(
          'not-a-quantity',
          at,
          path,
          sourceOf(node),
          'a number that can be measured',
          'put it in quotes if it is text',
        )
      } else if (!/^[-+]?[\d.]/.test(node.source) || /^[-+]?0[xo]/i.test(node.source)) {
        complain(
          'not-a-quantity',
          at,
          path,
          sourceOf(node),
          'a decimal number',
          `write ${value}, or quotes if it is text`,
        )
      }
      return value + 0
    }
    if (typeof value === 'string') {
      const bad = firstBadCharacter(value)
      if (bad !== undefined) complain('not-text', at, path, bad.name, 'text that can be printed')
    }
    return value
  }

  const root = document.contents
  const { tree, raw } = read(root, root?.range[0] ?? 0, [])
  return { tree, raw, problems }
}

/** Source text as the user wrote it, on one line and no longer than a message can bear. */
export function quoted(text: string, from: number, to: number): string {
  const written = text.slice(from, Math.min(to, from + 400)).trim()
  const firstLine = written.split(/\r?\n/, 1)[0] ?? ''
  const cut = firstLine.length > 60 ? firstLine.slice(0, 60) : firstLine
  return cut.length < written.length || to > from + 400 ? `${cut} …` : cut
}
