const names: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }

/** Words as HTML and SVG show them, in text and in quoted attributes; signs that XML has no place for become `�`. */
export const escaped = (words: string): string =>
  words.replace(unfit, '\u{fffd}').replace(/[&<>"']/g, (sign) => names[sign] ?? sign)

/** Control characters but tab and line ends, surrogates that stand alone, and the two code points that are no characters. */
const unfit = /[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu
