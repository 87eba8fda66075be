/** Tables that measuring, embedding and drawing a font need. */
const kept = new Set([
  'OS/2',
  'cmap',
  'cvt ',
  'fpgm',
  'gasp',
  'glyf',
  'head',
  'hhea',
  'hmtx',
  'loca',
  'maxp',
  'name',
  'post',
  'prep',
])

/**
 * The font without its tables for joining and kerning signs: a PDF library that finds none neither applies nor reads them,
 * so that a text is as wide as the sum of its signs, and takes half the time. Throws RangeError where the bytes are no
 * TrueType font.
 */
export function plainFont(bytes: Uint8Array): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (bytes.byteLength < 12 || view.getUint32(0) !== 0x00010000) throw new RangeError('not a TrueType font')
  const rows = Array.from({ length: view.getUint16(4) }, (_, i) => {
    const at = 12 + 16 * i
    const name = String.fromCharCode(...bytes.subarray(at, at + 4))
    return { name, sum: view.getUint32(at + 4), offset: view.getUint32(at + 8), length: view.getUint32(at + 12) }
  }).filter(({ name }) => kept.has(name))
  const padded = (n: number) => Math.ceil(n / 4) * 4
  const out = new Uint8Array(12 + 16 * rows.length + rows.reduce((sum, r) => sum + padded(r.length), 0))
  const put = new DataView(out.buffer)
  const power = Math.floor(Math.log2(rows.length))
  put.setUint32(0, 0x00010000)
  put.setUint16(4, rows.length)
  put.setUint16(6, 16 * 2 ** power)
  put.setUint16(8, power)
  put.setUint16(10, 16 * (rows.length - 2 ** power))
  let end = 12 + 16 * rows.length
  rows.forEach(({ name, sum, offset, length }, i) => {
    const at = 12 + 16 * i
    for (let k = 0; k < 4; k++) put.setUint8(at + k, name.charCodeAt(k))
    put.setUint32(at + 4, sum)
    put.setUint32(at + 8, end)
    put.setUint32(at + 12, length)
    out.set(bytes.subarray(offset, offset + length), end)
    end += padded(length)
  })
  return out
}
