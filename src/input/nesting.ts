import { Lexer } from 'yaml'

/**
 * Offset at which brackets, list marks and indentation nest deeper than `most`, or undefined.
 *
 * Asked before the text is parsed: the YAML reader calls itself once a level, and on half a million opening brackets
 * it took the whole process down (measured, Node 20) where an error was due. Reading tokens needs no recursion. The
 * count may be one or two too high, never too low, so the exact limit is judged on the parsed tree.
 */
export function tooDeepAt(text: string, most: number): number | undefined {
  const indents: number[] = []
  let brackets = 0
  let marksOnLine = 0
  let offset = 0
  let startOfLine = true
  for (const token of new Lexer().lex(text)) {
    // Marks the lexer puts in of its own; they stand for no character of the text.
    if (token === '\u0002' || token === '\u0018' || token === '\u001f') continue
    const at = offset
    offset += token.length
    if (token === '\n' || token === '\r\n') {
      startOfLine = true
      marksOnLine = 0
      continue
    }
    if (brackets === 0 && startOfLine) {
      const indent = /^ +$/.test(token) ? token.length : 0
      while ((indents.at(-1) ?? 0) > indent) indents.pop()
      if (indent > (indents.at(-1) ?? 0)) indents.push(indent)
    }
    startOfLine = false
    if (token === '[' || token === '{') brackets++
    else if (token === ']' || token === '}') brackets = Math.max(0, brackets - 1)
    else if (brackets === 0 && (token === '-' || token === '?')) marksOnLine++
    if (indents.length + brackets + marksOnLine > most) return at
  }
  return undefined
}
