import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Point } from '../../../src/drawing/entity.ts'
import { composeSheets, type SheetFacts } from '../../../src/drawing/plan/compose.ts'
import type { SheetPlan, ViewPlan } from '../../../src/drawing/plan/sheet-plan.ts'
import type { SheetName } from '../../../src/drawing/sheet/sheet-size.ts'
import { styleOf } from '../../../src/drawing/style.ts'
import type { HeadDesign } from '../../../src/families/fly-cutter-head/design.ts'
import { facetParameters } from '../../../src/families/fly-cutter-head/facet-parameters.ts'
import { arborSheet } from '../../../src/families/fly-cutter-head/sheets/arbor-sheet.ts'
import { bitSheet } from '../../../src/families/fly-cutter-head/sheets/bit-sheet.ts'
import { featuresOf } from '../../../src/part/part.ts'
import { drawingFont } from '../../drawing/drawing-font.ts'
import { sheetFaults } from '../../drawing/sheet-faults.ts'
import { forRandomHeads, headFrom } from '../random-heads.ts'
import { sheetFactsOf } from '../sheet-facts.ts'

const font = drawingFont()
const style = styleOf()
/** 400 where the whole width of the family is wanted: `HEADS=400`. */
const { HEADS } = process.env
const heads = Number(HEADS ?? 60)
const shanks: readonly { readonly name: string }[] = JSON.parse(
  readFileSync(new URL('../../../seeds/shanks.json', import.meta.url), 'utf8'),
).rows

function drawingOf(plan: SheetPlan, paper: SheetName, facts: SheetFacts) {
  const made = composeSheets([plan], paper, facts, style, font)
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  return made.value[0]!
}

/** Every named size once, and nothing on anything else. */
function expectWhole(design: HeadDesign, part: 'arbor' | 'bit', paper: SheetName = 'A4') {
  const plan = part === 'arbor' ? arborSheet(design) : bitSheet(design, style)
  const drawing = drawingOf(plan, paper, sheetFactsOf(design))
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

  it.each([
    // Included angle of 7:24 is 16°35'39" (ISO 297, from memory).
    ['7-24-30', '50', ['taper 7:24', "half angle 8°17.8'"]],
    // 0.59941 in/ft on the diameter: atan(0.59941 / 24).
    ['morse-2', '36', ['taper 1:20.02', "half angle 1°25.8'"]],
    // Half of the 16°51' of the table of shanks.
    ['r8', '40', ['taper 1:3.376', "half angle 8°25.5'"]],
  ])('gives the taper of %s by its ratio and by what the top slide is swung to', (shank, shoulder, text) => {
    const design = headFrom(
      'parameters',
      ['shank: straight-20', `shank: ${shank}`],
      ['shoulder-diameter: 32', `shoulder-diameter: ${shoulder}`],
    )
    const requests = arborSheet(design).groups.flatMap((g) => g.rows.flat().flatMap((v) => v?.requests ?? []))
    expect(requests.find(({ id }) => id === 'taper@arbor')?.text).toEqual(text)
  })

  it('shows a flat where it is seen as one: onto the end, so deep below the round', () => {
    const design = headFrom('parameters', ['vent: hole', 'vent: flat'])
    const end = arborSheet(design).groups[0]!.rows[0]!.find((v) => v?.id === 'arbor-end')!
    const [flat] = end.requests
    expect(flat).toMatchObject({ id: 'vent-flat.depth', from: [-10, 0], to: [flat!.value - 10, 0] })
    // A visible line of the view lies there.
    const places = end.lines.flatMap((e) => (e.layer === 'visible' && e.kind === 'line' ? [e.from[0], e.to[0]] : []))
    expect(places.some((x) => Math.abs(x - (flat!.value - 10)) < 1e-9)).toBe(true)
  })

  it('has the view onto its right end on the left in first angle and on the right in third (ISO 5456-2, from memory)', () => {
    const rows = (projection: string) =>
      arborSheet(
        headFrom(
          'parameters',
          ['vent: hole', 'vent: flat'],
          [/^machine:/m, `drawing: { projection: ${projection} }\nmachine:`],
        ),
      ).groups.map((g) => g.rows.map((row) => row.map((v) => v?.id)))
    expect(rows('first-angle')).toEqual([[['arbor-end', 'arbor']]])
    expect(rows('third-angle')).toEqual([[['arbor', 'arbor-end']]])
  })

  it('undercuts a thread at the seat by two pitches: 5 mm for M20 (pitch 2.5 mm, ISO 261)', () => {
    const threaded = headFrom('parameters', [/kind: matched[^\n]*\n\s*assembly: heat/, 'kind: threaded\n  thread: M20'])
    const text = arborSheet(threaded).blocks.flatMap((b) => (b.kind === 'notes' ? b.lines : []))
    expect(text.join(' ')).toContain('Undercut the thread at the seat, 5 mm wide')
  })

  it('tells the interference to turn to over the bore as measured: 0.024 to 0.036 mm for ⌀20', () => {
    const text = arborSheet(headFrom('parameters')).blocks.flatMap((b) => (b.kind === 'notes' ? b.lines : []))
    // 0.0015 ± 0.0003 of the diameter (rule of thumb), rounded inwards to 0.001 mm.
    expect(text.join(' ')).toContain('turn the spigot 0.024 mm to 0.036 mm over it')
  })
})

