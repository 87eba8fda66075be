import { describe, expect, it } from 'vitest'
import { setBlock } from '../../src/drawing/plan/blocks.ts'
import { composeSheets } from '../../src/drawing/plan/compose.ts'
import { styleOf } from '../../src/drawing/style.ts'
import { faceFrame } from '../../src/families/fly-cutter-head/frames.ts'
import { headRoute } from '../../src/families/fly-cutter-head/making/route.ts'
import { headSetUps } from '../../src/families/fly-cutter-head/making/set-ups.ts'
import { tiltedSetUp } from '../../src/families/fly-cutter-head/making/tilted-set-up.ts'
import { setUpDimensions } from '../../src/families/fly-cutter-head/set-up-dimensions.ts'
import { orderSheet } from '../../src/families/fly-cutter-head/sheets/order-sheet.ts'
import { routeTable } from '../../src/families/fly-cutter-head/sheets/route-table.ts'
import { setUpSheet } from '../../src/families/fly-cutter-head/sheets/set-up-sheet.ts'
import { cellVertices } from '../../src/geometry/cell-vertices.ts'
import { pointIn } from '../../src/geometry/frame.ts'
import { solidOf } from '../../src/part/part.ts'
import { drawingFont } from '../drawing/drawing-font.ts'
import { sheetFaults } from '../drawing/sheet-faults.ts'
import { forRandomHeads, headFrom } from './random-heads.ts'
import { sheetFactsOf } from './sheet-facts.ts'

const font = drawingFont()
const style = styleOf()
const heads = Number(process.env.HEADS ?? 40)

describe('the tilted set-up', () => {
  it('stands the face of the demo above the jaws as worked by hand', () => {
    // Hexagon 46 across flats, 7°, 41 on the axis, jaws 34 high, deepest cut 10.5, parallels 10, 14 …
    const set = tiltedSetUp(headFrom('parameters'))
    expect(set.least).toBe(11.5)
    // 41·cos 7° + 26.558·sin 7° = 40.694 + 3.237
    expect(set.lowest).toBeCloseTo(43.931, 3)
    // 34 + 11.5 − 43.931 = 1.569 wanted under it: the 10 mm pair is the lowest.
    expect(set.under).toBe(10)
    expect(set.onParallels).toBe(true)
    expect(set.stickUp).toBeCloseTo(19.931, 3)
    // 40.694 − (46/√3/2)·sin 7° − 19.931
    expect(set.grip).toBeCloseTo(19.145, 3)
    expect(set.gripWanted).toBeCloseTo(13.565, 3)
    expect(set.wedge).toBeCloseTo(6.473, 3)
    // 100·sin 7°
    expect(set.setting).toEqual({ by: 'sine-bar', bar: 100, stack: expect.closeTo(12.1869, 4) })
  })

  it('finds the lowest place of the head where the solid has it', () => {
    forRandomHeads(heads, (design) => {
      if (design.parameters.stock.shape === 'round') return
      const face = faceFrame(design.layout.faceAngle, design.layout.depthOnAxis)
      const corners = solidOf(design.part('body')).stock.flatMap(cellVertices)
      const deepest = Math.max(...corners.map((p) => pointIn(face, p)[2]))
      expect(tiltedSetUp(design).lowest).toBeCloseTo(deepest, 6)
    })
  })

  it('keeps jaws and bed clear: every cut ends above the jaws, and the head stands on or above the bed', () => {
    forRandomHeads(heads, (design) => {
      const set = tiltedSetUp(design)
      const { slot, step } = design.layout
      expect(set.stickUp).toBeGreaterThanOrEqual(Math.max(slot.depth, step.depth) + 1 - 1e-9)
      expect(set.under).toBeGreaterThanOrEqual(0)
      expect(set.stickUp + set.jawHeight).toBeCloseTo(set.lowest + set.under, 9)
    })
  })

  it.each([
    ['level', ['angle: 7 deg', 'angle: 0 deg']],
    ['angle-block', ['sine-bar: 100', 'sine-bar: 100\n  angle-blocks: [7 deg]']],
    ['sine-bar', ['sine-bar: 100', 'sine-bar: 200']],
    ['protractor', ['  sine-bar: 100', '']],
  ] as [string, [string, string]][])('picks the angle up by %s, as the shop has it', (by, change) => {
    expect(tiltedSetUp(headFrom('parameters', change)).setting.by).toBe(by)
  })

  it('says when no pair of parallels is as high as it takes', () => {
    const design = headFrom(
      'parameters',
      ['jaw-height: 34', 'jaw-height: 70'],
      ['parallels: [10, 14, 18, 22, 26, 30]', 'parallels: [10]'],
    )
    expect(tiltedSetUp(design).onParallels).toBe(false)
    const lines = setUpSheet(design, style).blocks.flatMap((b) => (b.kind === 'notes' ? b.lines : []))
    expect(lines.join(' ')).toContain('no pair of parallels in the list is as high')
  })

  it('says when a jaw has too little to hold, and when the jaws do not open far enough', () => {
    const design = headFrom(
      'parameters',
      ['depth-on-axis: 41', 'depth-on-axis: 24'],
      ['depth: 24', 'depth: 9'],
      ['spigot-length: 22', 'spigot-length: 7'],
      ['jaw-opening: 105', 'jaw-opening: 40'],
    )
    const set = tiltedSetUp(design)
    expect(set.grip).toBeLessThan(set.gripWanted)
    const lines = setUpSheet(design, style).blocks.flatMap((b) => (b.kind === 'notes' ? b.lines : []))
    expect(lines.find((line) => line.includes('Flat held'))).toContain('TOO LITTLE')
    expect(lines.find((line) => line.includes('They open'))).toContain('TOO LITTLE')
  })
})

