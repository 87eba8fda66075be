import { longestDocument } from '../input/read-document.ts'

/**
 * The value of a JSON text that is written plainly: each key once, each number in its shortest form, of a length and
 * depth that a table has. Undefined for any other text, which is then to be read with positions. Reading that way takes most of the time of a start, so tables
 * that are in order go round it.
 *
 * A repeated key is lost in parsing, so writing the value again and comparing all but the white space shows it.
 */
export function readPlainJson(text: string): unknown {
  if (text.length > longestDocument) return undefined
  let value: unknown
  let again: string
  try {
    value = JSON.parse(text)
    // This calls itself once a level, and refuses when there are too many.
    again = JSON.stringify(value)
  } catch {
    return undefined
  }
  const withoutSpace = text.replace(/"(?:[^"\\]|\\.)*"|\s+/g, (part) => (part.startsWith('"') ? part : ''))
  return again === withoutSpace ? value : undefined
}
