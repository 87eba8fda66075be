import { describe, expect, it } from 'vitest'
import type { Entity } from '../../src/drawing/entity.ts'
import { flattened } from '../../src/drawing/entity-shape.ts'
import { hatchLines } from '../../src/drawing/hatch-lines.ts'
import { cutOut } from '../../src/drawing/plan/cut-out.ts'
import { withDetails } from '../../src/drawing/plan/details.ts'
import { setView } from '../../src/drawing/plan/set-view.ts'
import type { ViewPlan } from '../../src/drawing/plan/sheet-plan.ts'
import { type LayerName, styleOf } from '../../src/drawing/style.ts'
import { drawingFont } from './drawing-font.ts'

const font = drawingFont()
const style = styleOf()
const corners = [
  [0, 0],
  [60, 0],
  [60, 40],
  [0, 40],
] as const
const outline = (layer: LayerName) =>
  corners.map((from, i) => ({ kind: 'line' as const, layer, from, to: corners[(i + 1) % 4]! }))
const hatch: Entity<LayerName> = { kind: 'hatch', layer: 'hatch', angle: Math.PI / 4, loops: [outline('hatch')] }

const plate: ViewPlan = {
  id: 'plate',
  caption: ['plate'],
  lines: [...outline('visible'), hatch],
  requests: [],
  details: [
    {
      letter: 'H',
      says: 'corner',
      center: [60, 40],
      radius: 3,
      toward: 0.7,
      smallest: 1,
      requests: [{ kind: 'chamfer', id: 'edge', text: ['1 × 45°'], value: 1, from: [59, 40], to: [60, 39] }],
    },
  ],
}

const viewsAt = (scale: number, most = 120) =>
  withDetails([{ rows: [[plate]] }], scale, most).flatMap((g) => g.rows.flat())

describe('a detail', () => {
  it('is drawn where its size would be below 2 mm on paper, at a standard scale, and holds that size', () => {
    const [view, detail] = viewsAt(1)
    expect(view!.requests.map((r) => r.id)).toEqual(['detail-H@plate'])
    expect(detail!.requests.map((r) => r.id)).toEqual(['edge'])
    expect(detail!.enlarged).toBe(5)
    expect(setView(detail!, 1, style, font).notes.map((n) => n.kind === 'text' && n.text)).toEqual([
      'H',
      'corner',
      'scale 5:1',
    ])
  })

  it('is not drawn where the view itself is large enough', () => {
    const views = viewsAt(2)
    expect(views).toHaveLength(1)
    expect(views[0]!.requests.map((r) => r.id)).toEqual(['edge'])
  })

  it('is drawn only as large as a sheet has room for', () => {
    expect(viewsAt(1, 29)[1]!.enlarged).toBe(2)
    expect(viewsAt(0.01, 29)[1]!.enlarged).toBe(200)
  })

  it('shows nothing outside its circle, and hatch only where the view has it', () => {
    const [, detail] = viewsAt(1)
    for (const e of detail!.lines) {
      if (e.kind === 'text' || e.kind === 'arrow' || e.kind === 'hatch') continue
      for (const [x, y] of flattened(e, 0.01)) expect(Math.hypot(x - 60, y - 40)).toBeLessThan(3 + 1e-9)
    }
    const cut = detail!.lines.find((e) => e.kind === 'hatch')!
    const ends = hatchLines(cut, 0.3).flat()
    expect(ends.length).toBeGreaterThan(8)
    for (const [x, y] of ends) {
      expect(Math.hypot(x - 60, y - 40)).toBeLessThan(3 + 1e-6)
      expect(Math.max(x - 60, y - 40)).toBeLessThan(1e-6)
    }
  })
})

describe('a text that has to stand on hatch', () => {
  it('has the hatch cut out round it', () => {
    const words = { kind: 'text', layer: 'dimension', at: [30, 20], text: '9.5', height: 2.5 } as const
    const text = { ...words, across: 'center', up: 'middle', rotation: 0 } as const
    const request = { kind: 'note', id: 'n', text: ['9.5'], value: 0, to: [30, 20] } as const
    const graphics = [text]
    const [cut] = cutOut([hatch], [{ request, graphics, linePoint: [30, 20], textPoint: [30, 20] }], 1, style, font)
    const crossing = (e: Entity<LayerName>) =>
      e.kind === 'hatch'
        ? hatchLines(e, 1).filter(([a, b]) => {
            const t = (30 - a[0]) / (b[0] - a[0])
            return t > 0 && t < 1 && Math.abs(a[1] + t * (b[1] - a[1]) - 20) < 1.2
          })
        : []
    expect(crossing(hatch).length).toBeGreaterThan(0)
    expect(crossing(cut!)).toEqual([])
  })
})