type Changes = [string | RegExp, string][]

const otherHand: Changes = [
  ['rotation: clockwise', 'rotation: anticlockwise'],
  ['reverse: false', 'reverse: true'],
]
/** Every facet leans both ways, and the tip is ground back on all three sides. */
const allWays: Changes = [
  ['    end-relief: 10 deg', '    end-edge-angle: 8 deg\n    work-side-edge-angle: 5 deg\n    end-relief: 10 deg'],
  ['    leading: 0.6', '    end: 0.8\n    underside: 0.5\n    leading: 0.6'],
]
const worked: Changes = [[/ {2}facets:\n( {4}.*\n)+/, '  grind: for-work-material\n']]
const square: Changes = [
  [/ {2}facets:\n( {4}.*\n)+/, ''],
  ['    leading: 0.6', '    leading: 0'],
]

const viewsOf = (design: HeadDesign) =>
  bitSheet(design, style).groups.flatMap((g) => g.rows.flat().flatMap((v) => v ?? []))
const viewOf = (design: HeadDesign, id: string) => viewsOf(design).find((v) => v.id === id)!

const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])

/** Directions, rad, in which visible lines of a view leave a point. */
const leaving = ({ lines }: ViewPlan, point: Point): number[] =>
  lines.flatMap((e) => {
    if (e.kind !== 'line' || e.layer !== 'visible') return []
    const [from, to] = apart(e.from, point) < 1e-6 ? [e.from, e.to] : [e.to, e.from]
    return apart(from, point) < 1e-6 ? [Math.atan2(to[1] - from[1], to[0] - from[0])] : []
  })

/** How far a direction lies from the nearer axis of the paper, rad. */
const fromAxis = (direction: number) => Math.abs(direction - (Math.round(direction / (Math.PI / 2)) * Math.PI) / 2)

/** Angles that sections show, by size: what the parameters want, and what the edges that are drawn there measure. */
function anglesShown(design: HeadDesign) {
  const facets = facetParameters(design.layout)
  return viewsOf(design).flatMap((view) =>
    view.requests.flatMap((r) => {
      if (r.kind !== 'angle') return []
      const wanted = Math.abs(facets[r.id.replace('bit.', '') as keyof typeof facets]!)
      const drawn = leaving(view, r.vertex).map(fromAxis)
      return [{ id: r.id, wanted, off: Math.min(...drawn.map((d) => Math.abs(d - wanted))) }]
    }),
  )
}

