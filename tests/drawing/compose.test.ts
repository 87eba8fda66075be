import { describe, expect, it } from 'vitest'
import { composeSheets } from '../../src/drawing/plan/compose.ts'
import type { SheetPlan, ViewPlan } from '../../src/drawing/plan/sheet-plan.ts'
import { type LayerName, styleOf } from '../../src/drawing/style.ts'
import { drawingFont } from './drawing-font.ts'

const font = drawingFont()
const style = styleOf()
const facts = {
  title: 'Plate',
  drawingNumber: '–',
  units: 'mm',
  generalTolerance: 'ISO 2768-m',
  revision: 'a1b2c3d4',
  projection: 'first angle',
} as const

/** A bar as long as it is said, with a groove at its end that must be seen. */
const bar = (long: number, groove: number): ViewPlan => {
  const corners = [
    [0, 0],
    [long, 0],
    [long, 10],
    [0, 10],
  ] as const
  return {
    id: 'bar',
    caption: ['bar'],
    smallest: groove,
    lines: corners.map((from, i) => ({ kind: 'line', layer: 'visible' as LayerName, from, to: corners[(i + 1) % 4]! })),
    requests: [],
  }
}
const planOf = (view: ViewPlan): SheetPlan => ({
  id: 'bar',
  part: 'Bar',
  material: '',
  mass: '',
  groups: [{ rows: [[view]] }],
  blocks: [],
})
const sheetsOf = (plan: SheetPlan, paper: 'A4' | 'A3' = 'A4') => composeSheets([plan], paper, facts, style, font)

describe('a sheet', () => {
  it('has its views at a standard scale that does not take more than its share of the paper', () => {
    const made = sheetsOf(planOf(bar(60, 10)))
    // 0.36 of 210 mm: 60 mm at 1:1, not at 2:1.
    expect(made.ok && made.value[0]!.sheets[0]!.views[0]!.scale).toBe(1)
  })

  it('enlarges what must be seen no further than the paper has room for', () => {
    const made = sheetsOf(planOf(bar(60, 0.1)))
    const [view] = made.ok ? made.value[0]!.sheets.flatMap((s) => s.views) : []
    // A groove of 0.1 mm would want 50:1, and the bar would be 3 m long; the frame of an A4 leaves 180 mm.
    expect(view!.scale * 60).toBeLessThanOrEqual(0.65 * 180)
  })

  it('that nothing fits on is told with every size of paper that was tried, and no advice that does not help', () => {
    const plan = planOf(bar(1_000_000, 1_000_000))
    const problem = (paper: 'A4' | 'A3') => {
      const made = sheetsOf(plan, paper)
      return made.ok ? undefined : made.problems[0]
    }
    expect(problem('A4')).toMatchObject({ code: 'no-room', found: expect.stringContaining('A4 or A3') })
    expect(problem('A3')!.found).not.toContain('A4')
  })

  it('says below its frame what every sheet has to say', () => {
    const made = composeSheets([planOf(bar(60, 10))], 'A4', { ...facts, below: 'By hand only.' }, style, font)
    const texts = made.ok ? made.value[0]!.sheets[0]!.entities.filter((e) => e.kind === 'text') : []
    const below = texts.find((t) => t.kind === 'text' && t.text === 'By hand only.')
    expect(below).toBeDefined()
    expect(below!.kind === 'text' && below!.at[1]).toBeLessThan(10)
  })
})
