/**
 * A line of text as DXF writes it: `%%c` ⌀, `%%d` °, `%%p` ±, a hyphen for the longer
 * dashes (a CAD whose own font lacks them shows some other sign, and a minus must never be lost), other signs beyond ASCII as `\U+XXXX`, which every reader of
 * AC1021 knows whatever its code page. What would be read as such a code and is none is taken apart: a backslash is
 * `\U+005C`, and a space goes between a percent sign and another or one
 * of the three signs. Throws RangeError on control characters, which would end the
 * value early, and on signs beyond U+FFFF, for which there is no code.
 */
export function dxfText(text: string): string {
  if (/\p{Cc}/u.test(text)) throw new RangeError(`control character in ${JSON.stringify(text)}`)
  const named: Readonly<Record<string, string>> = { '⌀': '%%c', '°': '%%d', '±': '%%p', '−': '-', '–': '-' }
  return [...text.replace(/%(?=[%⌀°±])/g, '% ')]
    .map((c) => {
      const code = c.codePointAt(0)!
      if (code < 127 && c !== '\\') return c
      if (code > 0xffff) throw new RangeError(`no way to write ${c} in a DXF text`)
      return named[c] ?? `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`
    })
    .join('')
}
