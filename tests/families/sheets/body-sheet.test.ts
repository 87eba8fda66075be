import { describe, expect, it } from 'vitest'
import { composeSheets, type Drawing } from '../../../src/drawing/plan/compose.ts'
import { sheetOnPaper } from '../../../src/drawing/sheet/sheet.ts'
import type { SheetName } from '../../../src/drawing/sheet/sheet-size.ts'
import { styleOf } from '../../../src/drawing/style.ts'
import type { HeadDesign } from '../../../src/families/fly-cutter-head/design.ts'
import { bodySheet } from '../../../src/families/fly-cutter-head/sheets/body-sheet.ts'
import { featuresOf } from '../../../src/part/part.ts'
import { drawingFont } from '../../drawing/drawing-font.ts'
import { sheetFaults } from '../../drawing/sheet-faults.ts'
import { forRandomHeads, headFrom } from '../random-heads.ts'
import { sheetFactsOf } from '../sheet-facts.ts'

const font = drawingFont()
const style = styleOf()
/** 400 where the whole width of the family is wanted: `HEADS=400`. */
const { HEADS } = process.env
const heads = Number(HEADS ?? 70)

const stop =
  'The bore breaks into the slot. The screws do not reach the bit: the wall is thicker than the screw is long.'

function drawn(design: HeadDesign, paper: SheetName, stopped = false): Drawing {
  const made = composeSheets(
    [bodySheet(design, style)],
    paper,
    { ...sheetFactsOf(design), ...(stopped && { stop }) },
    style,
    font,
  )
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  return made.value[0]!
}

/** Ids of what the views show, without the marks of datums and details. */
const shown = ({ sheets }: Drawing): string[] =>
  sheets
    .flatMap((s) => s.views.flatMap((v) => v.dimensions.map((d) => d.request.id)))
    .filter((id) => !id.includes('@'))
    .sort()

const named = (design: HeadDesign): string[] =>
  featuresOf(design.part('body'))
    .flatMap((f) => f.dimensions.map((d) => d.id))
    .sort()

function faultsOf(design: HeadDesign, paper: SheetName, stopped = false): string[] {
  const drawing = drawn(design, paper, stopped)
  expect(shown(drawing)).toEqual(named(design))
  // As many texts as the sizes have lines, each written as it was asked for.
  for (const { graphics, request } of drawing.sheets.flatMap((s) => s.views.flatMap((v) => v.dimensions))) {
    expect(graphics.flatMap((g) => (g.kind === 'text' ? [g.text] : []))).toEqual(request.text)
  }
  return drawing.sheets.flatMap((s) => sheetFaults(font, s))
}

