import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { featuresOf } from '../../../src/part/part.ts'
import { dimensionsIn, measured } from '../dxf-dimensions.ts'
import { needs } from '../installed.ts'
import { drawingsOn, type Made } from './made-drawings.ts'

const templates = [
  ['parameters', 1],
  ['parameters-inch', 25.4],
] as const
const made = new Map<string, Made>(templates.map(([name]) => [name, drawingsOn(name)]))
const parts = ['body', 'arbor'] as const

let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'drawings-'))
  for (const [name, { drawn }] of made) {
    for (const [file, content] of drawn.files) writeFileSync(join(folder, `${name}-${file}`), content)
    writeFileSync(join(folder, `${name}-drawings.pdf`), drawn.pdf)
  }
})
afterAll(() => rmSync(folder, { recursive: true }))

describe.each(templates)('the drawings of %s', (name, unit) => {
  const { read, drawn, texts } = made.get(name)!
  const text = (file: string) => String(drawn.files.get(file))

  it.each(parts)('dimension the %s with every named size once, each as long as its points lie apart', (part) => {
    const named = featuresOf(read.design.part(part)).flatMap((f) => f.dimensions)
    const drawnDimensions = dimensionsIn(text(`${part}.dxf`))
    expect(drawnDimensions.map((d) => d.name).sort()).toEqual(named.map((d) => d.id).sort())
    for (const d of drawnDimensions) {
      const { kind, value } = named.find((n) => n.id === d.name)!
      const inFile = kind === 'angle' ? value : value / unit
      expect(measured(d), d.name).toBeCloseTo(d.value, 5)
      expect(d.value, d.name).toBeCloseTo(inFile, 6)
    }
  })

  it('pass the audit of ezdxf (Debian python3-ezdxf) with nothing to mend', (test) => {
    needs(test, 'ezdxf')
    const files = [...drawn.files.keys()].filter((f) => f.endsWith('.dxf')).map((f) => join(folder, `${name}-${f}`))
    expect(files.length).toBe(3)
    const script = [
      'import sys, json, ezdxf',
      'out = []',
      'for f in sys.argv[1:]:',
      '    d = ezdxf.readfile(f)',
      '    a = d.audit()',
      '    out.append([len(a.errors), len(a.fixes), d.units])',
      'print(json.dumps(out))',
    ].join('\n')
    const answer = JSON.parse(execFileSync('/usr/bin/python3', ['-c', script, ...files], { encoding: 'utf8' }))
    expect(answer).toEqual(files.map(() => [0, 0, unit === 1 ? 4 : 1]))
  })

  it('show the text of every dimension once in the PDF (Debian poppler-utils)', (test) => {
    needs(test, 'poppler')
    const page = execFileSync('pdftotext', ['-bbox', join(folder, `${name}-drawings.pdf`), '-'], { encoding: 'utf8' })
    const found = [...page.matchAll(/<word [^>]*>([^<]*)<\/word>/g)].map((m) =>
      m[1]!.replaceAll('&amp;', '&').replaceAll('&apos;', "'").replaceAll('&quot;', '"').replaceAll('&gt;', '>'),
    )
    // Poppler breaks text on a slope into pieces of one or more signs.
    const sloping = texts.filter(({ rotation }) => Math.abs(Math.sin(2 * rotation)) > 1e-9)
    const wanted = texts.filter((t) => !sloping.includes(t)).flatMap(({ text }) => text.split(' ').filter(Boolean))
    for (const word of wanted) {
      const at = found.indexOf(word)
      expect(at, `${word} is missing`).toBeGreaterThanOrEqual(0)
      found.splice(at, 1)
    }
    const signs = (words: readonly string[]) => [...words.join('').replaceAll(' ', '')].sort()
    expect(signs(found)).toEqual(signs(sloping.map((t) => t.text)))
  })
})

describe('the drawings', () => {
  it('do not change by a byte when the solid is made finer', () => {
    const fine = drawingsOn('parameters', [/^shop:/m, 'settings:\n  chord-tolerance: 0.01\nshop:'])
    const coarse = made.get('parameters')!.drawn
    for (const [file, content] of fine.drawn.files) expect(content, file).toEqual(coarse.files.get(file))
    expect(fine.drawn.pdf).toEqual(coarse.pdf)
  })

  it('draw the head at the scale that the title block says, measured in the PDF (Debian poppler-utils)', (test) => {
    needs(test, 'poppler')
    const svg = join(folder, 'page.svg')
    execFileSync('pdftocairo', ['-svg', '-f', '1', '-l', '1', join(folder, 'parameters-drawings.pdf'), svg])
    const shown = execFileSync('cat', [svg], { encoding: 'utf8' })
    // Straight strokes of one line each, in points; the bar is 46 mm across its flats at 1:1.
    const lengths = [...shown.matchAll(/d="M ([-\d.]+) ([-\d.]+) L ([-\d.]+) ([-\d.]+)\s*"/g)].map(([, ...n]) => {
      const [x0, y0, x1, y1] = n.map(Number) as [number, number, number, number]
      return (Math.hypot(x1 - x0, y1 - y0) * 25.4) / 72
    })
    const side = 46 / Math.sqrt(3)
    expect(lengths.filter((l) => Math.abs(l - side) < 0.05).length).toBeGreaterThanOrEqual(2)
  })
})
