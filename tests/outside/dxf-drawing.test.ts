import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import DxfParser from 'dxf-parser'
import { describe, expect, it } from 'vitest'
import type { DxfDocument } from '../../src/drawing/dxf/dxf-document.ts'
import { dxfFile } from '../../src/drawing/dxf/dxf-file.ts'
import { sheetDxf } from '../../src/drawing/dxf/sheet-dxf.ts'
import type { Point } from '../../src/drawing/entity.ts'
import { profilesDxf } from '../../src/drawing/profiles.ts'
import { styleOf } from '../../src/drawing/style.ts'
import { drawingFont } from '../drawing/drawing-font.ts'
import { sampleProfiles } from '../drawing/sample-profiles.ts'
import { sampleSheet } from '../drawing/sample-sheet.ts'
import { needs } from './installed.ts'

const font = drawingFont()
const style = styleOf()
const sheet = sampleSheet('A3', style, font, 'the bore opens into the slot: wall −0.42 mm')
const millimetres = dxfFile(sheetDxf(sheet, style, 'mm'))
const inches = dxfFile(sheetDxf(sheet, style, 'in'))
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

/** Every DIMENSION by its own group codes, read here without any library. */
function dimensionsOf(text: string) {
  const rows = text.split('\n')
  const pairs = Array.from(
    { length: Math.floor(rows.length / 2) },
    (_, i) => [Number(rows[2 * i]), rows[2 * i + 1]!] as const,
  )
  const starts = pairs.flatMap(([code, value], i) => (code === 0 && value === 'DIMENSION' ? [i] : []))
  return starts.map((start) => {
    const end = pairs.findIndex(([code], i) => i > start && code === 0)
    const codes = new Map(pairs.slice(start, end))
    const number = (code: number) => Number(codes.get(code))
    const point = (code: number): Point => [number(code), number(code + 10)]
    const marker = pairs.slice(start, end).filter(([code]) => code === 100)[2]![1]
    return {
      marker,
      type: number(70) & 7,
      alongX: (number(70) & 64) !== 0,
      text: codes.get(1)!,
      value: number(42),
      angle: number(50),
      point,
      block: codes.get(2)!,
    }
  })
}

const distance = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])
function measured({ type, alongX, angle, point }: ReturnType<typeof dimensionsOf>[number]): number {
  if (type === 0) {
    const [a, b, t] = [point(13), point(14), (angle * Math.PI) / 180]
    return Math.abs((b[0] - a[0]) * Math.cos(t) + (b[1] - a[1]) * Math.sin(t))
  }
  if (type === 1) return distance(point(13), point(14))
  if (type === 3 || type === 4) return distance(point(10), point(15))
  if (type === 6) return alongX ? point(13)[0] - point(10)[0] : point(13)[1] - point(10)[1]
  // Two lines: 13 to 14, and 15 to 10.
  const direction = (a: Point, b: Point) => Math.atan2(b[1] - a[1], b[0] - a[0])
  return (direction(point(15), point(10)) - direction(point(13), point(14)) + 2 * Math.PI) % (2 * Math.PI)
}

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
    const found = dimensionsOf(text)
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
    for (const { block, text } of dimensionsOf(millimetres)) {
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
    expect(dxfFile(sheetDxf(sheet, style, 'mm'))).toBe(millimetres)
    expect(millimetres).not.toMatch(/NaN|undefined|Infinity|\d[eE][-+]?\d+\n/)
  })
})
