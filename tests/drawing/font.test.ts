import PDFDocument from 'pdfkit'
import { describe, expect, it } from 'vitest'
import { fontFrom } from '../../src/drawing/font/font.ts'
import { textCorners, textWidth } from '../../src/drawing/font/text-box.ts'
import { drawingFont } from './drawing-font.ts'

const font = drawingFont()

describe('the drawing font', () => {
  it('is measured as the PDF library measures it, signs of the trade included', () => {
    const pdf = new PDFDocument({ font: font.bytes as never })
    for (const text of ['⌀25 H7 (25.000–25.021)', "10° ±15'", '3 × M6, 12 deep', 'AVAfi ffi', '−0.05 [1/2]']) {
      // A capital 2.5 high at the font's own proportion.
      const size = 2.5 / font.capHeight
      expect(textWidth(font, text, 2.5)).toBeCloseTo(pdf.fontSize(size).widthOfString(text), 9)
    }
  })

  it('refuses a sign it lacks, and a file that is no font', () => {
    expect(() => textWidth(font, '漢', 2.5)).toThrow(/no sign/)
    expect(() => fontFrom(new Uint8Array(40))).toThrow(RangeError)
  })

  it('keeps room for brackets that reach below the line, turned with the text', () => {
    const text = {
      kind: 'text',
      layer: 'text',
      at: [10, 20],
      text: '(12)',
      height: 2.5,
      across: 'left',
      up: 'baseline',
    } as const
    const flat = textCorners(font, { ...text, rotation: 0 })
    expect(flat[0][1]).toBeLessThan(20 - 0.3)
    expect(flat[2][1]).toBeGreaterThanOrEqual(22.5)
    const upright = textCorners(font, { ...text, rotation: Math.PI / 2 })
    expect(upright[0][0]).toBeCloseTo(10 + (20 - flat[0][1]), 9)
    expect(upright[1][1] - 20).toBeCloseTo(flat[1][0] - 10, 9)
  })
})
