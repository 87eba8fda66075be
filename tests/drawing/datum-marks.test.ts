import { describe, expect, it } from 'vitest'
import { layOut } from '../../src/drawing/dimensions/layout.ts'
import type { DimensionRequest } from '../../src/drawing/dimensions/request.ts'
import type { Entity, Point } from '../../src/drawing/entity.ts'
import { coordinateChoices, cutChoices } from '../../src/drawing/plan/marks.ts'
import { type LayerName, styleOf } from '../../src/drawing/style.ts'
import { textsInTheWay } from './clear-text.ts'
import { drawingFont } from './drawing-font.ts'

const font = drawingFont()
const style = styleOf()
const line = (from: Point, to: Point, layer: LayerName = 'visible'): Entity<LayerName> => ({
  kind: 'line',
  layer,
  from,
  to,
})
/** 60 by 40, its lower left corner at the origin. */
const plate = [line([0, 0], [60, 0]), line([60, 0], [60, 40]), line([60, 40], [0, 40]), line([0, 40], [0, 0])]

const datum = (letter: string, rest: object): DimensionRequest =>
  ({ kind: 'note', id: `datum-${letter}`, text: [letter], value: 0, frame: 'box', tip: 'triangle', ...rest }) as never

const placed = (requests: readonly DimensionRequest[], lines: readonly Entity<LayerName>[] = plate) => {
  const { dimensions } = layOut({ scale: 1, lines, requests }, style, font)
  expect(textsInTheWay(font, lines, dimensions)).toEqual([])
  return dimensions
}

/** Middle of a triangle's base, and where it points. */
function triangleOf(graphics: readonly Entity<LayerName>[]) {
  const found = graphics.find((g) => g.kind === 'arrow')!
  const [c, s] = [Math.cos(found.direction), Math.sin(found.direction)]
  return { base: [found.tip[0] - found.length * c, found.tip[1] - found.length * s], points: [c, s] }
}

describe('a datum (ISO 5459)', () => {
  it('of a face stands with the base of its triangle on the edge, outside the metal', () => {
    const [d] = placed([datum('A', { to: [0, 40], base: { along: 0, length: 60, side: 1 } })])
    const { base, points } = triangleOf(d!.graphics)
    expect(base[1]).toBeCloseTo(40, 9)
    expect(points[1]).toBeCloseTo(1, 9)
    expect(d!.textPoint[1]).toBeGreaterThan(40 + style.arrowLength)
  })

  it('of an axis stands on its centre line carried on outside the outline, never on an edge', () => {
    const [d] = placed([datum('B', { to: [30, 40], base: { along: Math.PI / 2 } })])
    const { base, points } = triangleOf(d!.graphics)
    expect(base[0]).toBeCloseTo(30, 9)
    expect(base[1]).toBeGreaterThan(40 + style.arrowLength)
    expect(Math.abs(points[0]!)).toBeCloseTo(1, 9)
    const carried = d!.graphics.find((g) => g.kind === 'line' && g.layer === 'centre')
    expect(carried).toMatchObject({ from: [30, 43] })
  })

  it('moves along its line where a text is in the way, and beyond an edge that is too short', () => {
    const words: Entity<LayerName> = {
      kind: 'text',
      layer: 'text',
      at: [22, 42],
      text: 'in the way',
      height: 2.5,
      across: 'left',
      up: 'baseline',
      rotation: 0,
    }
    const [moved] = placed([datum('A', { to: [0, 40], base: { along: 0, length: 60, side: 1 } })], [...plate, words])
    expect(triangleOf(moved!.graphics).base[1]).toBeCloseTo(40, 9)
    const [beyond] = placed([datum('A', { to: [58, 40], base: { along: 0, length: 2, side: 1 } })])
    const [x, y] = triangleOf(beyond!.graphics).base
    expect(y).toBeCloseTo(40, 9)
    expect(x! < 58 || x! > 60).toBe(true)
  })

  it('of a bore seen end on hangs on its diameter', () => {
    const circle: Entity<LayerName> = { kind: 'circle', layer: 'visible', center: [30, 20], radius: 8 }
    const bore: DimensionRequest = {
      kind: 'diameter',
      id: 'bore',
      text: ['⌀16 H7'],
      value: 16,
      center: [30, 20],
      radius: 8,
    }
    const [size, d] = placed([bore, datum('B', { to: [38, 20], on: 'bore' })], [...plate, circle])
    const [from, to] = size!.shelf!
    const { base, points } = triangleOf(d!.graphics)
    expect(base[1]).toBeCloseTo(from[1], 9)
    expect(base[0]).toBeGreaterThan(Math.min(from[0], to[0]))
    expect(base[0]).toBeLessThan(Math.max(from[0], to[0]))
    expect(points[1]).toBeCloseTo(-1, 9)
  })

  it('that is the origin of a set-up has a small circle round the point, and a leader that stops at it', () => {
    const [d] = placed([datum('O', { to: [30, 0], tip: 'origin' })])
    const [circle] = d!.graphics.filter((g) => g.kind === 'circle')
    expect(circle).toMatchObject({ center: [30, 0], radius: style.textHeight / 2 })
    const lead = d!.graphics[0] as Entity<LayerName> & { kind: 'line' }
    expect(Math.hypot(lead.from[0] - 30, lead.from[1])).toBeCloseTo(style.textHeight / 2, 9)
  })
})

describe('a mark with a letter', () => {
  it('gives way to what has to leave the view', () => {
    const size = (y: number): DimensionRequest => ({
      kind: 'linear',
      id: `y-${y}`,
      text: ['3'],
      value: 3,
      direction: 'vertical',
      from: [60, y],
      to: [60, y + 3],
      side: 'right',
    })
    const choices = [
      coordinateChoices('X', [0, 20], [60, 20], style)(1),
      ...cutChoices('D', [0, 20], [60, 20], [0, -1], style).map((c) => c(1)),
    ]
    const requests = [size(16), size(19), size(22)]
    const { marks, dimensions } = layOut({ scale: 1, lines: plate, choices, requests }, style, font)
    expect(dimensions).toHaveLength(3)
    expect(textsInTheWay(font, [...plate, ...marks], dimensions)).toEqual([])
    const letters = marks.flatMap((m) => (m.kind === 'text' ? [m] : []))
    expect(letters.map((t) => [t.text, t.rotation])).toEqual([
      ['X', 0],
      ['D', 0],
      ['D', 0],
    ])
  })

  it('of a section points along the direction of sight, at a thick end outside the outline', () => {
    for (const choice of cutChoices('D', [0, 20], [60, 20], [0, -1], style)) {
      for (const mark of choice(1)) {
        const arrow = mark.find((m) => m.kind === 'arrow')!
        expect(Math.sin(arrow.direction)).toBeCloseTo(-1, 9)
        const thick = mark.find((m) => m.layer === 'section') as Entity<LayerName> & { kind: 'line' }
        for (const [x] of [thick.from, thick.to]) expect(x < 0 || x > 60).toBe(true)
      }
    }
  })
})
