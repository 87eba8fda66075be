import { describe, expect, it } from 'vitest'
import { dxfFile } from '../../src/drawing/dxf/dxf-file.ts'
import { sheetsDxf } from '../../src/drawing/dxf/sheet-dxf.ts'
import { styleOf } from '../../src/drawing/style.ts'
import type { CommonParameters, Design } from '../../src/families/family.ts'
import { flyCutterHead } from '../../src/families/fly-cutter-head/family.ts'
import type { ReadDesign } from '../../src/families/read-design.ts'
import { readDesign } from '../../src/families/read-design.ts'
import { judged } from '../../src/families/variants.ts'
import { revisionOf } from '../../src/package/revision.ts'
import { type Part, solidOf } from '../../src/part/part.ts'
import { reportOf } from '../../src/report/report.ts'
import { meshOf } from '../../src/solid/mesh.ts'
import { volumeOf } from '../../src/solid/volume.ts'
import { drawingFont } from '../drawing/drawing-font.ts'
import { sampleSheet } from '../drawing/sample-sheet.ts'
import { tables, templateText } from '../families/random-heads.ts'
import { agreementFaults } from './judge-agreement.ts'
import { dxfFaults } from './judge-dxf.ts'
import { contentFaults } from './judge-files.ts'
import { meshFaults, volumeFaults } from './judge-solids.ts'

const text = templateText('parameters')
const found = readDesign(flyCutterHead, text, 'demo', tables)
if (!found.ok) throw new Error('the demo must read')
const { design } = found.value
const body = design.part('body')
const whole = solidOf(body)
const without = (id: string): Part => ({ ...body, cuts: body.cuts.filter((cut) => cut.id !== id) })

describe('the judge of solids', () => {
  it.each(['screw-hole-1', 'vent', 'bore'])('sees that a mesh lacks the %s of the head', (id) => {
    const left = solidOf(without(id))
    const mesh = meshOf(left, 0.02, 'body')
    if (!mesh.ok) throw new Error('it must close')
    expect(meshFaults(mesh.value, left, 0.02)).toEqual([])
    expect(meshFaults(mesh.value, whole, 0.02)).toEqual([expect.stringMatching(/^the mesh lies .* mm from its cells$/)])
    expect(volumeFaults(whole, volumeOf(left).volume)).toEqual([expect.stringContaining('in the report')])
  })
})

describe('the judge of drawings', () => {
  const document = sheetsDxf([sampleSheet('A3', styleOf(), drawingFont(), '')], styleOf(), 'mm')
  const file = dxfFile(document)

  it('takes a file as it was written', () => {
    expect(dxfFaults(file, document)).toEqual([])
  })

  it('sees a line, an entry of a dimension, a whole dimension or a hatch that is missing, and a changed value', () => {
    const { entities, dimensions } = document
    const [first, ...others] = dimensions
    const hatched = { ...document, entities: entities.filter((e) => e.kind !== 'hatch') }
    expect(entities.length).toBeGreaterThan(hatched.entities.length)
    for (const less of [
      { ...document, entities: entities.slice(1) },
      { ...document, dimensions: [{ ...first!, graphics: first!.graphics.slice(1) }, ...others] },
      { ...document, dimensions: others },
      { ...document, dimensions: [{ ...first!, measurement: first!.measurement + 0.001 }, ...others] },
      hatched,
    ]) {
      expect(dxfFaults(dxfFile(less), document)).not.toEqual([])
    }
  })
})

describe('the judge of files', () => {
  it('sees numbers that are none, and files that are cut off', () => {
    expect(contentFaults('setup.csv', 'x,y\n1,NaN\n')).not.toEqual([])
    expect(contentFaults('report.md', 'swing undefined mm')).not.toEqual([])
    expect(contentFaults('report.html', '<p>null</p>')).not.toEqual([])
    expect(contentFaults('report.json', '{"minimum": null}')).toEqual([])
    expect(contentFaults('drawings.pdf', new TextEncoder().encode('%PDF-1.7 and no end'))).not.toEqual([])
    const stl = new Uint8Array(84 + 50)
    stl[80] = 1
    expect(contentFaults('body.stl', stl)).toEqual([])
    expect(contentFaults('body.stl', stl.slice(0, -1))).not.toEqual([])
    stl.fill(255, 84, 134)
    expect(contentFaults('body.stl', stl)).not.toEqual([])
  })
})

describe('the judge of what is said', () => {
  it('takes the report of what was checked, and sees a finding, level, figure or limit that differs', async () => {
    const read = found.value as unknown as ReadDesign<CommonParameters, Design>
    const findings = judged(read.family, read.design, true)
    const report = reportOf(read, findings, revisionOf(read))
    const judge = (said: typeof report) => agreementFaults(text, read, findings, said)
    expect(await judge(report)).toEqual([])
    const [finding, ...others] = report.findings
    const figure = report.figures[0]!
    const withFigure = report.findings.find((f) => f.figure && f.limit)!
    const changed = (to: typeof withFigure) => report.findings.map((f) => (f === withFigure ? to : f))
    for (const said of [
      { ...report, findings: others },
      { ...report, findings: [{ ...finding!, level: 'stop' as const }, ...others] },
      { ...report, figures: [{ ...figure, value: figure.value + 0.1 }, ...report.figures.slice(1)] },
      { ...report, figures: report.figures.slice(1) },
      {
        ...report,
        findings: changed({ ...withFigure, limit: { ...withFigure.limit!, value: withFigure.limit!.value + 1 } }),
      },
    ]) {
      expect(await judge(said)).not.toEqual([])
    }
  })
})
