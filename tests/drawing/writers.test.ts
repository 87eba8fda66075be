import { describe, expect, it } from 'vitest'
import type { DxfDocument } from '../../src/drawing/dxf/dxf-document.ts'
import { dxfFile } from '../../src/drawing/dxf/dxf-file.ts'
import { dxfText } from '../../src/drawing/dxf/dxf-text.ts'
import type { Entity, Hatch } from '../../src/drawing/entity.ts'
import { hatchLines } from '../../src/drawing/hatch-lines.ts'
import { sheetOnPaper } from '../../src/drawing/sheet/sheet.ts'
import { styleOf } from '../../src/drawing/style.ts'
import { sheetSvg, viewSvg } from '../../src/drawing/svg/svg.ts'
import { drawingFont } from './drawing-font.ts'
import { sampleSheet } from './sample-sheet.ts'

const font = drawingFont()
const style = styleOf()

const document = (entity: Entity<string>): DxfDocument => ({
  units: 'mm',
  lineTypes: [{ name: 'DASHED', dashes: [3, 0.75] }],
  layers: [{ name: 'visible', lineType: 'CONTINUOUS', width: 0.5, colour: 7 }],
  entities: [entity as Exclude<Entity<string>, { kind: 'hatch' }>],
  dimensions: [],
  dimensionStyles: [
    { name: 'STANDARD', textHeight: 2.5, arrowLength: 3, extensionGap: 1, extensionBeyond: 2, textGap: 0.9 },
  ],
})
const circle = { kind: 'circle', layer: 'visible', center: [1, 2], radius: 3 } as const

describe('a DXF file', () => {
  it.each([
    ['a number that is none', { ...circle, center: [Number.NaN, 0] }],
    ['an infinite one', { ...circle, center: [0, Infinity] }],
    ['a circle without radius', { ...circle, radius: 0 }],
    ['a circle too small to be told from none', { ...circle, radius: 1e-7 }],
    ['a layer that is not in the table', { ...circle, layer: 'invisible' }],
    [
      'text that would end its line',
      {
        kind: 'text',
        layer: 'visible',
        at: [0, 0],
        text: 'a\n0\nEOF',
        height: 2.5,
        across: 'left',
        up: 'baseline',
        rotation: 0,
      },
    ],
    [
      'an ellipse longer across than along',
      { kind: 'ellipse', layer: 'visible', center: [0, 0], major: [1, 0], ratio: 2, start: 0, end: 1 },
    ],
  ] as [string, Entity<string>][])('never holds %s', (_, entity) => {
    expect(() => dxfFile(document(circle))).not.toThrow()
    expect(() => dxfFile(document(entity))).toThrow(RangeError)
  })

  it('has each layer once, under a name, line type and width that DXF knows', () => {
    const good = document(circle)
    const layer = good.layers[0]!
    for (const layers of [
      [layer, layer],
      [{ ...layer, width: 0.55 }],
      [{ ...layer, lineType: 'WAVY' }],
      [{ ...layer, name: 'a/b' }],
    ])
      expect(() => dxfFile({ ...good, layers, entities: [] })).toThrow(RangeError)
  })

  it('writes no exponent and no minus before nothing', () => {
    const text = dxfFile(document({ kind: 'line', layer: 'visible', from: [1e-9, -1e-9], to: [0.1 + 0.2, -1e-6] }))
    const rows = text.split('\n')
    const at = rows.indexOf('LINE')
    const value = (code: string) =>
      rows[
        at +
          1 +
          2 *
            rows
              .slice(at + 1)
              .filter((_, i) => i % 2 === 0)
              .indexOf(code) +
          1
      ]
    expect([value('10'), value('20'), value('11')]).toEqual(['0', '0', '0.3'])
  })

  it('writes the signs of the trade as every reader knows them', () => {
    expect(dxfText("⌀25 ±0.1 10° 15' − ×")).toBe("%%c25 %%p0.1 10%%d 15' - \\U+00D7")
  })

  it('takes apart what somebody wrote that would be read as such a sign', () => {
    expect(dxfText('100%%c \\U+00B0 5 %°')).toBe('100% %c \\U+005CU+00B0 5 % %%d')
  })
})

describe('hatch lines', () => {
  const line = (a: readonly [number, number], b: readonly [number, number]) =>
    ({ kind: 'line', layer: 'hatch', from: a, to: b }) as const
  const face: Hatch<string> = {
    kind: 'hatch',
    layer: 'hatch',
    angle: Math.PI / 4,
    loops: [
      [line([0, 0], [30, 0]), line([30, 20], [30, 0]), line([30, 20], [0, 20]), line([0, 20], [0, 0])],
      [{ kind: 'circle', layer: 'hatch', center: [15, 10], radius: 5 }],
      [{ kind: 'ellipse', layer: 'hatch', center: [24, 14], major: [2, 1], ratio: 0.5, start: 0, end: 2 * Math.PI }],
    ],
  }

  it('fill a face and leave its holes: their length times their spacing is its area', () => {
    const spacing = 0.02
    const length = hatchLines(face, spacing).reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0)
    const area = 30 * 20 - Math.PI * 25 - Math.PI * 5 * 0.5
    expect(Math.abs((length * spacing) / area - 1)).toBeLessThan(0.001)
  })

  it('stay outside the hole and run at their angle', () => {
    for (const [a, b] of hatchLines(face, 1)) {
      expect(Math.atan2(b[1] - a[1], b[0] - a[0])).toBeCloseTo(Math.PI / 4, 9)
      const middle = [(a[0] + b[0]) / 2 - 15, (a[1] + b[1]) / 2 - 10] as const
      expect(Math.hypot(...middle)).toBeGreaterThan(5 - 0.01)
    }
  })
})

describe('an SVG', () => {
  const sheet = sampleSheet('A3', style, font)
  const whole = sheetSvg(sheet, style, font)

  it('holds every text of the sheet once, in the room that was kept for it', () => {
    const found = [...whole.matchAll(/<text [^>]*textLength="[\d.]+"[^>]*>([^<]*)<\/text>/g)].map((m) =>
      m[1]!.replaceAll('&amp;', '&'),
    )
    const wanted = sheetOnPaper(sheet).flatMap((e) => (e.kind === 'text' ? [e.text] : []))
    expect(found.sort()).toEqual(wanted.sort())
  })

  it('is as large as the paper, has y downward, and widths and dashes from the style', () => {
    expect(whole).toContain('width="420mm" height="297mm" viewBox="0 0 420 297"')
    // The bore at (75 + 22, 180 + 21) mm from the lower left corner.
    expect(whole).toContain('<circle cx="97" cy="96" r="8"/>')
    expect(whole).toContain(
      '<g class="hidden" fill="none" stroke="#000000" stroke-width="0.25" stroke-dasharray="3 0.75">',
    )
    expect(whole).not.toMatch(/NaN|undefined|Infinity/)
  })

  it('of one view is cut to what it takes', () => {
    const view = sheet.views[2]!
    const text = viewSvg(view, 'section <A>', style, font)
    const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(text)!
    expect(Number(width)).toBeGreaterThan(30)
    expect(Number(width)).toBeLessThan(60)
    expect(Number(height)).toBeLessThan(60)
    expect(text).toContain('<title>section &lt;A&gt;</title>')
    expect(() => viewSvg({ ...view, lines: [], notes: [], dimensions: [] }, '', style, font)).toThrow(RangeError)
  })
})
