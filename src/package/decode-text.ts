import type { Problem } from '../input/problem.ts'

/** The text of a file, or what is wrong with it; `text` then is what could be made out, to show the line. */
export type TextRead =
  | { readonly ok: true; readonly value: string }
  | { readonly ok: false; readonly problems: Problem[]; readonly text?: string }

/** Bytes as UTF-8, a byte order mark left in. Nothing is replaced or guessed: a wrong byte is named with its place. */
export function decodeText(bytes: Uint8Array, file: string): TextRead {
  const wide = wideEncoding(bytes)
  if (wide !== undefined) return refused({ file }, `${wide} text`)
  try {
    return { ok: true, value: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) }
  } catch {
    const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes)
    const at = text.indexOf('\ufffd')
    const before = text.slice(0, at)
    const wrong = bytes[new TextEncoder().encode(before).length] ?? 0
    const line = before.split('\n').length
    const column = at - before.lastIndexOf('\n') - (line === 1 && before.startsWith('\ufeff') ? 1 : 0)
    const found = `the byte ${wrong.toString(16).toUpperCase().padStart(2, '0')} (hexadecimal)`
    return { ...refused({ file, line, column }, found), text }
  }
}

function refused(where: Problem['where'], found: string): { ok: false; problems: Problem[] } {
  const remedy = 'save the file as UTF-8 in your editor'
  return { ok: false, problems: [{ code: 'not-text', where, found, allowed: 'plain text in UTF-8', remedy }] }
}

function wideEncoding(bytes: Uint8Array): string | undefined {
  const [a, b, c, d] = bytes
  if (a === 0xff && b === 0xfe) return c === 0 && d === 0 ? 'UTF-32' : 'UTF-16'
  if (a === 0xfe && b === 0xff) return 'UTF-16'
  if (a === 0 && b === 0 && c === 0xfe && d === 0xff) return 'UTF-32'
  // Without a mark: plain letters with a zero before or behind each.
  if ((a === 0 && c === 0 && b && d) || (b === 0 && d === 0 && a && c)) return 'UTF-16'
  return undefined
}
