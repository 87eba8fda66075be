import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { sheetsPdf } from '../../src/drawing/pdf/sheets-pdf.ts'
import type { Sheet } from '../../src/drawing/sheet/sheet.ts'
import { sheetOnPaper } from '../../src/drawing/sheet/sheet.ts'
import { type SheetName, sheetSizes } from '../../src/drawing/sheet/sheet-size.ts'
import { styleOf } from '../../src/drawing/style.ts'
import { drawingFont } from '../drawing/drawing-font.ts'
import { sampleSheet } from '../drawing/sample-sheet.ts'
import { needs } from './installed.ts'

// Read back by Debian's poppler-utils: pdfinfo, pdftotext, pdffonts, pdftoppm.
const font = drawingFont()
const style = styleOf()
const facts = { title: 'bracket', subject: 'revision a1b2c3d4' }
const names: readonly SheetName[] = ['A3', 'A4', 'letter', 'tabloid']
const bare = (name: SheetName): Sheet => ({ ...sampleSheet(name, style, font), views: [] })
const sheets = names.map((name) =>
  name === 'A3' ? sampleSheet(name, style, font, 'the bore opens into the slot') : bare(name),
)
const pdf = sheetsPdf(sheets, facts, style, font)

let folder = ''
let file = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pdf-'))
  file = join(folder, 'drawings.pdf')
  writeFileSync(file, pdf)
})
afterAll(() => rmSync(folder, { recursive: true }))
const run = (command: string, ...args: string[]) => execFileSync(command, args, { encoding: 'utf8' })

describe('a drawing in PDF', () => {
  it('has one page a sheet, each of its true size', (test) => {
    needs(test, 'poppler')
    const info = run('pdfinfo', '-f', '1', '-l', '9', file)
    expect(info).toMatch(/Pages:\s+4\n/)
    names.forEach((name, i) => {
      const [, width, height] = new RegExp(`Page\\s+${i + 1} size:\\s+([\\d.]+) x ([\\d.]+) pts`).exec(info)!
      expect(Number(width) / 72).toBeCloseTo(sheetSizes[name].width / 25.4, 4)
      expect(Number(height) / 72).toBeCloseTo(sheetSizes[name].height / 25.4, 4)
    })
  })

  it('embeds its font, only the signs in use, and has them read as text', (test) => {
    needs(test, 'poppler')
    expect(run('pdffonts', file)).toMatch(/\+DejaVuSansCondensed\s.*yes yes yes/)
  })

  it('shows the text of every dimension and every cell of the title block, each once', (test) => {
    needs(test, 'poppler')
    const words = run('pdftotext', '-f', '1', '-l', '1', '-bbox', file, '-')
    const found = [...words.matchAll(/<word [^>]*>([^<]*)<\/word>/g)].map((m) =>
      m[1]!.replaceAll('&amp;', '&').replaceAll('&apos;', "'").replaceAll('&quot;', '"').replaceAll('&gt;', '>'),
    )
    const wanted = sheetOnPaper(sheets[0]!).flatMap((e) => (e.kind === 'text' ? e.text.split(' ') : []))
    expect(found.sort()).toEqual(wanted.sort())
  })

  it('has its lines within 0.05 mm of their places, measured on a raster of 600 dots an inch', (test) => {
    needs(test, 'poppler')
    const perMm = 600 / 25.4
    // Plain lines alone, so that no text or arrow stands in the scan.
    const lines = [
      [
        [50, 60],
        [50, 260],
      ],
      [
        [150, 60],
        [150, 260],
      ],
      [
        [250.37, 60],
        [250.37, 260],
      ],
      [
        [399.99, 60],
        [399.99, 260],
      ],
    ] as const
    const sheet: Sheet = {
      id: 'lines',
      title: 'lines',
      size: sheetSizes.A3,
      entities: [],
      views: [
        {
          id: 'twice',
          scale: 2,
          at: [10, 20],
          notes: [],
          dimensions: [],
          lines: lines.map(([a, b]) => ({
            kind: 'line',
            layer: 'dimension',
            from: [(a[0] - 10) / 2, (a[1] - 20) / 2],
            to: [(b[0] - 10) / 2, (b[1] - 20) / 2],
          })),
        },
      ],
    }
    writeFileSync(join(folder, 'lines.pdf'), sheetsPdf([sheet], facts, style, font))
    run('pdftoppm', '-r', '600', '-gray', '-singlefile', join(folder, 'lines.pdf'), join(folder, 'lines'))
    const image = readFileSync(join(folder, 'lines.pgm'))
    const [head, width, height] = /^P5\s(\d+)\s(\d+)\s255\s/.exec(image.subarray(0, 40).toString('latin1'))!
    const at = (x: number, y: number) => image[head.length + y * Number(width) + x]!
    const row = Math.round(Number(height) - 150 * perMm)
    // Middle of each dark stretch, weighted by how dark it is.
    const middles: number[] = []
    for (let x = 0; x < Number(width); x++) {
      let [sum, weighted] = [0, 0]
      for (; at(x, row) < 250; x++) {
        sum += 255 - at(x, row)
        weighted += (255 - at(x, row)) * (x + 0.5)
      }
      if (sum > 0) middles.push(weighted / sum / perMm)
    }
    expect(middles.length).toBe(lines.length)
    middles.forEach((m, i) => {
      expect(Math.abs(m - lines[i]![0][0])).toBeLessThan(0.05)
    })
    // Ends: the line runs from 60 to 260 mm above the lower edge, with a round end of half its width.
    const column = Math.round(50 * perMm - 0.5)
    let [top, bottom] = [0, Number(height) - 1]
    while (at(column, top) > 128) top++
    while (at(column, bottom) > 128) bottom--
    const half = style.layers.dimension.width / 2
    expect(Math.abs((Number(height) - top) / perMm - (260 + half))).toBeLessThan(0.05)
    expect(Math.abs((Number(height) - bottom - 1) / perMm - (60 - half))).toBeLessThan(0.05)
  })

  it('is the same to the last byte however often it is written', () => {
    expect(Buffer.from(sheetsPdf(sheets, facts, style, font)).equals(Buffer.from(pdf))).toBe(true)
    expect(Buffer.from(pdf).toString('latin1')).toContain('(D:20000101000000Z)')
  })
})
