import { describe, expect, it } from 'vitest'
import { composeSheets, type Drawing } from '../../src/drawing/plan/compose.ts'
import type { SheetPlan, ViewPlan } from '../../src/drawing/plan/sheet-plan.ts'
import type { SheetName } from '../../src/drawing/sheet/sheet-size.ts'
import { styleOf } from '../../src/drawing/style.ts'
import { arborStock } from '../../src/families/fly-cutter-head/arbor-stock.ts'
import { assemblyDimensions } from '../../src/families/fly-cutter-head/assembly-dimensions.ts'
import type { HeadDesign } from '../../src/families/fly-cutter-head/design.ts'
import { headFigures } from '../../src/families/fly-cutter-head/figures/head-figures.ts'
import { partsList } from '../../src/families/fly-cutter-head/parts-list.ts'
import { assemblySheet } from '../../src/families/fly-cutter-head/sheets/assembly-sheet.ts'
import { bodySheet } from '../../src/families/fly-cutter-head/sheets/body-sheet.ts'
import { headSheets } from '../../src/families/fly-cutter-head/sheets/head-sheets.ts'
import { formatQuantity } from '../../src/quantity/format-quantity.ts'
import { drawingFont } from '../drawing/drawing-font.ts'
import { sheetFaults } from '../drawing/sheet-faults.ts'
import { forRandomHeads, headFrom } from './random-heads.ts'
import { sheetFactsOf } from './sheet-facts.ts'

const font = drawingFont()
const style = styleOf()
const heads = Number(process.env.HEADS ?? 40)
const stop = 'The bore breaks into the slot.'

/** Random heads with their drawings, made once for all tests. */
const made: { readonly design: HeadDesign; readonly plan: SheetPlan }[] = []
function eachHead(check: (design: HeadDesign, plan: SheetPlan) => void): void {
  if (made.length === 0) forRandomHeads(heads, (design) => made.push({ design, plan: assemblySheet(design, style) }))
  for (const { design, plan } of made) check(design, plan)
}

const figure = (design: HeadDesign, id: string): number => {
  const value = headFigures.find((f) => f.id === id)!.of(design)
  if (value === undefined) throw new Error(`no figure ${id}`)
  return value
}

function drawn(design: HeadDesign, plan: SheetPlan, paper: SheetName, stopped = false): Drawing {
  const composed = composeSheets([plan], paper, { ...sheetFactsOf(design), ...(stopped && { stop }) }, style, font)
  if (!composed.ok) throw new Error(JSON.stringify(composed.problems))
  return composed.value[0]!
}

const viewsOf = (plan: SheetPlan): ViewPlan[] =>
  plan.groups.flatMap((g) => g.rows.flat()).filter((v) => v !== undefined)
const viewOf = (plan: SheetPlan, id: string): ViewPlan => viewsOf(plan).find((v) => v.id === id)!
const idsOf = (plan: SheetPlan): string[] => viewsOf(plan).flatMap((v) => v.requests.map((r) => r.id))
const wordsOf = (plan: SheetPlan): string =>
  plan.blocks.map((b) => (b.kind === 'notes' ? [b.title, ...b.lines].join('\n') : '')).join('\n')

function circlesOf(plan: SheetPlan): number[] {
  return viewOf(plan, 'assembly-below').lines.flatMap((e) =>
    e.kind === 'circle' && e.layer === 'centre' ? [e.radius] : [],
  )
}

/** Half the distance of the two lines of the pass. */
function passOf(plan: SheetPlan): number {
  const ys = viewOf(plan, 'assembly-below').lines.flatMap((e) =>
    e.kind === 'line' && e.layer === 'phantom' ? [e.from[1]] : [],
  )
  expect(ys).toHaveLength(2)
  return Math.abs(ys[0]! - ys[1]!) / 2
}

