import { type Document, isScalar, type LineCounter, visit, type YAMLParseError } from 'yaml'
import { quoted } from './document-tree.ts'
import type { Problem } from './problem.ts'

interface Wording {
  readonly allowed: string
  readonly remedy?: string
}

const wordings: Readonly<Partial<Record<YAMLParseError['code'], Wording>>> = {
  TAB_AS_INDENT: { allowed: 'spaces for indentation', remedy: 'replace the tab with spaces' },
  BAD_INDENT: { allowed: 'the indentation of the lines beside it', remedy: 'check indentation and closing brackets' },
  MISSING_CHAR: { allowed: 'a key, a colon and a value', remedy: 'check for a missing colon, quote or bracket' },
  BLOCK_AS_IMPLICIT_KEY: { allowed: 'one key and one value a line', remedy: 'put a value that has a colon in quotes' },
  MULTILINE_IMPLICIT_KEY: { allowed: 'a key on one line', remedy: 'check for a missing colon or quote' },
  BLOCK_IN_FLOW: { allowed: 'values between brackets, with commas', remedy: 'check the closing bracket' },
  BAD_DQ_ESCAPE: { allowed: 'a backslash only where YAML knows it', remedy: 'use single quotes' },
  BAD_SCALAR_START: { allowed: 'a value that starts with a letter, a digit or a quote', remedy: 'put it in quotes' },
  MULTIPLE_DOCS: { allowed: 'one document in a file', remedy: 'remove the --- line and what follows' },
  NON_STRING_KEY: { allowed: 'a name as key' },
  TAG_RESOLVE_FAILED: { allowed: 'a value without a tag', remedy: 'leave the tag out' },
  BAD_ALIAS: { allowed: 'a value', remedy: 'write the value out here' },
}

/** Turns an error of the YAML library into a problem, in words of our own: its texts speak of the grammar of YAML. */
export function yamlProblem(
  error: YAMLParseError,
  document: Document.Parsed,
  text: string,
  lines: LineCounter,
  file: string,
): Problem {
  const quote = error.code === 'MISSING_CHAR' ? openQuote(document, text, error.pos[0]) : undefined
  if (quote !== undefined) {
    const { line, col } = lines.linePos(quote)
    const found = 'a quotation mark that is not closed'
    const remedy = 'close it at the end of the value'
    return { code: 'not-yaml', where: { file, line, column: col }, found, allowed: 'quotation marks in pairs', remedy }
  }
  const wording = wordings[error.code] ?? { allowed: 'keys with values, as YAML writes them' }
  const offset = Math.min(error.pos[0], text.length)
  const { line, col } = lines.linePos(offset)
  const code =
    error.code === 'BAD_ALIAS' ? 'alias-not-allowed' : error.code === 'RESOURCE_EXHAUSTION' ? 'too-deep' : 'not-yaml'
  return {
    code,
    where: { file, line: Math.max(1, line), column: Math.max(1, col) },
    found: foundAt(error, text, offset),
    ...wording,
  }
}

/** Where a text in quotation marks begins that ends here without one: the library names its end, lines below. */
function openQuote(document: Document.Parsed, text: string, end: number): number | undefined {
  let at: number | undefined
  visit(document, (_, node) => {
    if (!isScalar(node) || !node.range || !node.type?.startsWith('QUOTE')) return
    const [from, to] = node.range
    const closed = to - from > 1 && text[to - 1] === text[from]
    if ((to === end || text.slice(to).trim() === '') && !closed) at = from
  })
  return at
}

function foundAt(error: YAMLParseError, text: string, offset: number): string {
  if (error.code === 'TAB_AS_INDENT') return 'a tab'
  if (error.code === 'MULTIPLE_DOCS') return 'a second document'
  if (text.slice(offset).trim() === '') return 'the end of the file'
  const lineEnd = text.indexOf('\n', offset)
  return quoted(text, offset, lineEnd === -1 ? text.length : lineEnd) || 'the end of the line'
}
