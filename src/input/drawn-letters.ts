/**
 * What a drawing can carry, as ranges of Unicode: signs that the drawing font has, that stand one beside the other from
 * left to right, and that need no joining. A text in another script would come out as boxes or in the wrong order.
 */
const drawn: readonly (readonly [from: number, to: number])[] = [
  [0x20, 0x7e],
  // Latin, without the soft hyphen, which nobody sees.
  [0xa0, 0xac],
  [0xae, 0x24f],
  [0x1e00, 0x1ef9],
  // Greek and Cyrillic.
  [0x386, 0x38a],
  [0x38c, 0x38c],
  [0x38e, 0x3a1],
  [0x3a3, 0x3ff],
  [0x400, 0x482],
  [0x48a, 0x4ff],
  // Spaces, dashes, quotation marks, primes, small figures, money.
  [0x2000, 0x200a],
  [0x2010, 0x2027],
  [0x202f, 0x205e],
  [0x2070, 0x2071],
  [0x2074, 0x208e],
  [0x20a0, 0x20b5],
  // Number, trade mark, ohm; fractions; arrows, mathematics and the sign for diameter; frames and plain shapes.
  [0x2100, 0x2109],
  [0x210b, 0x2149],
  [0x2150, 0x2185],
  [0x2190, 0x2311],
  [0x2500, 0x25ff],
]

/** What `firstUndrawn` lets through, in words. */
export const drawnLetters =
  'Latin, Greek or Cyrillic letters, digits and the signs of the trade, as drawings carry them'

/** The first character of a text that no drawing can carry, named with its code; undefined where there is none. */
export function firstUndrawn(text: string): string | undefined {
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0
    if (drawn.some(([from, to]) => code >= from && code <= to)) continue
    const name = `character U+${code.toString(16).toUpperCase().padStart(4, '0')}`
    return /[\p{L}\p{N}\p{P}\p{S}]/u.test(character) ? `${name} (${character})` : name
  }
  return undefined
}

/** Every character that a drawing can carry, for the test that the font has them. */
export const allDrawn = (): string[] =>
  drawn.flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, i) => String.fromCharCode(from + i)))
