import { plainFont } from './plain-font.ts'

/**
 * Measures of a TrueType font, read from its own tables (head, hhea, cmap, hmtx, loca, glyf; ISO/IEC
 * 14496-22), so that the room kept for a text is the room that the same font takes when it is embedded.
 */
export interface Font {
  /** The font for embedding, without kerning: see `plainFont`. */
  readonly bytes: Uint8Array
  /** Height of a capital over the size of the font. */
  readonly capHeight: number
  /** Advance of a character over the height of a capital; undefined where the font has no sign for it. */
  readonly advance: (character: string) => number | undefined
  /** Lowest and highest ink of a character against the baseline, over the height of a capital. */
  readonly ink: (character: string) => { readonly low: number; readonly high: number } | undefined
}

/** Reads a font. Throws RangeError where the bytes are no TrueType font with glyph outlines. */
export function fontFrom(file: Uint8Array): Font {
  const bytes = plainFont(file)
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const table = tablesOf(view)
  const head = table('head')
  const unitsPerEm = view.getUint16(head + 18)
  const longLoca = view.getInt16(head + 50) === 1
  const widths = view.getUint16(table('hhea') + 34)
  const [hmtx, loca, glyf] = [table('hmtx'), table('loca'), table('glyf')]
  const glyphOf = glyphMap(view, table('cmap'))
  const offset = (glyph: number) => (longLoca ? view.getUint32(loca + 4 * glyph) : 2 * view.getUint16(loca + 2 * glyph))
  const outline = (glyph: number) => {
    const [from, to] = [offset(glyph), offset(glyph + 1)]
    return from === to
      ? { low: 0, high: 0 }
      : { low: view.getInt16(glyf + from + 4), high: view.getInt16(glyf + from + 8) }
  }
  // Older fonts do not state the height of a capital; a flat one shows it.
  const capHeight = outline(glyphOf('H'.codePointAt(0)!)).high
  if (capHeight <= 0 || unitsPerEm === 0) throw new RangeError('font without a height of capitals')
  return {
    bytes,
    capHeight: capHeight / unitsPerEm,
    advance(character) {
      const glyph = glyphOf(character.codePointAt(0)!)
      if (glyph === 0) return undefined
      return view.getUint16(hmtx + 4 * Math.min(glyph, widths - 1)) / capHeight
    },
    ink(character) {
      const glyph = glyphOf(character.codePointAt(0)!)
      if (glyph === 0) return undefined
      const { low, high } = outline(glyph)
      return { low: low / capHeight, high: high / capHeight }
    },
  }
}

function tablesOf(view: DataView): (name: string) => number {
  const at = new Map<string, number>()
  for (let i = 0; i < view.getUint16(4); i++) {
    const row = 12 + 16 * i
    const name = String.fromCharCode(...[0, 1, 2, 3].map((k) => view.getUint8(row + k)))
    at.set(name, view.getUint32(row + 8))
  }
  return (name) => {
    const found = at.get(name)
    if (found === undefined) throw new RangeError(`font without a ${name} table`)
    return found
  }
}

/** Character → glyph from the font's Unicode map of the basic plane (format 4); 0 where it has no sign. */
function glyphMap(view: DataView, cmap: number): (code: number) => number {
  for (let i = 0; i < view.getUint16(cmap + 2); i++) {
    const at = cmap + view.getUint32(cmap + 4 + 8 * i + 4)
    if (view.getUint16(at) !== 4) continue
    const size = view.getUint16(at + 6)
    const [ends, starts] = [at + 14, at + 16 + size]
    const [deltas, ranges] = [starts + size, starts + 2 * size]
    return (code) => {
      for (let k = 0; k < size; k += 2) {
        if (code > view.getUint16(ends + k)) continue
        const start = view.getUint16(starts + k)
        if (code < start) return 0
        const range = view.getUint16(ranges + k)
        const delta = view.getUint16(deltas + k)
        if (range === 0) return (code + delta) & 0xffff
        const glyph = view.getUint16(ranges + k + range + 2 * (code - start))
        return glyph === 0 ? 0 : (glyph + delta) & 0xffff
      }
      return 0
    }
  }
  throw new RangeError('font without a Unicode map')
}
