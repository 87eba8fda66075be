import { describe, expect, it } from 'vitest'
import { amountText, labelText, numberText } from '../../src/report/amount-text.ts'
import { callouts, wrapped } from '../../src/report/html/callouts.ts'
import { Drawing } from '../../src/report/html/drawing.ts'
import { escaped } from '../../src/report/html/escape.ts'
import { parsedXml, textOf } from './xml.ts'

describe('a number of the report', () => {
  it('is written as finely as a shop can set or measure it', () => {
    expect(amountText(106.65312, 'mm')).toBe('106.653 mm')
    expect(amountText(0.87654, 'in')).toBe('0.8765 in')
    expect(amountText(15.8312, '°')).toBe('15.83°')
    expect(amountText(1095.7, 'rev/min')).toBe('1096 rev/min')
    expect(amountText(2.3, '')).toBe('2.3')
    expect(amountText(24, 'µm')).toBe('24 µm')
  })

  it('keeps three digits where it is small, except an angle', () => {
    expect(numberText(0.000892, 'mm')).toBe('0.000892')
    expect(numberText(49.27, 'rev/min')).toBe('49.3')
    expect(numberText(0.0004, '°')).toBe('0')
    expect(numberText(0, 'mm')).toBe('0')
    expect(numberText(-41.04, 'µm')).toBe('-41')
  })

  it('is shorter in a picture, and keeps its unit on its line', () => {
    expect(labelText(106.65312, 'mm')).toBe('106.65\u{a0}mm')
    expect(labelText(1.96354, 'in')).toBe('1.964\u{a0}in')
    expect(labelText(7, '°')).toBe('7°')
  })
})

describe('words from a user', () => {
  it('come out of a page as they went in', () => {
    const words = `<script>alert('1' & "2")</script> &amp; ]]> ⌀ µ 𝛼 \u{a0}`
    expect(textOf(parsedXml(`<p title="${escaped(words)}">${escaped(words)}</p>`))).toBe(words)
    expect(parsedXml(`<p title="${escaped(words)}"/>`).attributes.get('title')).toBe(words)
  })

  it('lose signs that a page has no place for', () => {
    expect(escaped('a\u{0}b\u{b}c\u{fffe}d\u{d800}e')).toBe('a\u{fffd}b\u{fffd}c\u{fffd}d\u{fffd}e')
  })
})

describe('callouts', () => {
  it('break lines between words and nowhere else', () => {
    expect(wrapped('slot floor 9.5\u{a0}mm deep', 12)).toEqual(['slot floor', '9.5\u{a0}mm deep'])
    expect(wrapped('extraordinarily long', 5)).toEqual(['extraordinarily', 'long'])
  })

  it('stand in the order of what they point at, without touching, however near those are', () => {
    const drawing = new Drawing(100, 100)
    const at = (y: number) => [50, y] as const
    const column = { side: 'left', x: 40, width: 40, top: 10, bottom: 60 } as const
    callouts(drawing, column, [
      { at: at(50), words: 'c' },
      { at: at(49.8), words: 'b' },
      { words: 'last' },
      { at: at(5), words: 'a' },
    ])
    const svg = parsedXml(drawing.element('x', 'x', 'x'))
    const lines = svg.children.filter((child) => typeof child !== 'string' && child.name === 'text')
    const read = lines.map((line) =>
      typeof line === 'string' ? ['', 0] : [textOf(line), Number(line.attributes.get('y'))],
    )
    expect(read.map(([words]) => words)).toEqual(['a', 'b', 'c', 'last'])
    const ys = read.map(([, y]) => y as number)
    for (const [i, y] of ys.entries()) if (i > 0) expect(y - ys[i - 1]!).toBeGreaterThan(5)
    expect(ys[0]).toBeGreaterThan(10)
    expect(ys.at(-1)).toBeLessThan(60)
  })
})
