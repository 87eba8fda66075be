/**
 * Position of the first character that has no place in a parameter file, or undefined. Control characters could
 * steer a terminal, direction overrides could show a drawing note other than it is, U+FFFD says that the file was
 * not UTF-8. Line breaks and tabs are fine.
 */
export function firstBadCharacter(text: string): { readonly at: number; readonly name: string } | undefined {
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at)
    if (code >= 0x20 && code < 0x7f) continue
    if (code === 0x09 || code === 0x0a) continue
    // Alone it would overprint the line on a terminal, and YAML ends no line with it.
    if (code === 0x0d && text.charCodeAt(at + 1) === 0x0a) continue
    if (isPaired(text, at, code)) {
      at++
      continue
    }
    if (isBad(code)) return { at, name: `character U+${code.toString(16).toUpperCase().padStart(4, '0')}` }
  }
  return undefined
}

/** The same characters made visible, `\u{1b}`, so that no text of a user steers a terminal. Tabs become spaces. */
export function printable(text: string): string {
  let result = ''
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0
    if (code === 0x09) result += ' '
    else result += isBad(code) ? `\\u{${code.toString(16)}}` : character
  }
  return result
}

function isPaired(text: string, at: number, code: number): boolean {
  const next = text.charCodeAt(at + 1)
  return code >= 0xd800 && code < 0xdc00 && next >= 0xdc00 && next < 0xe000
}

function isBad(code: number): boolean {
  return (
    code < 0x20 ||
    (code >= 0x7f && code < 0xa0) ||
    (code >= 0x2028 && code <= 0x202e) ||
    (code >= 0x2066 && code <= 0x2069) ||
    (code >= 0xd800 && code < 0xe000) ||
    code === 0xfeff ||
    (code >= 0xfffd && code <= 0xffff)
  )
}