describe('the assembly drawing', () => {
  it('shows every named size of the assembly once, and no text on a text, a line or a view, whatever the head', () => {
    let count = 0
    eachHead((design, plan) => {
      const paper = (['A4', 'A3', 'letter', 'tabloid'] as const)[count++ % 4]!
      const drawing = drawn(design, plan, paper, count % 3 === 0)
      const shown = drawing.sheets.flatMap((s) => s.views.flatMap((v) => v.dimensions.map((d) => d.request.id)))
      const named = assemblyDimensions(design).map((d) => d.id)
      expect(shown.filter((id) => !id.includes('@')).sort()).toEqual(named.sort())
      expect(drawing.sheets.flatMap((s) => sheetFaults(font, s))).toEqual([])
    })
  })

  it('draws the circle that the tip runs on, and the one of everything that turns outside it', () => {
    eachHead((design, plan) => {
      const [tip, swept] = circlesOf(plan)
      expect(tip).toBe(design.layout.bit.tipRadius)
      expect(2 * tip!).toBeCloseTo(figure(design, 'swing'), 9)
      expect(swept ?? tip!).toBeCloseTo(design.sweptRadius, 5)
      expect(design.sweptRadius).toBeGreaterThanOrEqual(tip! - 1e-9)
    })
  })

  it('draws the pass under the circle, which reaches beyond it on both sides as far as it says', () => {
    const design = headFrom('parameters')
    const plan = assemblySheet(design, style)
    const half = passOf(plan)
    expect(2 * half).toBe(design.parameters.work.width)
    const beyond = assemblyDimensions(design).find((d) => d.id === 'assembly.beyond-pass')!
    expect(half + beyond.value).toBeCloseTo(design.layout.bit.tipRadius, 9)
    expect(beyond.value).toBeGreaterThan(0)
  })

  it('shares work that is wider than the swing among passes that the circle covers', () => {
    const design = headFrom('parameters', ['width: 92', 'width: 150'])
    const plan = assemblySheet(design, style)
    expect(passOf(plan)).toBeLessThan(design.layout.bit.tipRadius)
    expect((2 * passOf(plan) * 2) / 150).toBeCloseTo(1, 9)
    expect(viewOf(plan, 'assembly-below').caption.join(' ')).toContain('150 mm wide, in 2 passes')
  })

  it.each(['none', 'pin'] as const)('numbers the parts as its list does, one to one, with catch %s', (kept) => {
    const check = (plan: SheetPlan) => {
      const requests = viewsOf(plan).flatMap((v) => [...v.requests, ...(v.details ?? []).flatMap((d) => d.requests)])
      const marks = requests.filter((r) => r.kind === 'note' && r.frame === 'circle')
      const table = plan.blocks.find((b) => b.kind === 'table')!
      const rows = table.kind === 'table' ? table.rows : []
      expect(marks.map((m) => m.text.join()).sort()).toEqual(rows.map(([item]) => item).sort())
      expect(rows.map(([item]) => item)).toEqual(rows.map((_, i) => `${i + 1}`))
    }
    const changes: [string, string][] = kept === 'none' ? [['catch: pin', 'catch: none']] : []
    check(assemblySheet(headFrom('parameters', ...changes), style))
    if (kept === 'pin') eachHead((_, plan) => check(plan))
  })

  it('lists as many pieces as there are parts in the scene, and the catch', () => {
    const design = headFrom('parameters')
    const pieces = partsList(design).reduce((sum, { count }) => sum + count, 0)
    expect(pieces).toBe(design.scene.parts.length + 1)
    const washer = headFrom(
      'parameters',
      ['kind: blind\n  diameter: 20\n  depth: 24\n  bottom: flat\n  vent: hole', 'kind: through\n  diameter: 20'],
      ['catch: pin', 'catch: screw-and-washer'],
    )
    expect(partsList(washer).at(-1)).toMatchObject({ item: 5, id: 'screw-and-washer' })
  })

  it('says what stock to buy: bar, the blank and what is cut off it, screws with their point', () => {
    const rows = Object.fromEntries(partsList(headFrom('parameters')).map((row) => [row.id, row.stock]))
    // Blank: 41 + 26.56·tan 7° = 44.26, and 1 mm off each sawn end: 46.26. Arbor: 22 + 6 + 60, and the same: 90.
    expect(rows).toEqual({
      body: 'hexagon bar 46 mm × 47 mm',
      arbor: 'round bar ⌀32 mm × 90 mm',
      bit: 'blank 10 mm × 10 mm × 100 mm, cut to 78 mm',
      screws: 'ISO 4026 M6 × 10 mm, flat point, key 3 mm',
      pin: 'rod ⌀5 mm × 46 mm, staked',
    })
    const inch = Object.fromEntries(partsList(headFrom('parameters-inch')).map((row) => [row.id, row.stock]))
    expect(inch.bit).toBe('blank 3/8 in × 3/8 in × 3 in, cut to 2-5/8 in')
    expect(inch.arbor).toContain('round bar ⌀1-1/4 in')
  })

  it('takes an arbor from bar that is no thinner than its thickest place', () => {
    eachHead((design) => {
      const { bar, largest, length } = arborStock(design)
      const spigot = design.layout.fit?.spigot.largest ?? 0
      expect(largest).toBeGreaterThanOrEqual(spigot)
      if (bar) expect(bar.size).toBeGreaterThanOrEqual(largest - 1e-9)
      expect(length).toBeGreaterThanOrEqual(design.parameters.arbor['spigot-length'])
    })
  })

  it('gives torque, temperature and never-exceed speed as the report does', () => {
    for (const design of [headFrom('parameters'), headFrom('parameters-inch')]) {
      const words = wordsOf(assemblySheet(design, style))
      const says = (kind: 'torque' | 'temperature', id: string) =>
        formatQuantity(kind, figure(design, id), design.units)
      expect(words).toContain(`to ${says('torque', 'clamp.torque')}, never above`)
      expect(words).toContain(`evenly to ${says('temperature', 'fit.head-temperature')}`)
      const [, turns] = words.match(/NEVER ABOVE (\d+) rev\/min/) ?? []
      const limit = (figure(design, 'speed.never-exceed') * 60) / (2 * Math.PI)
      expect(limit - Number(turns)).toBeGreaterThanOrEqual(-1e-9)
      expect(limit - Number(turns)).toBeLessThan(1)
    }
  })

  it('never stamps a speed above the limit, and names its cause', () => {
    eachHead((design, plan) => {
      const words = wordsOf(plan)
      const limit = (figure(design, 'speed.never-exceed') * 60) / (2 * Math.PI)
      const [, turns, cause] = words.match(/NEVER ABOVE (\d+) rev\/min \(limited by: (.+)\)/) ?? []
      if (turns === undefined) expect(words).toContain('MUST NOT TURN')
      else {
        expect(Number(turns)).toBeLessThanOrEqual(limit + 1e-9)
        expect(cause!.length).toBeGreaterThan(0)
      }
    })
  })

  it('stamps the head as its own sheet says, with the arrow of its hand', () => {
    for (const design of [headFrom('parameters'), headFrom('parameters', ['clockwise', 'anticlockwise'])]) {
      const [stamped] = wordsOf(assemblySheet(design, style)).match(/NEVER ABOVE \d+ rev\/min/)!
      const own = wordsOf(bodySheet(design, style))
      for (const words of [wordsOf(assemblySheet(design, style)), own]) {
        expect(words).toContain(`arrow: turns ${design.parameters.rotation}, seen from the spindle`)
      }
      expect(own).toContain(stamped)
    }
  })

  it('says that a printed mock-up never runs under power', () => {
    expect(wordsOf(assemblySheet(headFrom('parameters'), style))).toContain('by hand only, never under power')
  })

  it('says for a pressed joint how hard the press must push, and that an angled face is no seat', () => {
    const words = wordsOf(assemblySheet(headFrom('parameters', ['assembly: heat', 'assembly: press']), style))
    const design = headFrom('parameters', ['assembly: heat', 'assembly: press'])
    // 26 420.6 N, up to what a gauge shows.
    expect(Math.ceil(figure(design, 'fit.press-force') / 100) * 100).toBe(26500)
    expect(words).toContain('up to 26500 N')
    expect(words).toContain('An angled face is no seat')
    expect(words).not.toContain('heat the head')
  })

  it.each([
    ['clockwise', 'leading', 'anticlockwise'],
    ['clockwise', 'trailing', 'anticlockwise'],
    ['anticlockwise', 'leading', 'clockwise'],
    ['anticlockwise', 'trailing', 'clockwise'],
  ])('turns %s from the spindle, step %s, the other way from below, in words and by its arrow', (turn, side, seen) => {
    const changes: [string, string][] = [
      ...(turn === 'clockwise' ? [] : [['rotation: clockwise', 'rotation: anticlockwise'] as [string, string]]),
      ...(side === 'leading' ? [] : [['side: leading', 'side: trailing'] as [string, string]]),
    ]
    const design = headFrom('parameters', ...changes)
    const plan = assemblySheet(design, style)
    const below = viewOf(plan, 'assembly-below')
    expect(below.caption[1]).toBe(`turns ${seen} seen so, ${turn} seen from the spindle`)
    expect(wordsOf(plan)).toContain(`turns ${turn}, seen from the spindle`)
    const arrow = below.marks!(1).find((e) => e.kind === 'arrow')!
    if (arrow.kind !== 'arrow') throw new Error('no arrow')
    // Moment of the arrow about the axis: above 0 is anticlockwise on paper.
    const moment = arrow.tip[0] * Math.sin(arrow.direction) - arrow.tip[1] * Math.cos(arrow.direction)
    expect(Math.sign(moment)).toBe(seen === 'anticlockwise' ? 1 : -1)
  })

  it('is one of the drawings of a head, after the head itself and before its set-ups', () => {
    const ids = headSheets(headFrom('parameters'), style).map((plan) => plan.id)
    expect(ids.indexOf('assembly')).toBeGreaterThan(ids.indexOf('body'))
    expect(ids.indexOf('set-up')).toBeGreaterThan(ids.indexOf('assembly'))
    expect(new Set(ids).size).toBe(ids.length)
  })

  it('has ids of views that no other drawing has', () => {
    const ids = headSheets(headFrom('parameters'), style).flatMap((plan) => viewsOf(plan).map((v) => v.id))
    expect(new Set(ids).size).toBe(ids.length)
    const marks = idsOf(assemblySheet(headFrom('parameters'), style))
    expect(new Set(marks).size).toBe(marks.length)
  })

  it('has letters of sections and details that no other drawing has', () => {
    // So large a bar that every place is drawn larger that may be.
    for (const design of [headFrom('parameters'), headFrom('parameters', ['size: 46', 'size: 300'])]) {
      const letters = headSheets(design, style).flatMap((plan) =>
        viewsOf(plan).flatMap((v) => [
          ...(/^[A-Z](–[A-Z])?$/.test(v.caption[0]!) ? [v.caption[0]![0]!] : []),
          ...(v.details ?? []).map((d) => d.letter),
        ]),
      )
      expect(letters.length).toBeGreaterThan(8)
      expect(new Set(letters).size).toBe(letters.length)
    }
  })
})
