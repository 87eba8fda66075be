import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { layOut } from '../../src/drawing/dimensions/layout.ts'
import { spreadApart } from '../../src/drawing/dimensions/ordinates.ts'
import { type DimensionRequest, measureOf } from '../../src/drawing/dimensions/request.ts'
import type { Entity, Point } from '../../src/drawing/entity.ts'
import { placed } from '../../src/drawing/entity-shape.ts'
import { type LayerName, styleOf } from '../../src/drawing/style.ts'
import { textsInTheWay } from './clear-text.ts'
import { drawingFont } from './drawing-font.ts'

const font = drawingFont()
const style = styleOf()

const outline = (points: readonly Point[]): Entity<LayerName> => ({
  kind: 'polyline',
  layer: 'visible',
  points,
  closed: true,
})
const block = (w: number, h: number) =>
  outline([
    [0, 0],
    [w, 0],
    [w, h],
    [0, h],
  ]) // prettier-ignore

type Unmeasured = DimensionRequest extends infer R ? (R extends DimensionRequest ? Omit<R, 'value'> : never) : never
const measured = (r: Unmeasured): DimensionRequest => {
  const request = { ...r, value: 0 } as DimensionRequest
  return { ...request, value: measureOf(request) }
}

/** A view with holes and a slope, and any dimensions on it. */
const anyView = fc
  .record({
    w: fc.double({ min: 5, max: 120, noNaN: true }),
    h: fc.double({ min: 5, max: 120, noNaN: true }),
    scale: fc.constantFrom(0.5, 1, 2),
    kinds: fc.array(
      fc.record({
        kind: fc.constantFrom(
          'h',
          'h',
          'v',
          'v',
          'aligned',
          'd',
          'r',
          'angle',
          'ox',
          'oy',
          'chamfer',
          'thread',
          'note',
        ),
        a: fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
        b: fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
        text: fc.constantFrom('8', '12.5', '40 ±0.1', '⌀25 H7 (25.000–25.021)', '(12.34)', "10° ±15'"),
        two: fc.boolean(),
        pick: fc.boolean(),
      }),
      { minLength: 1, maxLength: 18 },
    ),
  })
  .map(({ w, h, scale, kinds }) => {
    const lines: Entity<LayerName>[] = [block(w, h)]
    const requests: DimensionRequest[] = []
    kinds.forEach(({ kind, a, b, text, two, pick }, i) => {
      const id = `${kind}-${i}`
      const from: Point = [a[0] * w, a[1] * h]
      // Never nearer than a tenth of a millimetre in either direction.
      const apart = (p: number, q: number) => (Math.abs(p - q) < 0.1 ? p + 0.1 : q)
      const to: Point = [apart(from[0], b[0] * w), apart(from[1], b[1] * h)]
      const named = { id, text: two ? [text, 'drill ⌀5, 15 deep'] : [text] }
      const circle = { center: from, radius: 0.5 + b[0] * 4 }
      if (kind === 'h') {
        const side = pick ? ({} as const) : ({ side: 'above' } as const)
        requests.push(measured({ ...named, kind: 'linear', direction: 'horizontal', from, to, ...side }))
      } else if (kind === 'v') requests.push(measured({ ...named, kind: 'linear', direction: 'vertical', from, to }))
      else if (kind === 'aligned') {
        lines.push({ kind: 'line', layer: 'visible', from, to })
        requests.push(measured({ ...named, kind: 'linear', direction: 'aligned', from, to }))
      } else if (kind === 'd') {
        lines.push({ kind: 'circle', layer: 'visible', ...circle })
        requests.push(measured({ ...named, kind: 'diameter', ...circle, ...(pick ? { toward: 1 } : {}) }))
      } else if (kind === 'r') {
        const span = { start: 6 * b[1], end: 6 * b[1] + 1.2 }
        lines.push({ kind: 'arc', layer: 'visible', ...circle, ...span })
        requests.push(measured({ ...named, kind: 'radius', ...circle, ...span }))
      } else if (kind === 'angle') {
        const [t, u] = [6 * b[0], 6 * b[0] + 0.1 + 2.5 * b[1]]
        const ray = (s: number): Point => [from[0] + 8 * Math.cos(s), from[1] + 8 * Math.sin(s)]
        requests.push(measured({ ...named, kind: 'angle', vertex: from, from: ray(t), to: ray(u) }))
      } else if (kind === 'ox' || kind === 'oy') {
        const axis = kind === 'ox' ? 'x' : 'y'
        const side = pick ? 'right' : 'left'
        requests.push(
          measured({ ...named, kind: 'ordinate', axis, datum: [0, 0], point: from, ...(axis === 'y' ? { side } : {}) }),
        )
      } else if (kind === 'note') requests.push(measured({ ...named, kind: 'note', to: from }))
      else requests.push(measured({ ...named, kind: kind as 'chamfer' | 'thread', from, to }))
    })
    return { scale, lines, requests }
  })

