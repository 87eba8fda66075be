import { describe, expect, it } from 'vitest'
import type { Entity } from '../../src/drawing/entity.ts'
import { textCorners } from '../../src/drawing/font/text-box.ts'
import { drawingArea, sheetFrame } from '../../src/drawing/sheet/frame.ts'
import { projectionSymbol } from '../../src/drawing/sheet/projection-symbol.ts'
import { scaleText, standardScales } from '../../src/drawing/sheet/scale.ts'
import { sheetSize, sheetSizes } from '../../src/drawing/sheet/sheet-size.ts'
import { type TitleBlock, titleBlock, titleBlockHeight } from '../../src/drawing/sheet/title-block.ts'
import { checkedStyle, dashesOf, type LayerName, styleOf } from '../../src/drawing/style.ts'
import { textsInTheWay } from './clear-text.ts'
import { drawingFont } from './drawing-font.ts'

const font = drawingFont()
const style = styleOf()

describe('a sheet', () => {
  it('has a standard size', () => {
    // ISO 216 A4 and A3; ASME Y14.1 sizes A and B, in inches (DR-1, DR-3).
    const { A4, A3, letter, tabloid } = sheetSizes
    expect([A4.width, A4.height, A3.width, A3.height]).toEqual([210, 297, 420, 297])
    expect([letter, tabloid].map((s) => [s.width / 25.4, s.height / 25.4])).toEqual([
      [11, 8.5],
      [17, 11],
    ])
    expect(sheetSize('A5')).toMatchObject({ ok: false, problems: [{ code: 'unknown-choice', found: 'A5' }] })
  })

  it('has its frame inside the paper, 20 mm for filing on the left (ISO 5457, from memory)', () => {
    for (const size of Object.values(sheetSizes)) {
      const points = sheetFrame(size).flatMap((e) =>
        e.kind === 'line' ? [e.from, e.to] : e.kind === 'polyline' ? e.points : [],
      )
      expect(Math.min(...points.flat())).toBeGreaterThan(3)
      expect(Math.max(...points.map((p) => p[0]))).toBeLessThan(size.width - 3)
      expect(Math.max(...points.map((p) => p[1]))).toBeLessThan(size.height - 3)
      const { low, high } = drawingArea(size, 46, style)
      expect(high[0] - low[0]).toBeGreaterThan(160)
      expect(high[1] - low[1]).toBeGreaterThan(130)
    }
    expect(sheetSizes.A3.margins).toEqual({ left: 20, right: 10, top: 10, bottom: 10 })
  })

  it('is drawn at a standard scale only', () => {
    // ISO 5455: 1, 2 and 5 times powers of ten.
    for (const scale of standardScales) expect(scaleText(scale)).toMatch(/^(1:[125]0*|[125]0*:1)$/)
    expect(() => scaleText(1 / 3)).toThrow(RangeError)
  })
})

