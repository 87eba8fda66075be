import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import DxfParser from 'dxf-parser'
import { describe, expect, it } from 'vitest'
import type { DxfDocument } from '../../src/drawing/dxf/dxf-document.ts'
import { dxfFile } from '../../src/drawing/dxf/dxf-file.ts'
import { sheetsDxf } from '../../src/drawing/dxf/sheet-dxf.ts'
import { profilesDxf } from '../../src/drawing/profiles.ts'
import { styleOf } from '../../src/drawing/style.ts'
import { drawingFont } from '../drawing/drawing-font.ts'
import { sampleProfiles } from '../drawing/sample-profiles.ts'
import { sampleSheet } from '../drawing/sample-sheet.ts'
import { dimensionsIn, measured } from './dxf-dimensions.ts'
import { needs } from './installed.ts'

const font = drawingFont()
const style = styleOf()
const sheet = sampleSheet('A3', style, font, 'the bore opens into the slot: wall −0.42 mm')
const millimetres = dxfFile(sheetsDxf([sheet], style, 'mm'))
const inches = dxfFile(sheetsDxf([sheet], style, 'in'))
const profiles = profilesDxf(sampleProfiles, 'mm')

interface Read {
  readonly header: Record<string, unknown>
  readonly tables: { readonly layer: { readonly layers: Record<string, unknown> } }
  readonly blocks: Record<string, { readonly entities?: { readonly type: string; readonly text?: string }[] }>
  readonly entities: {
    readonly type: string
    readonly layer: string
    readonly block?: string
    readonly center?: { x: number; y: number }
    readonly radius?: number
    readonly majorAxisEndPoint?: { x: number; y: number }
    readonly axisRatio?: number
    readonly vertices?: { x: number; y: number }[]
  }[]
}
/** An independent reader (npm: dxf-parser); its types do not match how it runs. */
const read = (text: string): Read =>
  new (DxfParser as unknown as new () => { parseSync(t: string): Read })().parseSync(text)

describe('a drawing in DXF', () => {
  it.each([
    ['millimetres', millimetres, 1],
    ['inches', inches, 1 / 25.4],
  ])('in %s gives each DIMENSION the value that its points measure, in model units', (_, text, unit) => {
    const kinds: Record<string, readonly [number, string]> = {
      horizontal: [0, 'AcDbAlignedDimension'],
      vertical: [0, 'AcDbAlignedDimension'],
      aligned: [1, 'AcDbAlignedDimension'],
      angle: [2, 'AcDb2LineAngularDimension'],
      diameter: [3, 'AcDbDiametricDimension'],
      thread: [3, 'AcDbDiametricDimension'],
      radius: [4, 'AcDbRadialDimension'],
      ordinate: [6, 'AcDbOrdinateDimension'],
      chamfer: [0, 'AcDbAlignedDimension'],
    }
    const wanted = sheet.views.flatMap((v) => v.dimensions).filter((d) => d.request.kind !== 'note')
    const found = dimensionsIn(text)
    expect(found.length).toBe(wanted.length)
    found.forEach((d, i) => {
      const { request } = wanted[i]!
      expect([d.type, d.marker], request.id).toEqual(
        kinds[request.kind === 'linear' ? request.direction : request.kind],
      )
      expect(measured(d), request.id).toBeCloseTo(d.value, 5)
      expect(d.value, request.id).toBeCloseTo(request.kind === 'angle' ? request.value : request.value * unit, 6)
    })
  })

  it('is read by another reader: units, layers, and every view at 1:1', () => {
    const { header, tables, entities } = read(millimetres)
    expect(header).toMatchObject({ $INSUNITS: 4, $MEASUREMENT: 1, $ACADVER: 'AC1021' })
    expect(read(inches).header).toMatchObject({ $INSUNITS: 1, $MEASUREMENT: 0 })
    expect(Object.keys(tables.layer.layers)).toEqual(['0', ...Object.keys(style.layers)])
    const circles = entities.filter((e) => e.type === 'CIRCLE' && e.layer === 'visible').map((e) => e.radius)
    expect(circles).toEqual([8, 2.5, 5])
    // The plate is drawn 2:1 on paper and 40 mm long here all the same.
    const loops = entities.filter((e) => e.type === 'LWPOLYLINE' && e.layer === 'visible')
    const lengths = loops.map(
      (e) => Math.max(...e.vertices!.map((v) => v.x)) - Math.min(...e.vertices!.map((v) => v.x)),
    )
    expect(lengths.map((l) => Number(l.toFixed(5)))).toEqual([40, 30])
    const ellipse = entities.find((e) => e.type === 'ELLIPSE')!
    expect([ellipse.majorAxisEndPoint!.x, ellipse.axisRatio]).toEqual([6, 0.5])
  })

  it('draws each dimension in a block too, for readers that skip dimensions', () => {
    const { blocks } = read(millimetres)
    for (const { block, text } of dimensionsIn(millimetres)) {
      const kinds = blocks[block]!.entities!.map((e) => e.type)
      expect(kinds).toContain('LINE')
      expect(kinds.filter((k) => k === 'SOLID').length, text).toBeLessThanOrEqual(2)
      expect(blocks[block]!.entities!.flatMap((e) => (e.type === 'TEXT' ? [e.text] : [])).join('\\P')).toBe(text)
    }
  })

  it('passes the audit of ezdxf (Debian python3-ezdxf) with nothing to mend, dimensions and profiles alike', (test) => {
    needs(test, 'ezdxf')
    expect(profiles.ok).toBe(true)
    const folder = mkdtempSync(join(tmpdir(), 'dxf-'))
    try {
      const texts = [millimetres, inches, dxfFile((profiles as { value: DxfDocument }).value)]
      const files = texts.map((text, i) => {
        const file = join(folder, `${i}.dxf`)
        writeFileSync(file, text)
        return file
      })
      const script = [
        'import sys, json, ezdxf',
        'out = []',
        'for f in sys.argv[1:]:',
        '    d = ezdxf.readfile(f)',
        '    a = d.audit()',
        '    drawn = sum(1 for e in d.modelspace() if e.dxftype() == "DIMENSION" for v in e.virtual_entities())',
        '    out.append([len(a.errors), len(a.fixes), drawn, {l.dxf.name: l.dxf.lineweight for l in d.layers}])',
        'print(json.dumps(out))',
      ].join('\n')
      const answer = execFileSync('/usr/bin/python3', ['-c', script, ...files], { encoding: 'utf8' })
      const judged = JSON.parse(answer) as [number, number, number, Record<string, number>][]
      expect(judged.map(([errors, fixes]) => [errors, fixes])).toEqual([
        [0, 0],
        [0, 0],
        [0, 0],
      ])
      const drawn = sheet.views.flatMap((v) =>
        v.dimensions.filter((d) => d.request.kind !== 'note').flatMap((d) => d.graphics),
      )
      expect(judged[0]![2]).toBe(drawn.length)
      expect(judged[0]![3]).toMatchObject({ visible: 50, hidden: 25, centre: 25, frame: 50 })
    } finally {
      rmSync(folder, { recursive: true })
    }
  })

  it('is the same to the last byte however often it is written', () => {
    expect(dxfFile(sheetsDxf([sheet], style, 'mm'))).toBe(millimetres)
    expect(millimetres).not.toMatch(/NaN|undefined|Infinity|\d[eE][-+]?\d+\n/)
  })
})