describe('dimensions are placed', () => {
  it('so that no text lies on a text, a line of the view or of any dimension, and none is missing', () => {
    fc.assert(
      fc.property(anyView, (view) => {
        const { dimensions } = layOut(view, style, font)
        expect(dimensions.map((d) => d.request.id)).toEqual(view.requests.map((r) => r.id))
        expect(dimensions.map((d) => d.graphics.flatMap((g) => (g.kind === 'text' ? [g.text] : [])))).toEqual(
          view.requests.map((r) => r.text),
        )
        const onPaper = view.lines.map((l) => placed(l, view.scale, [0, 0]))
        expect(textsInTheWay(font, onPaper, dimensions)).toEqual([])
      }),
      { numRuns: 400, seed: 20 },
    )
  })

  const placedOn = (w: number, h: number, requests: readonly DimensionRequest[]) =>
    layOut({ scale: 1, lines: [block(w, h)], requests }, style, font).dimensions
  const across = (id: string, from: number, to: number, text = '8') =>
    measured({ id, text: [text], kind: 'linear', direction: 'horizontal', from: [from, 0], to: [to, 0], side: 'below' })

  it('in rows at steady spacing, the small ones inside, and side by side where they have room', () => {
    const rows = placedOn(100, 20, [
      across('whole', 0, 100),
      across('half', 0, 60),
      across('a', 0, 30),
      across('b', 30, 60),
    ])
    const depth = rows.map((d) => -d.linePoint[1])
    const { firstRow, rowSpacing } = style
    expect(depth).toEqual([firstRow + 2 * rowSpacing, firstRow + rowSpacing, firstRow, firstRow])
  })

  it('with arrows that point outward where there is room between them, and inward from outside where there is none', () => {
    const pointing = (d: { graphics: readonly Entity<LayerName>[] }) =>
      d.graphics.flatMap((g) => (g.kind === 'arrow' ? [Math.round(Math.cos(g.direction))] : []))
    const [wide, narrow] = placedOn(100, 20, [across('wide', 0, 40), across('narrow', 60, 63)])
    expect(pointing(wide!)).toEqual([-1, 1])
    expect(pointing(narrow!)).toEqual([1, -1])
  })

  it('with extension lines that keep a gap from the view and run past the dimension line', () => {
    const [d] = placedOn(100, 20, [across('whole', 0, 100)])
    const extension = d!.graphics.find((g) => g.kind === 'line')
    expect(extension).toMatchObject({
      from: [expect.closeTo(0, 9), expect.closeTo(-style.extensionGap, 9)],
      to: [expect.closeTo(0, 9), expect.closeTo(-style.firstRow - style.extensionBeyond, 9)],
    })
  })

  it('with the text of an angle too narrow for it in line with one end of its arc, which leads to it', () => {
    for (const degrees of [2, 7, 9.5]) {
      const a = (degrees * Math.PI) / 180
      const wedge = outline([
        [0, 0],
        [50, 0],
        [50, 40],
        [0, 40 + 50 * Math.tan(a)],
      ])
      const vertex: Point = [50, 40]
      const angle = measured({
        kind: 'angle',
        id: 'a',
        text: [`${degrees}° ±15'`],
        vertex,
        from: [0, 40 + 50 * Math.tan(a)],
        to: [49, 40],
      })
      const [made] = layOut({ scale: 1, lines: [wedge], requests: [angle] }, style, font).dimensions
      const arc = made!.graphics.find((g) => g.kind === 'arc')!
      if (arc.kind !== 'arc') throw new Error('no arc')
      const [x, y] = made!.textPoint
      expect(Math.abs(Math.hypot(x - vertex[0], y - vertex[1]) - arc.radius)).toBeLessThan(style.textHeight)
      const ends = [arc.start, arc.end].map((t) => [
        vertex[0] + arc.radius * Math.cos(t),
        vertex[1] + arc.radius * Math.sin(t),
      ])
      expect(Math.min(...ends.map(([u, v]) => Math.hypot(x - u!, y - v!)))).toBeLessThan(12)
    }
  })

  it('with coordinates spread apart where their numbers would touch, and left alone where not', () => {
    expect(spreadApart([0, 10, 20], 5)).toEqual([0, 10, 20])
    expect(spreadApart([10, 10, 10], 4)).toEqual([6, 10, 14])
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 1, maxLength: 12 }),
        (values) => {
          const sorted = [...values].sort((a, b) => a - b)
          const spread = spreadApart(sorted, 4)
          for (let i = 1; i < spread.length; i++) expect(spread[i]! - spread[i - 1]!).toBeGreaterThan(4 - 1e-9)
          const mean = (all: number[]) => all.reduce((a, b) => a + b, 0) / all.length
          expect(mean(spread)).toBeCloseTo(mean(sorted), 9)
        },
      ),
      { numRuns: 200, seed: 7 },
    )
  })

  it('the same way every time', () => {
    fc.assert(
      fc.property(anyView, (view) => {
        expect(JSON.stringify(layOut(view, style, font))).toBe(JSON.stringify(layOut(view, style, font)))
      }),
      { numRuns: 10, seed: 3 },
    )
  })

  it('only where the value is what the points measure, and each id once', () => {
    const good = across('a', 0, 30)
    expect(() => placedOn(100, 20, [{ ...good, value: 30.01 }])).toThrow(/says 30.01/)
    expect(() => placedOn(100, 20, [{ ...good, value: Number.NaN }])).toThrow(RangeError)
    expect(() => placedOn(100, 20, [good, good])).toThrow(/twice/)
    expect(() => placedOn(100, 20, [{ ...good, text: [' '] }])).toThrow(/without text/)
    expect(() => placedOn(100, 20, [{ ...good, side: 'left' } as DimensionRequest])).toThrow(/above or below/)
    expect(() => layOut({ scale: 0, lines: [block(1, 1)], requests: [] }, style, font)).toThrow(RangeError)
  })
})
