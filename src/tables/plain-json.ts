/**
 * The value of a JSON text that is written plainly: each key once, each number in its shortest form. Undefined for any
 * other text, which is then to be read with positions. Reading that way takes most of the time of a start, so tables
 * that are in order go round it.
 *
 * A repeated key is lost in parsing, so writing the value again and comparing all but the white space shows it.
 */
export function readPlainJson(text: string): unknown {
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return undefined
  }
  const withoutSpace = text.replace(/"(?:[^"\\]|\\.)*"|\s+/g, (part) => (part.startsWith('"') ? part : ''))
  return JSON.stringify(value) === withoutSpace ? value : undefined
}
