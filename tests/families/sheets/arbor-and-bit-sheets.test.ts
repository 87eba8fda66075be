import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { composeSheets } from '../../../src/drawing/plan/compose.ts'
import type { SheetPlan } from '../../../src/drawing/plan/sheet-plan.ts'
import type { SheetName } from '../../../src/drawing/sheet/sheet-size.ts'
import { styleOf } from '../../../src/drawing/style.ts'
import type { HeadDesign } from '../../../src/families/fly-cutter-head/design.ts'
import { arborSheet } from '../../../src/families/fly-cutter-head/sheets/arbor-sheet.ts'
import { bitSheet } from '../../../src/families/fly-cutter-head/sheets/bit-sheet.ts'
import { featuresOf } from '../../../src/part/part.ts'
import { drawingFont } from '../../drawing/drawing-font.ts'
import { sheetFaults } from '../../drawing/sheet-faults.ts'
import { forRandomHeads, headFrom } from '../random-heads.ts'

const font = drawingFont()
const style = styleOf()
const shanks: readonly { readonly name: string }[] = JSON.parse(
  readFileSync(new URL('../../../seeds/shanks.json', import.meta.url), 'utf8'),
).rows

function drawingOf(plan: SheetPlan, paper: SheetName) {
  const facts = {
    title: 'test',
    drawingNumber: '–',
    units: 'mm',
    generalTolerance: 'ISO 2768-m',
    revision: 'a1b2c3d4',
    projection: 'third angle',
  } as const
  const made = composeSheets([plan], paper, facts, style, font)
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  return made.value[0]!
}

/** Every named size once, and nothing on anything else. */
function expectWhole(design: HeadDesign, part: 'arbor' | 'bit', paper: SheetName = 'A4') {
  const drawing = drawingOf(part === 'arbor' ? arborSheet(design) : bitSheet(design, style), paper)
  const shown = drawing.sheets.flatMap((s) => s.views.flatMap((v) => v.dimensions.map((d) => d.request.id)))
  const named = featuresOf(design.part(part)).flatMap((f) => f.dimensions.map((d) => d.id))
  expect(shown.filter((id) => !id.includes('@')).sort()).toEqual(named.sort())
  expect(drawing.sheets.flatMap((s) => sheetFaults(font, s))).toEqual([])
  return drawing
}

describe('the sheet of the arbor', () => {
  it.each(shanks.map(({ name }) => name))('shows every named size once on a shank %s', (name) => {
    const isWide = /^(7-24|r8|morse-[45])/.test(name)
    const changes: [string, string][] = [
      ['shank: straight-20 ', `shank: ${name}  `],
      ...(isWide
        ? ([
            ['  size: 46 ', '  size: 80 '],
            ['shoulder-diameter: 32', 'shoulder-diameter: 72'],
          ] as const)
        : []),
    ].map(([from, to]) => [from!.trimEnd(), to!.trimEnd()])
    const design = headFrom('parameters', ...changes.filter(([from, to]) => from !== to))
    expectWhole(design, 'arbor')
  })

  it('gives a straight shank the limits of its zone: ⌀20 h6 is 19.987 to 20.000 mm (ISO 286-2)', () => {
    const [shank] = featuresOf(headFrom('parameters').part('arbor'))
      .flatMap((f) => f.dimensions)
      .filter((d) => d.id === 'shank.diameter')
    expect(shank).toMatchObject({ fitCode: 'h6', tolerance: { kind: 'limits', lower: -0.013, upper: 0 } })
  })

  it('shows a threaded spigot, a hole through and a flat to let the air out', () => {
    expectWhole(
      headFrom(
        'parameters',
        ['  spigot-length: 22', '  bore-through: 6\n  spigot-length: 22'],
        ['vent: hole', 'vent: flat'],
      ),
      'arbor',
    )
    const threaded = headFrom('parameters', [
      '  kind: matched                # bore first, measure it, turn the spigot to that bore\n  assembly: heat\n',
      '  kind: threaded\n  thread: M20\n',
    ])
    const drawing = expectWhole(threaded, 'arbor')
    const lines = drawing.sheets.flatMap((s) => s.views.flatMap((v) => v.lines.filter((e) => e.layer === 'thread')))
    expect(lines.length).toBeGreaterThanOrEqual(2)
  })

  it('tells the interference to turn to over the bore as measured: 0.024 to 0.036 mm for ⌀20', () => {
    const text = arborSheet(headFrom('parameters')).blocks.flatMap((b) => (b.kind === 'notes' ? b.lines : []))
    // 0.0015 ± 0.0003 of the diameter (rule of thumb), rounded inwards to 0.001 mm.
    expect(text.join(' ')).toContain('turn the spigot 0.024 mm to 0.036 mm over it')
  })
})

describe('the grinding sheet of the bit', () => {
  it.each([
    ['as the template has it', []],
    [
      'of a tool that turns the other way',
      [
        ['rotation: clockwise', 'rotation: anticlockwise'],
        ['reverse: false', 'reverse: true'],
      ],
    ],
    ['worked out for the work material', [[/ {2}facets:\n( {4}.*\n)+/, '  grind: for-work-material\n']]],
  ] as [string, [string | RegExp, string][]][])('shows every named size once, %s', (_, changes) => {
    for (const paper of ['A4', 'letter', 'A3'] as const) expectWhole(headFrom('parameters', ...changes), 'bit', paper)
  })

  it('has the tip to the right of a clockwise tool and to the left of the other: one is the mirror image of the other', () => {
    const tips = [
      headFrom('parameters'),
      headFrom('parameters', ['rotation: clockwise', 'rotation: anticlockwise'], ['reverse: false', 'reverse: true']),
    ].map((design) => {
      const view = bitSheet(design, style).groups[0]!.rows[0]![0]!
      const xs = view.lines.flatMap((e) => (e.kind === 'line' ? [e.from[0], e.to[0]] : []))
      // The view's origin is the tip.
      return [Math.min(...xs), Math.max(...xs)].map((x) => Number(x.toFixed(6)))
    })
    expect(tips[0]![0]).toBeLessThan(-70)
    expect(tips[1]).toEqual(tips[0]!.map((x) => -x).reverse())
  })

  it('says how each facet is laid on the grinder, and what angles that makes in use', () => {
    const tables = bitSheet(headFrom('parameters'), style).blocks.filter((b) => b.kind === 'table')
    expect(tables).toHaveLength(2)
    expect(tables[0]!.rows.map((r) => r[0])).toEqual(['rake face', 'end flank', 'work-side flank'])
    // End relief 10° behind an edge square to the bit: no turn, and a lift of just that angle.
    expect(tables[0]!.rows[1]!.slice(-2)).toEqual(['0.0°', '10.0°'])
  })
})

it('arbor and bit of random heads are drawn whole', () => {
  forRandomHeads(8, (design) => {
    expectWhole(design, 'arbor')
    expectWhole(design, 'bit')
  })
})