describe('a title block', () => {
  const long = 'a very long name for a part that nobody in the shop would ever call it by, and then some more of it'
  const block: TitleBlock = {
    title: 'Head',
    part: 'Body',
    drawingNumber: 'D-1',
    material: 'steel 1018',
    scale: '1:1',
    units: 'mm, [in]',
    generalTolerance: 'ISO 2768-m',
    mass: '0.412 kg',
    revision: 'a1b2c3d4',
    sheet: 2,
    sheets: 5,
    projection: 'first angle',
  } // prettier-ignore

  it.each([
    ['short words', block],
    [
      'long words',
      { ...block, title: long, part: long, material: long, generalTolerance: long, mass: long, stop: long },
    ],
  ])('with %s has every text inside it and clear of every line', (_, given) => {
    for (const size of Object.values(sheetSizes)) {
      const drawn = titleBlock(given, size, style, font)
      // The words beside the projection symbol and its axis are checked like the rest.
      expect(textsInTheWay(font, drawn, [])).toEqual([])
      const right = size.width - size.margins.right
      for (const e of drawn) {
        if (e.kind !== 'text') continue
        for (const [x, y] of textCorners(font, e)) {
          expect(x).toBeGreaterThan(right - 180)
          expect(x).toBeLessThan(right)
          expect(y).toBeGreaterThan(size.margins.bottom)
          expect(y).toBeLessThan(size.margins.bottom + titleBlockHeight(given, style, font))
        }
      }
    }
  })

  it('says everything it is given, once, and the stop in words across it', () => {
    const words = (b: TitleBlock) =>
      titleBlock(b, sheetSizes.A4, style, font).flatMap((e) => (e.kind === 'text' ? [e.text] : []))
    for (const text of [
      'Head',
      'Body',
      'D-1',
      'steel 1018',
      '1:1',
      'mm, [in]',
      'ISO 2768-m',
      '0.412 kg',
      'a1b2c3d4',
      '2 of 5',
      'first angle',
    ])
      expect(words(block).filter((w) => w === text)).toEqual([text])
    expect(words(block).some((w) => w.includes('STOP'))).toBe(false)
    expect(words({ ...block, stop: 'bore opens into slot' })).toContain('STOP, DO NOT MAKE: bore opens into slot')
  })

  it('grows with what stops the job, and says every word of it no smaller than 1.8 mm', () => {
    const stops = Array.from({ length: 12 }, (_, i) => `Stop ${i + 1}: the bore opens into the slot, and ${long}.`)
    for (const count of [1, 3, 12]) {
      const stop = stops.slice(0, count).join(' ')
      const texts = titleBlock({ ...block, stop }, sheetSizes.A4, style, font).filter((e) => e.kind === 'text')
      const banner = texts.filter((t) => t.layer === 'stop')
      expect(banner.map((t) => t.text).join(' ')).toBe(`STOP, DO NOT MAKE: ${stop}`)
      expect(Math.min(...banner.map((t) => t.height))).toBeGreaterThanOrEqual(1.8)
      expect(textsInTheWay(font, titleBlock({ ...block, stop }, sheetSizes.A4, style, font), [])).toEqual([])
    }
    const height = (count: number) =>
      titleBlockHeight({ stop: stops.slice(0, count).join(' ') }, style, font) - titleBlockHeight({}, style, font)
    expect(height(12)).toBeGreaterThan(height(3) + 10)
  })

  it('sets a long name on two lines before it sets it too small to read', () => {
    const material = 'chrome-molybdenum steel 4140, quenched and tempered to 1000 MPa, drawn'
    const texts = titleBlock({ ...block, material }, sheetSizes.A4, style, font).filter((e) => e.kind === 'text')
    const lines = texts.filter((t) => material.includes(t.text))
    expect(lines.map((t) => t.text).join(' ')).toBe(material)
    expect(lines.map((t) => t.height)).toEqual([1.8, 1.8])
  })
})

describe('the symbol of the method of projection', () => {
  // Derived geometry (DR-5): the view on the small end stands beside the small end in third angle, beyond the large end in first.
  it.each([
    ['third angle', 1],
    ['first angle', -1],
  ] as const)('of %s has the circles on the right side of the frustum', (method, side) => {
    const drawn = projectionSymbol(method, [0, 0], 10)
    const ends = drawn.flatMap((e) => (e.kind === 'line' && e.layer === 'datum' && e.from[0] === e.to[0] ? [e] : []))
    const tall = (e: (typeof ends)[number]) => Math.abs(e.to[1] - e.from[1])
    const [large, small] = ends.sort((a, b) => tall(b) - tall(a)) as [(typeof ends)[number], (typeof ends)[number]]
    const circles = drawn.filter((e): e is Entity<LayerName> & { kind: 'circle' } => e.kind === 'circle')
    expect(circles.map((c) => 2 * c.radius)).toEqual([tall(large), tall(small)])
    // The usual form: the small end on the left.
    expect(small.from[0]).toBeLessThan(large.from[0])
    // From the large end towards the small one is the way to the circles in third angle, away from them in first.
    const toSmall = Math.sign(small.from[0] - large.from[0])
    expect(Math.sign(circles[0]!.center[0] - (large.from[0] + small.from[0]) / 2)).toBe(side * toSmall)
  })
})

describe('the style', () => {
  it('takes its widths from ISO 128-2, two to one, and its dashes from the width', () => {
    for (const lines of ['0.5/0.25', '0.7/0.35'] as const)
      for (const textHeight of [2.5, 3.5] as const) expect(checkedStyle(styleOf({ lines, textHeight })).ok).toBe(true)
    expect(dashesOf('chain', 0.25)).toEqual([6, 0.75, 0.125, 0.75])
  })

  it('is refused with everything that is wrong with it', () => {
    const { layers } = style
    const bad = checkedStyle({
      ...style,
      rowSpacing: 3,
      arrowLength: Number.NaN,
      layers: {
        ...layers,
        hidden: { ...layers.hidden, width: 0.5 },
        text: { ...layers.text, width: 0.3, dxfColour: 0 },
      },
    })
    expect(bad.ok ? [] : bad.problems.map((p) => p.where.path)).toEqual([
      'arrowLength',
      'layers.text.width',
      'layers.text.dxfColour',
      'layers.hidden.width',
      'rowSpacing',
    ])
  })
})
