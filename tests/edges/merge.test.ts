import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Entity, lengthOf } from '../../src/edges/entity.ts'
import { merged } from '../../src/edges/merge.ts'

const line = (a: number, b: number, y = 0): Entity => ({ kind: 'line', from: [a, y], to: [b, y] })
const arc = (start: number, end: number, radius = 5): Entity => ({ kind: 'arc', centre: [1, 2], radius, start, end })

describe('line work of one view', () => {
  it('that lies on one line becomes one line', () => {
    expect(merged([[line(0, 4), line(3, 6), line(9, 6)]])).toEqual([[line(0, 9)].map(() => expect.anything())])
    expect(lengthOf(merged([[line(0, 4), line(3, 6), line(9, 6)]])[0]![0]!)).toBeCloseTo(9, 12)
    expect(merged([[line(0, 4), line(5, 6)]])[0]).toHaveLength(2)
    expect(merged([[line(0, 4), line(0, 4, 1e-3)]])[0]).toHaveLength(2)
  })

  it('is drawn in sight where something hidden lies behind it', () => {
    const [seen, hidden] = merged([[line(2, 3)], [line(0, 9)]])
    expect(seen).toHaveLength(1)
    expect(hidden!.map(lengthOf).sort()).toEqual([2, 6])
  })

  it('closes arcs of one circle to a circle, across the start of the count too', () => {
    expect(merged([[arc(0, 2), arc(2, 5), arc(4.9, 2 * Math.PI)]])[0]).toEqual([
      { kind: 'circle', centre: [1, 2], radius: 5 },
    ])
    const open = merged([[arc(5, 6), arc(6, 2 * Math.PI + 1)]])[0]!
    expect(open).toHaveLength(1)
    expect(open[0]).toMatchObject({ kind: 'arc', start: 5 })
    expect(lengthOf(open[0]!)).toBeCloseTo(5 * (2 * Math.PI + 1 - 5), 9)
    expect(merged([[arc(0, 2), arc(2, 5, 5.01)]])[0]).toHaveLength(2)
  })

  it('knows an ellipse again that is given from the other end of its long axis', () => {
    const half = { kind: 'ellipse', centre: [0, 0], ratio: 0.5, start: 0, end: Math.PI } as const
    const [whole] = merged([
      [
        { ...half, major: [3, 1] },
        { ...half, major: [-3, -1] },
      ],
    ])
    expect(whole).toHaveLength(1)
    expect(whole![0]).toMatchObject({ kind: 'ellipse', start: 0, end: 2 * Math.PI })
  })

  it('covers as much as its pieces together, and a layer below only what is left', () => {
    const piece = fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 1, max: 15 }))
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 8 }), fc.array(piece, { maxLength: 8 }), (above, below) => {
        const cells = (pieces: [number, number][]) =>
          new Set(pieces.flatMap(([a, n]) => Array.from({ length: n }, (_, i) => a + i)))
        const [seen, hidden] = merged([above, below].map((l) => l.map(([a, n]) => line(a, a + n)))) as [
          Entity[],
          Entity[],
        ]
        const total = (l: Entity[]) => l.reduce((sum, e) => sum + lengthOf(e), 0)
        expect(total(seen)).toBeCloseTo(cells(above).size, 6)
        expect(total(hidden)).toBeCloseTo([...cells(below)].filter((c) => !cells(above).has(c)).length, 6)
      }),
    )
  })
})
