import { describe, expect, it } from 'vitest'
import { dxfText } from '../../src/drawing/dxf/dxf-text.ts'
import { allDrawn, firstUndrawn } from '../../src/input/drawn-letters.ts'
import { textField } from '../../src/input/plain-field.ts'
import { firstBadCharacter } from '../../src/input/plain-text.ts'
import { drawingFont } from '../drawing/drawing-font.ts'

describe('a character that a text may have', () => {
  it('has a sign of its own in the drawing font, and can be written in a DXF', () => {
    const font = drawingFont()
    const characters = allDrawn()
    expect(characters.length).toBeGreaterThan(2000)
    expect(characters.filter((c) => font.advance(c) === undefined || font.ink(c) === undefined)).toEqual([])
    expect(characters.filter((c) => firstBadCharacter(c) !== undefined || firstUndrawn(c) !== undefined)).toEqual([])
    expect(() => characters.map(dxfText)).not.toThrow()
  })

  it('is not one that joins with its neighbours, runs from right to left, or is not seen', () => {
    expect(allDrawn().filter((c) => /\p{M}|\p{Cf}|\p{Script=Arabic}|\p{Script=Hebrew}/u.test(c))).toEqual([])
  })

  it('covers the Latin, Greek and Cyrillic letters that are in use, and the signs of the trade', () => {
    const text = 'ÀÿŁőŽžƒȘțẞẾữ ΑΩαωάώϊΐ АЯаяЁёҐґЇїЎў ⌀±°²³½¼¾⅛µΩ×÷−–—…“”‘’«»„‚′″≤≥≈≠√∞→←↑↓№€£™®©§¶•·‰'
    expect(firstUndrawn(text)).toBeUndefined()
  })

  it('is named with its code where it has none, and shown where that can be seen', () => {
    expect(firstUndrawn('a铣b')).toBe('character U+94E3 (铣)')
    expect(firstUndrawn('a😀')).toBe('character U+1F600 (😀)')
    expect(firstUndrawn('a\u200fb')).toBe('character U+200F')
    expect(firstUndrawn('\ud800')).toBe('character U+D800')
  })
})

it('an accent that is written apart from its letter is joined with it', () => {
  expect(textField({ says: 'x' }).parse('Fra\u0308ser')).toBe('Fräser')
})