describe('the grinding sheet of the bit', () => {
  it.each<[string, Changes]>([
    ['as the template has it', []],
    ['of a tool that turns the other way', otherHand],
    ['worked out for the work material', worked],
    ['with facets that lean both ways', allWays],
    ['the same for the other hand', [...allWays, ...otherHand]],
    ['square as bought', square],
    ['with a nose larger than its edges', [['    leading: 0.6', '    leading: 0.6\n  nose-radius: 9']]],
  ])('shows every named size once, %s', (_, changes) => {
    for (const paper of ['A4', 'letter', 'A3'] as const) expectWhole(headFrom('parameters', ...changes), 'bit', paper)
  })

  it.each<[string, Changes, number]>([
    ['a clockwise tool', [], 4],
    ['an anticlockwise tool', otherHand, 4],
    ['facets that lean both ways', allWays, 6],
    ['the same for the other hand', [...allWays, ...otherHand], 6],
    ['facets worked out', worked, 4],
  ])('shows the angles of %s where the edges that are cut there have them', (_, changes, count) => {
    const shown = anglesShown(headFrom('parameters', ...changes))
    expect(shown).toHaveLength(count)
    for (const { id, wanted, off } of shown) expect({ id, wanted, off: off < 1e-7 }).toEqual({ id, wanted, off: true })
  })

  it('lets a facet lean the way it is given: falling away from the tip, and the other way where it is negative', () => {
    // Section P is seen from the work side, leading side up, tip to the right: rake that falls away inwards goes down.
    for (const [angle, way] of [
      ['20 deg', -1],
      ['-10 deg', 1],
    ] as const) {
      const design = headFrom(
        'parameters',
        ['rake-along: 22 deg', `rake-along: ${angle}`],
        ['    leading: 0.6', '    underside: 2\n    leading: 3'],
      )
      const view = viewOf(design, 'bit-P')
      const r = view.requests.find(({ id }) => id === 'bit.rake-along')!
      if (r.kind !== 'angle') throw new Error('no angle')
      const inwards = leaving(view, r.vertex).filter((d) => Math.cos(d) < -0.5)
      expect(inwards.map((d) => Math.sign(Math.sin(d)))).toEqual([way])
    }
  })

  it('checks the edges by what a protractor reads in the views that are drawn', () => {
    for (const changes of [[], allWays, otherHand, [...allWays, ...otherHand]]) {
      const design = headFrom('parameters', ...changes)
      const edges = (id: string) =>
        leaving(viewOf(design, id), [0, 0])
          .map((d) => (fromAxis(d) * 180) / Math.PI)
          .map((d) => d.toFixed(1))
      const [checks] = bitSheet(design, style).blocks.filter((b) => b.kind === 'table' && b.title.startsWith('Check'))
      if (checks?.kind !== 'table') throw new Error('no checks')
      const is = checks.rows.map((r) => r[2]!.replace('°', ''))
      expect(edges('bit-leading')).toEqual(expect.arrayContaining([is[0], is[2]]))
      expect(edges('bit-end')).toContain(is[1])
      expect(edges('bit-work-side')).toContain(is[3])
    }
  })

  it('checks the tip by its distance from the sides of the blank that no grinding touches', () => {
    const design = headFrom('parameters', ...allWays)
    const checks = bitSheet(design, style).blocks.find((b) => b.title.startsWith('Check'))
    // 10 × 10 × 78 mm, 0.6 off the leading face, 0.5 off the work side, 0.8 off the end.
    expect(checks?.kind === 'table' && checks.rows.slice(-3).map((r) => r[2])).toEqual(['9.5 mm', '9.4 mm', '77.2 mm'])
  })

  it('has the tip to the right of a clockwise tool and to the left of the other: one is the mirror image of the other', () => {
    const tips = [headFrom('parameters'), headFrom('parameters', ...otherHand)].map((design) => {
      const xs = viewOf(design, 'bit-leading').lines.flatMap((e) => (e.kind === 'line' ? [e.from[0], e.to[0]] : []))
      // The view's origin is the tip.
      return [Math.min(...xs), Math.max(...xs)].map((x) => Number(x.toFixed(6)))
    })
    expect(tips[0]![0]).toBeLessThan(-70)
    expect(tips[1]).toEqual(tips[0]!.map((x) => -x).reverse())
  })

  it('points the motion to the left seen onto the end of a clockwise tool, to the right of the other', () => {
    // From the bit side, spindle up: a clockwise tool, seen from the spindle, moves its bit from right to left.
    for (const [changes, right] of [
      [[], -1],
      [otherHand, 1],
    ] as [Changes, number][]) {
      const [motion] = viewOf(headFrom('parameters', ...changes), 'bit-end').choices!
      const arrow = motion!(1)[0]!.find((e) => e.kind === 'arrow')!
      expect(Math.cos(arrow.kind === 'arrow' ? arrow.direction : 0)).toBeCloseTo(right, 9)
    }
  })

  it('touches both edges with the nose', () => {
    for (const changes of [[], allWays, otherHand]) {
      const design = headFrom('parameters', ...changes)
      const view = viewOf(design, 'bit-leading')
      const nose = [...view.requests, ...view.details!.flatMap((d) => d.requests)].find(
        (r) => r.id === 'bit.nose-radius',
      )!
      if (nose.kind !== 'radius') throw new Error('no radius')
      const [x, y] = nose.center
      // Distance of the centre from every edge at the tip; the two that make the profile are a radius away.
      const away = leaving(view, [0, 0]).map((d) => Math.abs(x * Math.sin(d) - y * Math.cos(d)))
      expect(away.filter((a) => Math.abs(a - 0.8) < 1e-6)).toHaveLength(2)
    }
  })

  it('says how each facet is laid on the grinder, and what angles that makes in use', () => {
    const tables = bitSheet(headFrom('parameters'), style).blocks.filter((b) => b.kind === 'table')
    expect(tables).toHaveLength(3)
    expect(tables[0]!.rows.map((r) => r[0])).toEqual(['rake face', 'end flank', 'work-side flank'])
    // End relief 10° behind an edge square to the bit: no turn, and a lift of just that angle.
    expect(tables[0]!.rows[1]!.slice(-2)).toEqual(['0.0°', '10.0°'])
  })

  it('is a simple sheet for a bit that is square as bought', () => {
    const plan = bitSheet(headFrom('parameters', ...square), style)
    expect(plan.groups).toHaveLength(2)
    expect(plan.blocks.map((b) => b.title).some((title) => /grinder|Check/.test(title))).toBe(false)
  })
})

it('arbor and bit of random heads are drawn whole, their angles true', () => {
  forRandomHeads(
    heads,
    (design) => {
      const { sheet } = design.parameters.drawing
      expectWhole(design, 'arbor', sheet)
      expectWhole(design, 'bit', sheet)
      expect(anglesShown(design).filter(({ off }) => !(off < 1e-7))).toEqual([])
    },
    20261127,
  )
})