describe('the set-up drawing', () => {
  it('shows every named size once, and no text on a text, a line or a view, whatever the head', () => {
    let count = 0
    forRandomHeads(heads, (design) => {
      const paper = (['A4', 'A3', 'letter', 'tabloid'] as const)[count++ % 4]!
      const made = composeSheets([setUpSheet(design, style)], paper, sheetFactsOf(design), style, font)
      if (!made.ok) throw new Error(JSON.stringify(made.problems))
      const { sheets } = made.value[0]!
      const shown = sheets.flatMap((s) => s.views.flatMap((v) => v.dimensions.map((d) => d.request.id)))
      const named = setUpDimensions(design).map((d) => d.id)
      expect(shown.filter((id) => !id.includes('@')).sort()).toEqual(named.sort())
      expect(sheets.flatMap((s) => sheetFaults(font, s))).toEqual([])
    })
  })

  it('writes the order of work as large as all else, step by step, each set-up above what is done in it', () => {
    for (const design of [headFrom('parameters'), headFrom('parameters-inch')]) {
      const tables = routeTable(design)
      const cells = tables.flatMap((t) => t.rows)
      const route = headRoute(design)
      expect(cells.flatMap(([step]) => (step === '' ? [] : [Number(step)]))).toEqual(route.map((_, i) => i + 1))
      expect(cells.flatMap(([step, title]) => (step === '' ? [] : [title]))).toEqual(route.map((o) => o.title))
      const titles = new Map(headSetUps(design).map((s) => [s.id, s.title]))
      let above = ''
      for (const [step, title] of cells) {
        if (step === '') above = title!.replace(/(, continued)?:$/, '')
        else expect(above).toBe(titles.get(route[Number(step) - 1]!.setUp))
      }
      for (const table of tables) expect(table.rows.at(-1)![0]).not.toBe('')
      // The room inside the frame of an A4, less the gaps at its sides (ISO 5457: 20 and 10 mm).
      const texts = tables.flatMap((t) => setBlock(t, 110, 170, style, font).entities)
      expect(texts.every((e) => e.kind !== 'text' || e.height === style.textHeight)).toBe(true)
    }
  })

  it.each(['A4', 'A3', 'letter', 'tabloid'] as const)('has the order of work on %s from the first step on', (paper) => {
    for (const design of [
      headFrom('parameters'),
      headFrom('parameters-inch'),
      headFrom('parameters', ['clockwise', 'anticlockwise']),
    ]) {
      const made = composeSheets([orderSheet(design)], paper, sheetFactsOf(design), style, font)
      if (!made.ok) throw new Error(JSON.stringify(made.problems))
      const firsts = made.value[0]!.sheets.flatMap((sheet) =>
        sheet.entities
          .flatMap((e) => (e.kind === 'text' && e.text.startsWith('Order of work, steps') ? [e] : []))
          .sort((a, b) => b.at[1] - a.at[1] || a.at[0] - b.at[0])
          .map(({ text }) => Number(text.match(/steps (\d+)/)![1])),
      )
      expect(firsts.length).toBeGreaterThan(0)
      expect(firsts).toEqual([...firsts].sort((a, b) => a - b))
      expect(made.value[0]!.sheets.flatMap((sheet) => sheetFaults(font, sheet))).toEqual([])
    }
  })

  it('draws jaws and bed at the heights it gives, with the finished face level', () => {
    const design = headFrom('parameters')
    const set = tiltedSetUp(design)
    const [tilted] = setUpSheet(design, style).groups.flatMap((g) => g.rows.flat())
    const level = tilted!.lines.flatMap((e) =>
      e.kind === 'line' && e.layer === 'phantom' && Math.abs(e.from[1] - e.to[1]) < 1e-9 ? [e.from[1]] : [],
    )
    expect(level.some((y) => Math.abs(y + set.stickUp) < 1e-9)).toBe(true)
    expect(level.some((y) => Math.abs(y + set.stickUp + set.jawHeight) < 1e-9)).toBe(true)
    const highest = Math.max(
      ...tilted!.lines.flatMap((e) => (e.kind === 'line' && e.layer === 'visible' ? [e.from[1], e.to[1]] : [])),
    )
    expect(highest).toBeCloseTo(0, 9)
  })
})