describe('the sheets of the head', () => {
  it('show every named size once, and no text on a text, a line or a view, whatever the head', () => {
    let count = 0
    forRandomHeads(
      heads,
      (design) => expect(faultsOf(design, design.parameters.drawing.sheet, count++ % 3 === 0)).toEqual([]),
      20261126,
    )
  })

  const metric = 'parameters'
  it.each<[string, HeadDesign, SheetName]>([
    ['both units', headFrom(metric, [/^machine:/m, 'drawing: { shown-in: both }\nmachine:']), 'A4'],
    ['inches', headFrom('parameters-inch'), 'letter'],
    ['a level face', headFrom(metric, ['angle: 7 deg', 'angle: 0 deg']), 'A4'],
    ['a face of 30°', headFrom(metric, ['angle: 7 deg', 'angle: 30 deg'], ['on-axis: 41', 'on-axis: 55']), 'A3'],
    ['a slot wall on the axis', headFrom(metric, ['ahead-of-centre: 2.4', 'ahead-of-centre: 0']), 'A4'],
    ['a slot beside the axis', headFrom(metric, ['ahead-of-centre: 2.4', 'ahead-of-centre: -6']), 'A4'],
    [
      'a stopped slot that ends on the axis',
      headFrom(metric, ['runs: through', 'runs: stopped\n  beyond-axis: 0\n  cutter-diameter: 3']),
      'A4',
    ],
    [
      'a head that is screwed on',
      headFrom(metric, [/kind: matched[^\n]*\n\s*assembly: heat/, 'kind: threaded\n  thread: M20']),
      'A4',
    ],
    [
      'a bore through',
      headFrom(metric, [/kind: blind\n/, 'kind: through\n'], [/\n {2}depth: 24\n {2}bottom: flat\n {2}vent: hole/, '']),
      'A4',
    ],
    ['six screws', headFrom(metric, ['count: 2', 'count: 6'], ['spacing: 24', 'spacing: 7']), 'A4'],
    ['one screw', headFrom(metric, ['count: 2', 'count: 1']), 'letter'],
    [
      'a bar of 300',
      headFrom(metric, ['size: 46', 'size: 300'], ['on-axis: 41', 'on-axis: 200'], ['swing: 165', 'swing: 900']),
      'A4',
    ],
  ])('are clear and complete for %s', (_, design, paper) => {
    expect(faultsOf(design, paper)).toEqual([])
  })

  const demo = drawn(headFrom(metric), 'A4')
  const views = demo.sheets.flatMap((s) => s.views)
  const inView = (id: string) => views.find((v) => v.id === id)!

  it('name sections and views by letters that no datum has', () => {
    const datums = views.flatMap((v) => v.dimensions.map((d) => d.request)).filter((r) => r.id.startsWith('datum-'))
    const taken = new Set(datums.flatMap((r) => r.text))
    expect([...taken].sort()).toEqual(['A', 'B', 'C', 'O'])
    const titles = views.flatMap((v) =>
      v.notes.flatMap((n) => (n.kind === 'text' && /^[A-Z](–[A-Z])?$/.test(n.text) ? [n.text[0]!] : [])),
    )
    expect(titles.length).toBeGreaterThan(3)
    for (const title of titles) expect(taken).not.toContain(title)
    for (const { lines } of views) {
      for (const l of lines) if (l.kind === 'text' && /^[A-Z]$/.test(l.text)) expect(taken).not.toContain(l.text)
    }
  })

  it('mark each datum in every view where it is seen, the bore’s on its diameter', () => {
    const datumsIn = (id: string) =>
      inView(id).dimensions.flatMap(({ request }) => (request.id.startsWith('datum-') ? [request.text[0]] : []))
    expect(
      Object.fromEntries(
        ['side', 'below', 'face', 'axis-section', 'screw-section', 'mounting'].map((id) => [
          id,
          datumsIn(id).sort().join(''),
        ]),
      ),
    ).toEqual({
      side: 'ABO',
      below: 'BCO',
      face: 'CO',
      'axis-section': 'ABO',
      'screw-section': 'CO',
      mounting: 'ABC',
    })
    const [bore, b] = ['bore.diameter', 'datum-B@mounting'].map(
      (id) => inView('mounting').dimensions.find((d) => d.request.id === id)!,
    )
    expect(b!.linePoint[1]).toBeCloseTo(bore!.shelf![0][1], 9)
  })

  it('point the arrows of a section the way that the section is looked at', () => {
    // The section through the axis is looked at like the side view: in the view from below the step is at the top, and the
    // eye on the step's side looks down.
    const arrows = inView('below').lines.flatMap((l) => (l.kind === 'arrow' ? [l.direction] : []))
    expect(arrows.filter((d) => Math.abs(Math.sin(d) + 1) < 1e-9)).toHaveLength(2)
  })

  it('write the bore as code and limits, and texture in the trade’s units', () => {
    const texts = demo.sheets.flatMap((s) => sheetOnPaper(s).flatMap((e) => (e.kind === 'text' ? [e.text] : [])))
    expect(texts).toContain('⌀20 H7 (20.000–20.021)')
    const words = texts.join(' ')
    expect(words).toMatch(/mounting face Ra 1\.6 µm/)
    expect(words).not.toMatch(/Ra [\d.]+ mm/)
  })
})
